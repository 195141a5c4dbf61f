/** Strips, rolls and mass worked by hand; values that the trade prints are marked as such. */
import { describe, expect, it } from 'vitest'
import {
  arealMass,
  casesPerRoll,
  coreDiameter,
  drawnLength,
  layersOf,
  massPerMetre,
  rollChanges,
  rollDiameter,
  rollMass,
} from '../../src/trade/tape.js'

const inch = 0.0254
const yard = 0.9144
const micrometre = 1e-6

describe('strips', () => {
  it('400 mm case: 540 mm with legs of 70, 500 mm with legs of 50, which is 7.4 % less', () => {
    expect(drawnLength(0.4, 0.07, 0)).toBeCloseTo(0.54, 12)
    expect(drawnLength(0.4, 0.05, 0)).toBeCloseTo(0.5, 12)
    expect((100 * (1 - drawnLength(0.4, 0.05, 0) / drawnLength(0.4, 0.07, 0))).toFixed(1)).toBe('7.4')
  })

  it('top and bottom take twice the length and 11 in with legs of 2 3/4 in (common practice, no source)', () => {
    expect(2 * drawnLength(16 * inch, 2.75 * inch, 0)).toBeCloseTo((32 + 11) * inch, 12)
  })

  it('stretch of 8 % draws 0.5 m for 0.54 m laid', () => {
    expect(drawnLength(0.4, 0.07, 0.08)).toBeCloseTo(0.5, 12)
  })
})

describe('rolls', () => {
  it('a 1500 yd roll gives 3176 strips of 17 in (a trade sample, no source; its arithmetic)', () => {
    expect(casesPerRoll(1500 * yard, drawnLength(12 * inch, 2.5 * inch, 0))).toBe(3176)
  })

  // legs of 70 mm, nothing lost; derived
  it.each([
    [250, 2343, 3515, 4687],
    [300, 2077, 3115, 4154],
    [400, 1692, 2538, 3385],
    [500, 1428, 2142, 2856],
    [600, 1235, 1852, 2470],
  ])('cases of %d mm: %d, %d and %d of a roll of 914, 1371 and 1828 m', (length, ...expected) => {
    const drawn = drawnLength(length / 1000, 0.07, 0)
    expect([914, 1371, 1828].map((roll) => casesPerRoll(roll, drawn))).toEqual(expected)
  })

  it('a roll that is used up to the end is not changed after the last case', () => {
    expect(rollChanges(2538, 2538)).toBe(0)
    expect(rollChanges(2539, 2538)).toBe(1)
    expect(rollChanges(0, 2538)).toBe(0)
    expect(rollChanges(1, 0)).toBe(Infinity)
  })

  // core of 85 mm outside (from memory), mm; derived
  it.each([
    [41, 234, 281, 292, 320],
    [45, 244, 293, 305, 335],
    [50, 256, 307, 320, 352],
    [65, 288, 347, 362, 398],
    [75, 307, 372, 388, 426],
  ])('tape of %d um winds to %d, %d, %d and %d mm', (thickness, ...expected) => {
    const diameters = [914, 1371, 1500, 1828].map((roll) => rollDiameter(roll, thickness * micrometre))
    expect(diameters.map((diameter) => Math.round(diameter * 1000))).toEqual(expected)
  })

  it('an empty roll is its core', () => {
    expect(rollDiameter(0, 48 * micrometre)).toBe(coreDiameter)
  })
})

describe('mass', () => {
  // film at 905 kg/m3 (ASTM D1505 on a trade data sheet), adhesive at 1000 (from memory): g/m2 and kg of the rolls; derived
  it.each([
    [25, 16, 38.6, [2.5, 3.8, 3.4, 5.1]],
    [28, 20, 45.3, [3.0, 4.5, 4.0, 6.0]],
    [40, 25, 61.2, [4.0, 6.0, 5.4, 8.1]],
    // 1828 m of 72 mm come to 9.246 kg
    [50, 25, 70.2, [4.6, 6.9, 6.2, 9.2]],
  ])('film %d um and adhesive %d um: %d g/m2', (film, adhesive, grams, rolls) => {
    const perArea = arealMass(film * micrometre, adhesive * micrometre)
    expect(Math.abs(perArea * 1000 - grams)).toBeLessThanOrEqual(0.05 + 1e-9)
    const weighed = [
      [1371, 0.048],
      [1371, 0.072],
      [1828, 0.048],
      [1828, 0.072],
    ].map(([roll, width]) => rollMass(roll!, width!, perArea))
    for (const [index, kilograms] of weighed.entries())
      expect(Math.abs(kilograms - rolls[index]!)).toBeLessThanOrEqual(0.05 + 1e-9)
  })

  // at 45.3 g/m2, legs of 70 mm, top and bottom: kg on 1000 cases with 48 and 72 mm; derived
  it.each([
    [300, '1.91', '2.87'],
    [400, '2.35', '3.52'],
    [500, '2.78', '4.17'],
    [600, '3.22', '4.83'],
  ])('1000 cases of %d mm: %s and %s kg', (length, narrow, wide) => {
    const tape = 1000 * 2 * drawnLength(length / 1000, 0.07, 0)
    expect(rollMass(tape, 0.048, 0.0453).toFixed(2)).toBe(narrow)
    expect(rollMass(tape, 0.072, 0.0453).toFixed(2)).toBe(wide)
  })

  it('48 um of tape splits into 28 and 20, of which the film is 56 % of the mass', () => {
    const { film, adhesive } = layersOf(48 * micrometre)
    expect(film).toBeCloseTo(28 * micrometre, 12)
    expect(adhesive).toBeCloseTo(20 * micrometre, 12)
    expect((arealMass(film, 0) / arealMass(film, adhesive)).toFixed(2)).toBe('0.56')
    expect(massPerMetre(0.048, 48 * micrometre)).toBeCloseTo(0.048 * arealMass(film, adhesive), 15)
  })

  it('goes with the width: 72 instead of 48 mm is half as much again, 36 a quarter less', () => {
    expect(massPerMetre(0.072, 5e-5) / massPerMetre(0.048, 5e-5)).toBeCloseTo(1.5, 12)
    expect(massPerMetre(0.036, 5e-5) / massPerMetre(0.048, 5e-5)).toBeCloseTo(0.75, 12)
  })
})
