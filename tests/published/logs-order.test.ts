/** Trend and independence of what a log holds, against published values. */
import { describe, expect, it } from 'vitest'
import { autocorrelations, ljungBox, runsAboutMedian } from '../../src/statistics/independence.js'
import { laplace, orderTrend, powerLawTrend } from '../../src/statistics/trend.js'
import { hormone, repairs } from './data/events.js'

const near = (value: number, digits = 6) => expect.closeTo(value, digits)

// NIST/SEMATECH e-Handbook of Statistical Methods, sec. 8.2.3.4 and 8.4.5.2 (data and 33 reversals, from memory); values by R 4.2.2
describe('repairs of a system that gets better', () => {
  const { times, end } = repairs
  const gaps = times.map((time, index) => time - (times[index - 1] ?? 0))

  it('reversals and rank correlation of gap against order', () => {
    expect(gaps).toEqual([5, 35, 3, 132, 214, 323, 35, 48, 504, 179])
    expect(orderTrend(gaps)).toEqual({
      reversals: 33,
      expected: 22.5,
      tau: near(0.4944132),
      pValue: near(0.04819348829, 9),
    })
  })

  it('a power law is shown', () => {
    const { statistic, atMost, pValue } = powerLawTrend(times, end)
    expect(statistic).toBeCloseTo(37.228081, 6)
    expect(atMost).toBeCloseTo(0.9890136, 7)
    expect(pValue).toBeCloseTo(2 * (1 - 0.9890136), 6)
  })

  it('Laplace is less sure', () => {
    const { statistic, atMost } = laplace(times, end)
    expect(statistic).toBeCloseTo(-1.326949, 6)
    expect(atMost).toBeCloseTo(0.0922627, 7)
  })
})

// data set `lh` of R; Box.test and the formulas by R 4.2.2
describe('hormone in blood every 10 min hangs together', () => {
  it('autocorrelations', () => {
    expect(autocorrelations(hormone, 3)).toEqual([near(0.5755245), near(0.1818182), near(-0.1447552)])
  })

  it.each([
    { lags: 1, statistic: 16.913792, pValue: 3.911634e-5 },
    { lags: 6, statistic: 22.698335, pValue: 9.040722e-4 },
  ])('Ljung-Box to lag $lags', ({ lags, statistic, pValue }) => {
    expect(ljungBox(hormone, lags)).toEqual({
      statistic: near(statistic),
      degreesOfFreedom: lags,
      pValue: near(pValue, 10),
    })
  })

  it('runs about the median', () => {
    expect(runsAboutMedian(hormone)).toEqual({
      runs: 13,
      expected: near(22.954545),
      above: 23,
      below: 21,
      statistic: near(-3.043367),
      pValue: near(0.0023395),
    })
  })
})
