/** One line worked through by hand, from the belt to the mass of the tape. */
import { describe, expect, it } from 'vitest'
import { allows, limitsOf } from '../../src/trade/board.js'
import { unitedSize } from '../../src/trade/case.js'
import { legsFit, takesTape } from '../../src/trade/head.js'
import { steadyRate } from '../../src/trade/headway.js'
import { casesPerRoll, drawnLength, massPerMetre, rollChanges } from '../../src/trade/tape.js'
import { foot, inch } from '../../src/trade/us-units.js'

// case 400 x 300 x 300 mm of 12 kg in C flute, 32 lb/in; belts 80 ft/min, gap 300 mm; 15 cases a minute for 8 h; two heads with 48 mm tape on
// 1371 m, 28 + 20 um, legs 70 mm; nothing stops
describe('400 mm cases, 15 a minute for 8 h', () => {
  const size = { length: 0.4, width: 0.3, height: 0.3 }
  const cases = 15 * 60 * 8
  const strip = drawnLength(size.length, 0.07, 0)
  const perRoll = casesPerRoll(1371, strip)

  it('the belts pass 34.8 a minute and are busy for 43 % of the time', () => {
    // 24.384 m/min over 0.7 m
    const rate = steadyRate((80 * foot) / 60, size.length, 0.3) * 60
    expect(rate).toBeCloseTo(24.384 / 0.7, 9)
    expect(Math.round(1500 / rate)).toBe(43)
  })

  it('7200 cases take 7776 m of tape, 1.08 m each', () => {
    expect(cases).toBe(7200)
    expect(2 * strip).toBeCloseTo(1.08, 12)
    expect(2 * strip * cases).toBeCloseTo(7776, 8)
  })

  it('a roll lasts 2538 cases and leaves 0.48 m; each head is changed twice, four times in all', () => {
    expect(perRoll).toBe(2538)
    expect(1371 - perRoll * strip).toBeCloseTo(0.48, 9)
    expect(2 * rollChanges(cases, perRoll)).toBe(4)
  })

  it('the tape weighs 16.9 kg', () => {
    const mass = cases * 2 * strip * massPerMetre(0.048, 48e-6)
    expect(mass.toFixed(1)).toBe('16.9')
  })

  it('board, legs and heads fit: 12 kg of 29.5, 39.4 in of 75', () => {
    const limits = limitsOf({ wall: 'single', ect: 5604, flute: 'C' })!
    expect((unitedSize(size) / inch).toFixed(1)).toBe('39.4')
    expect(allows(limits, 12, unitedSize(size))).toBe(true)
    expect(legsFit(size.height, 0.07, 0.07)).toBe(true)
    expect(takesTape(0.036, 0.05, 0.048)).toBe(true)
  })
})
