/** Money worked by hand; prices are invented. */
import { describe, expect, it } from 'vitest'
import {
  breakEvenFailures,
  capitalPerShift,
  labourCost,
  netPresentValue,
  simplePayback,
} from '../../src/trade/money.js'

describe('cost', () => {
  it('16 200 more for tape pay at 6 a failed case with 2700 fewer of them', () => {
    expect(breakEvenFailures(16_200, 6)).toBe(2700)
  })

  it('two people at 28 an hour for 7 h 30 min: 420', () => {
    expect(labourCost(2, 28, 27_000)).toBe(420)
  })

  it('60 and 40 over a year at 10 % are 110, half of one in each of 220 shifts', () => {
    const year = 365.25 * 24 * 3600
    const invested = {
      capital: { sealer: { amount: 60 }, infeed: { amount: 40 } },
      interest: 0.1,
      shifts: 220,
    }
    expect(capitalPerShift({ ...invested, life: year })).toBeCloseTo(0.5, 12)
    expect(capitalPerShift({ ...invested, interest: 0, life: 10 * year })).toBeCloseTo(10 / 220, 12)
    // nothing bought, or how it is paid back not said
    expect(capitalPerShift({ ...invested, life: year, capital: {} })).toBeNull()
    expect(capitalPerShift({ ...invested })).toBeNull()
    expect(capitalPerShift({})).toBeNull()
  })
})

describe('an investment', () => {
  it('of 1000 with 500 and 700 saved at 10 %', () => {
    // 454.5455 + 578.5124 - 1000
    expect(netPresentValue(1000, [500, 700], 0.1)).toBeCloseTo(33.0579, 4)
    expect(netPresentValue(1000, [], 0.1)).toBe(-1000)
  })

  it('that saves nothing is never paid back', () => {
    expect(simplePayback(1000, 0)).toBe(Infinity)
    expect(simplePayback(1000, -5)).toBe(Infinity)
  })
})
