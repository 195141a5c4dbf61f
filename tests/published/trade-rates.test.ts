/** Belt rates, effective process times and allowances by hand, against published worked examples. */
import { describe, expect, it } from 'vitest'
import { steadyRate } from '../../src/trade/headway.js'
import { availability, breakdownsPerCase, effectiveRate } from '../../src/trade/stops.js'
import { foot, inch } from '../../src/trade/us-units.js'
import { operatorLoad, workAllowance } from '../../src/trade/workload.js'

const hour = 3600

describe('rate and speed of a belt', () => {
  it('worked example of a trade page on parcel conveyors: 13 745 an hour at 2.1 m/s; 0.611 m/s for 4000', () => {
    expect(steadyRate(2.1, 0.3, 0.25) * hour).toBeCloseTo(13745.45, 2)
    expect(steadyRate(0.611111, 0.3, 0.25) * hour).toBeCloseTo(4000, 2)
  })

  // worked examples of a manufacturing handbook's page on the spacing of parts and carriers: pitch from front to front in inches,
  // parts an hour, share of the places that is filled, ft/min
  it.each([
    [10, 900, 0.92, 13.59],
    [10, 900, 0.99, 12.63],
    [10, 900, 0.66, 18.94],
    [24, 420, 0.95, 14.74],
    [24, 420, 0.99, 14.14],
  ])('pitch %d in, %d an hour, %d filled: %d ft/min', (pitch, perHour, filled, expected) => {
    // the printed speed is rounded to 0.01 ft/min
    const [least, most] = [-0.005, 0.005].map(
      (off) => steadyRate(((expected + off) * foot) / 60, pitch * inch, 0) * filled * hour,
    )
    expect(least).toBeLessThanOrEqual(perHour)
    expect(most).toBeGreaterThanOrEqual(perHour)
  })
})

describe('effective process time', () => {
  // Hopp & Spearman, Factory Physics, ch. 8: the two machines Hare X19 and Tortoise 2000, 15 min a part
  it.each([
    { name: 'long breakdowns', meanUp: 744, meanRepair: 248 },
    { name: 'short breakdowns', meanUp: 114, meanRepair: 38 },
  ])('$name: available 75 %, 20 min a part', ({ meanUp, meanRepair }) => {
    expect(availability(meanUp, meanRepair)).toBeCloseTo(0.75, 12)
    expect(1 / effectiveRate(15, [{ perCase: breakdownsPerCase(15, meanUp), time: meanRepair }])).toBeCloseTo(
      20,
      12,
    )
  })

  // the same chapter: 1 h a part, settings of 2 h every 10 parts or 1 h every 5
  it.each([
    { every: 10, setting: 2 },
    { every: 5, setting: 1 },
  ])('a setting of $setting h every $every parts: 1.2 h a part', ({ every, setting }) => {
    expect(1 / effectiveRate(1, [{ perCase: 1 / every, time: setting }])).toBeCloseTo(1.2, 12)
  })

  it('an exercise on the same formula: 1 min, fails every 100, repair 10: 1.1 min', () => {
    expect(1 / effectiveRate(1, [{ perCase: breakdownsPerCase(1, 100), time: 10 }])).toBeCloseTo(1.1, 12)
  })

  // mean completion time E[C] = E[S] (1 + failure rate x repair): Gaver, Journal of the Royal Statistical Society B 24 (1962);
  // Avi-Itzhak & Naor, Operations Research 11 (1963)
  it.each([
    { seal: 1, fails: 0.05, repair: 2, expected: 1.1 },
    { seal: 1, fails: 0.02, repair: 10, expected: 1.2 },
    { seal: 3, fails: 1 / 600, repair: 60, expected: 3.3 },
  ])('$seal, failing at $fails for $repair: $expected', ({ seal, fails, repair, expected }) => {
    const stop = { perCase: breakdownsPerCase(seal, 1 / fails), time: repair }
    expect(1 / effectiveRate(seal, [stop])).toBeCloseTo(expected, 12)
  })
})

describe('allowance', () => {
  it('29 CFR 525.12(h)(2)(ii): not less than 15 %, 9 to 10 min an hour', () => {
    expect(workAllowance).toBe(0.15)
    expect(operatorLoad([{ rate: 1, time: 60 }], 1) - 60).toBeCloseTo(9, 12)
  })
})
