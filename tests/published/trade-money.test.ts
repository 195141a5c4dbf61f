/** Present worth, annuity and payback against the interest tables and a worked example of the textbooks. */
import { describe, expect, it } from 'vitest'
import { capitalRecovery, netPresentValue, simplePayback } from '../../src/trade/money.js'

const level = (amount: number, years: number): number[] => Array<number>(years).fill(amount)

describe('interest tables', () => {
  // compound interest tables in any textbook of engineering economics (Newnan, Engineering Economic Analysis, appendix; values from
  // memory, to the four digits printed): capital recovery A/P and present worth P/A
  it.each([
    { rate: 0.05, years: 20, recovery: 0.0802, worth: 12.462 },
    { rate: 0.08, years: 10, recovery: 0.149, worth: 6.71 },
    { rate: 0.1, years: 5, recovery: 0.2638, worth: 3.791 },
    { rate: 0.1, years: 20, recovery: 0.1175, worth: 8.514 },
    { rate: 0.12, years: 5, recovery: 0.2774, worth: 3.605 },
  ])('$rate over $years years: $recovery and $worth', ({ rate, years, recovery, worth }) => {
    expect(Math.abs(capitalRecovery(1, rate, years) - recovery)).toBeLessThanOrEqual(0.00005)
    expect(Math.abs(netPresentValue(0, level(1, years), rate) - worth)).toBeLessThanOrEqual(0.0005)
  })

  // the same tables, present worth of one sum P/F at 10 %
  it.each([
    [1, 0.9091],
    [2, 0.8264],
    [5, 0.6209],
    [10, 0.3855],
  ])('1 after %d years at 10 %%: %d', (years, worth) => {
    expect(Math.abs(netPresentValue(0, [...level(0, years - 1), 1], 0.1) - worth)).toBeLessThanOrEqual(
      0.00005,
    )
  })

  it('an annuity is worth its capital', () => {
    expect(netPresentValue(1000, level(capitalRecovery(1000, 0.07, 9), 9), 0.07)).toBeCloseTo(0, 9)
    expect(capitalRecovery(1000, 0, 8)).toBe(125)
  })
})

describe('payback', () => {
  // Ross, Westerfield & Jordan, Fundamentals of Corporate Finance, ch. 9: 300 bring 100 a year for five years at 12.5 %; the
  // discounted flows are printed 89, 79, 70, 62, 55 (from memory); payback three years
  it('300 for five times 100 at 12.5 %: three years, and the discounted flows', () => {
    expect(simplePayback(300, 100)).toBe(3)
    const flows = [1, 2, 3, 4, 5].map(
      (years) =>
        netPresentValue(0, level(100, years), 0.125) - netPresentValue(0, level(100, years - 1), 0.125),
    )
    expect(flows.map(Math.floor)).toEqual([88, 79, 70, 62, 55])
    expect(flows.map((flow) => flow.toFixed(1))).toEqual(['88.9', '79.0', '70.2', '62.4', '55.5'])
  })
})
