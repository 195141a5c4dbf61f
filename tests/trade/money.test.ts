/** Money worked by hand; prices are invented. */
import { describe, expect, it } from 'vitest'
import {
  breakEvenFailures,
  capitalPerShift,
  discountedPayback,
  labourCost,
  labourPerCase,
  netPresentValue,
  simplePayback,
  tapeCostPerThousand,
} from '../../src/trade/money.js'

describe('cost', () => {
  it('a million 400 mm cases with legs of 70 mm: 32 400 at 0.03 a metre, 48 600 at half as much again', () => {
    expect(1000 * tapeCostPerThousand(1.08, 0.03)).toBeCloseTo(32_400, 9)
    expect(1000 * tapeCostPerThousand(1.08, 0.045)).toBeCloseTo(48_600, 9)
    // 16 200 more pay at 6 a failed case with 2700 fewer of them
    expect(breakEvenFailures(16_200, 6)).toBe(2700)
  })

  it('tape that is lost is bought too', () => {
    expect(tapeCostPerThousand(1.08, 0.03, 0.1)).toBeCloseTo(36, 12)
    expect(tapeCostPerThousand(1.08, 0.03, 1)).toBe(Infinity)
  })

  it('two people at 28 an hour on 800 good cases: 7 cents a case', () => {
    expect(labourPerCase(2, 28, 800)).toBeCloseTo(0.07, 12)
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
  it('of 1000 with 500 and 600 saved and 100 left at 10 %', () => {
    // 454.5455 + 495.8678 + 82.6446 - 1000
    expect(netPresentValue(1000, [500, 600], 0.1, 100)).toBeCloseTo(33.0579, 4)
    expect(netPresentValue(1000, [], 0.1)).toBe(-1000)
  })

  it('is paid back in the year in which its present value comes to nothing, or never', () => {
    expect(discountedPayback(1000, [500, 600], 0)).toBe(2)
    expect(discountedPayback(300, [100, 100, 100, 100], 0)).toBe(3)
    expect(discountedPayback(1000, [500, 500], 0.1)).toBe(Infinity)
    // 110 / 1.1 + 121 / 1.21 is 200 but for rounding
    expect(discountedPayback(200, [110, 121, 1], 0.1)).toBe(2)
    expect(discountedPayback(0, [100], 0.1)).toBe(0)
    expect(simplePayback(1000, 0)).toBe(Infinity)
    expect(simplePayback(1000, -5)).toBe(Infinity)
  })
})
