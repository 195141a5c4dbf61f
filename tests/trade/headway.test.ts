/** Headway and the rate curve worked by hand, and its slope against differences. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  cycleTime,
  gapNeeded,
  rateCeiling,
  rateCurve,
  speedOfLittleGain,
  steadyRate,
} from '../../src/trade/headway.js'

const arm = { wipeTravel: 0.1, reset: 0.45 }

describe('steady rate', () => {
  it('60 ft/min, 400 mm, gap 300 mm: 26 a minute; gap 450 mm: 21.5', () => {
    // 18.288 m/min over 0.7 m and over 0.85 m
    expect(steadyRate(0.3048, 0.4, 0.3) * 60).toBeCloseTo(18.288 / 0.7, 9)
    expect((steadyRate(0.3048, 0.4, 0.45) * 60).toFixed(1)).toBe('21.5')
  })

  it('of a mix is that of its mean length: one of 300 mm to one of 500 mm', () => {
    const apart = [0.3, 0.5].map((length) => 1 / steadyRate(0.4, length, 0.3))
    expect(1 / steadyRate(0.4, 0.4, 0.3)).toBeCloseTo((apart[0]! + apart[1]!) / 2, 12)
  })

  it('waits for the slower of folding and headway', () => {
    expect(cycleTime(2, 3)).toBe(3)
    expect(cycleTime(2, 1)).toBe(2)
  })
})

describe('rate over belt speed', () => {
  it('the arm takes over from a minimum gap of 300 mm at 0.444 m/s', () => {
    // 0.1 + 0.45 v = 0.3
    const curve = rateCurve([0.3, 0.6], 0.4, 0.3, [arm])
    expect(curve[0]!.gap).toBeCloseTo(0.3, 12)
    expect(curve[1]!.gap).toBeCloseTo(0.37, 12)
    expect(curve[0]!.rate).toBeCloseTo(0.3 / 0.7, 12)
    expect(curve[1]!.rate).toBeCloseTo(0.6 / 0.77, 12)
  })

  it('never passes one case a reset of the slowest arm', () => {
    expect(rateCeiling([arm, { wipeTravel: 0.2, reset: 0.5 }])).toBe(2)
    expect(rateCeiling([])).toBe(Infinity)
    const [fast] = rateCurve([1e6], 0.4, 0.3, [arm])
    expect(fast!.rate).toBeLessThan(rateCeiling([arm]))
    expect(fast!.rate).toBeCloseTo(rateCeiling([arm]), 5)
  })

  // before 0.444 m/s a metre a second brings 1 / 0.7 = 1.43 cases; at once after it 0.5 / 0.49 = 1.02; then it falls as
  // 0.5 / (0.5 + 0.45 v)^2, to 0.5 at v = 0.5 / 0.45
  it.each([
    { worth: 1.5, speed: 0 },
    { worth: 1.2, speed: 0.2 / 0.45 },
    { worth: 0.5, speed: 0.5 / 0.45 },
  ])('one arm: less than $worth cases a metre from $speed m/s', ({ worth, speed }) => {
    expect(speedOfLittleGain(worth, 0.4, 0.3, [arm])).toBeCloseTo(speed, 12)
  })

  // an arm of 0.3 m and 0.2 s governs up to 0.5 m/s with 0.7 / (0.7 + 0.2 v)^2, then one of 0.1 m and 0.6 s with
  // 0.5 / (0.5 + 0.6 v)^2; where they meet the slope falls from 1.094 to 0.781
  it.each([
    { worth: 1.2, speed: (Math.sqrt(0.7 / 1.2) - 0.7) / 0.2 },
    { worth: 1, speed: 0.5 },
    { worth: 0.5, speed: 0.5 / 0.6 },
  ])('two arms: less than $worth cases a metre from $speed m/s', ({ worth, speed }) => {
    const arms = [
      { wipeTravel: 0.3, reset: 0.2 },
      { wipeTravel: 0.1, reset: 0.6 },
    ]
    expect(speedOfLittleGain(worth, 0.4, 0, arms)).toBeCloseTo(speed, 12)
  })

  it('without arms every metre a second brings the same', () => {
    expect(speedOfLittleGain(1, 0.4, 0.3, [])).toBe(Infinity)
    expect(speedOfLittleGain(2, 0.4, 0.3, [])).toBe(0)
  })

  it('on either side of that speed the curve rises by more and by less', () => {
    const cut = fc.record({
      wipeTravel: fc.double({ min: 0, max: 0.5, noNaN: true }),
      reset: fc.double({ min: 0.05, max: 2, noNaN: true }),
    })
    const measure = fc.double({ min: 0.1, max: 1, noNaN: true })
    fc.assert(
      fc.property(
        measure,
        measure,
        fc.array(cut, { minLength: 1, maxLength: 4 }),
        fc.double({ min: 0.01, max: 5, noNaN: true }),
        (length, minimumGap, cuts, worth) => {
          const speed = speedOfLittleGain(worth, length, minimumGap, cuts)
          const rise = (from: number, to: number) =>
            (steadyRate(to, length, gapNeeded(minimumGap, cuts, to)) -
              steadyRate(from, length, gapNeeded(minimumGap, cuts, from))) /
            (to - from)
          const step = 1e-3 * (1 + speed)
          expect(rise(speed, speed + step)).toBeLessThanOrEqual(worth * (1 + 1e-9))
          if (speed > step) expect(rise(speed - step, speed)).toBeGreaterThanOrEqual(worth * (1 - 1e-9))
        },
      ),
      { numRuns: 500, seed: 5 },
    )
  })
})
