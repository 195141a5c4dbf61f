/** Control variates: the intercept of a regression, by hand and against a line through given points. */
import { describe, expect, it } from 'vitest'
import { ControlBasis, leastControlled } from '../../src/statistics/control.js'
import { meanEstimate, ratioEstimate } from '../../src/statistics/estimate.js'

const n = 120
/** Two columns that do not hang together, of mean 0 in truth but not in this sample. */
const rows = Array.from({ length: n }, (_, i) => [((7 * i) % 13) - 5, ((5 * i) % 11) - 4])

describe('controls', () => {
  it('that explain all leave the intercept, without a rest', () => {
    const values = rows.map(([a, b]) => 20 + 3 * a! - 2 * b!)
    const { shift, deviation } = ControlBasis.of(rows)!.explain(values)
    expect(values.reduce((sum, value) => sum + value, 0) / n - shift).toBeCloseTo(20, 10)
    expect(deviation).toBeLessThan(1e-9)
  })

  it('are believed from where they leave what one shift in n that was not seen could add', () => {
    // such a shift, one standard deviation off, moves the mean by sd / n: of 120 shifts that is 1 / sqrt(120) = 0.0913 of the standard error
    const noise = rows.map((_, i) => ((3 * i) % 7) - 3)
    const of = (size: number) => {
      const values = rows.map(([a], i) => 20 + 3 * a! + size * noise[i]!)
      return [meanEstimate(values, 0.95, ControlBasis.of(rows)), meanEstimate(values, 0.95)] as const
    }
    // the control has a spread of 3.74, three times that is 11.2; the noise one of 2: 0.4 of it leaves 0.071, 0.6 of it 0.107
    const [few, plain] = of(0.4)
    expect(few).toEqual(plain)
    const [enough] = of(0.6)
    expect(enough.shrink).toBeGreaterThan(0.0913)
    expect(enough.shrink).toBeLessThan(0.12)
    expect(Math.abs(enough.mean - 20)).toBeLessThan(0.05)
    expect(enough.n).toBe(n)
  })

  it('by hand: one control, the intercept and its standard error of simple regression', () => {
    // Draper & Smith, Applied Regression Analysis, ch. 1 (from memory): a = Y - b X, s.e.(a)^2 = s^2 (1/n + X^2 / Sxx)
    const x = rows.map(([a]) => a!)
    const y = x.map((value, i) => 5 + 0.5 * value + ((3 * i) % 7) - 3)
    const mean = (values: number[]) => values.reduce((sum, value) => sum + value, 0) / n
    const [mx, my] = [mean(x), mean(y)]
    const sxx = x.reduce((sum, value) => sum + (value - mx) ** 2, 0)
    const slope = x.reduce((sum, value, i) => sum + (value - mx) * (y[i]! - my), 0) / sxx
    const intercept = my - slope * mx
    const rest = y.reduce((sum, value, i) => sum + (value - intercept - slope * x[i]!) ** 2, 0)
    const error = Math.sqrt((rest / (n - 2)) * (1 / n + mx ** 2 / sxx))
    const basis = ControlBasis.of(x.map((value) => [value, 0]))!
    const { shift, deviation, degreesOfFreedom } = basis.explain(y)
    expect(my - shift).toBeCloseTo(intercept, 10)
    expect(deviation).toBeCloseTo(error, 10)
    expect(degreesOfFreedom).toBe(n - 2)
  })

  it('leave out one that is the other again', () => {
    const basis = ControlBasis.of(rows.map(([a]) => [a!, 2 * a!]))!
    expect(basis.explain(rows.map(([a]) => a!)).degreesOfFreedom).toBe(n - 2)
  })

  it('are not used where they say nothing or are few', () => {
    expect(ControlBasis.of(rows.map(() => [0, 0]))).toBeNull()
    expect(ControlBasis.of(rows.slice(0, leastControlled - 1))).toBeNull()
  })

  it('keep sums: figures that add up still do', () => {
    const a = rows.map(([x], i) => x! + ((3 * i) % 5))
    const b = rows.map(([, y], i) => 2 * y! + ((2 * i) % 3))
    const basis = ControlBasis.of(rows)
    const of = (values: number[]) => basis!.explain(values).shift
    expect(of(a.map((value, i) => value + b[i]!))).toBeCloseTo(of(a) + of(b), 10)
  })

  it('do not touch what does not vary, nor a figure with shifts that say nothing', () => {
    const basis = ControlBasis.of(rows)
    expect(meanEstimate(new Array(n).fill(7), 0.95, basis)).toEqual({ mean: 7, low: 7, high: 7, sd: 0, n })
    const holed = rows.map(([a], i) => (i === 3 ? Number.NaN : a!))
    expect(meanEstimate(holed, 0.95, basis)).toEqual(meanEstimate(holed, 0.95))
  })

  it('move a ratio by what its residuals owe to them', () => {
    // value = 2 x over, but for 0.1 x the control and a little noise
    const overs = rows.map((_, i) => 10 + (i % 4))
    const values = overs.map((over, i) => 2 * over + 0.1 * rows[i]![0]! + 0.02 * (((3 * i) % 7) - 3))
    const plain = ratioEstimate(values, overs, 0.95)
    const controlled = ratioEstimate(values, overs, 0.95, ControlBasis.of(rows))
    expect(Math.abs(controlled.mean - 2)).toBeLessThan(Math.abs(plain.mean - 2) / 3)
    expect(controlled.shrink).toBeLessThan(0.2)
  })
})
