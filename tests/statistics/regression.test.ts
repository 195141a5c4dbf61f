/** Least squares against certified values, and against a general-purpose library. */
import { linearRegression, rSquared } from 'simple-statistics'
import { describe, expect, it } from 'vitest'
import { regression } from '../../src/statistics/regression.js'

/**
 * Longley's data with the certified values of NIST/SEMATECH, Statistical Reference Datasets, Linear Regression, "Longley" (from memory): six
 * factors that hang together closely, on which weak methods fail.
 */
const longley = [
  [60323, 83.0, 234289, 2356, 1590, 107608, 1947],
  [61122, 88.5, 259426, 2325, 1456, 108632, 1948],
  [60171, 88.2, 258054, 3682, 1616, 109773, 1949],
  [61187, 89.5, 284599, 3351, 1650, 110929, 1950],
  [63221, 96.2, 328975, 2099, 3099, 112075, 1951],
  [63639, 98.1, 346999, 1932, 3594, 113270, 1952],
  [64989, 99.0, 365385, 1870, 3547, 115094, 1953],
  [63761, 100.0, 363112, 3578, 3350, 116219, 1954],
  [66019, 101.2, 397469, 2904, 3048, 117388, 1955],
  [67857, 104.6, 419180, 2822, 2857, 118734, 1956],
  [68169, 108.4, 442769, 2936, 2798, 120445, 1957],
  [66513, 110.8, 444546, 4681, 2637, 121950, 1958],
  [68655, 112.6, 482704, 3813, 2552, 123366, 1959],
  [69564, 114.2, 502601, 3931, 2514, 125368, 1960],
  [69331, 115.7, 518173, 4806, 2572, 127852, 1961],
  [70551, 116.9, 554894, 4007, 2827, 130081, 1962],
]
const certified = {
  intercept: -3482258.63459582,
  slopes: [
    [15.0618722713733, 84.9149257747669],
    [-0.035819179292591, 0.0334910077722432],
    [-2.02022980381683, 0.488399681651699],
    [-1.03322686717359, 0.214274163161675],
    [-0.0511041056535807, 0.22607320006937],
    [1829.15146461355, 455.478499142212],
  ],
  residual: 304.854073561965,
  explained: 0.995479004577296,
}

describe("Longley's regression", () => {
  const fitted = regression(
    longley.map(([, ...factors]) => factors),
    longley.map(([y]) => y!),
    0.95,
  )!

  it('has the certified coefficients to eight digits', () => {
    expect(fitted.intercept / certified.intercept).toBeCloseTo(1, 8)
    for (const [index, [slope]] of certified.slopes.entries())
      expect(fitted.slopes[index]!.mean / slope!).toBeCloseTo(1, 8)
  })

  it('has the certified residual deviation and R squared', () => {
    expect(fitted.residual / certified.residual).toBeCloseTo(1, 8)
    expect(fitted.explained).toBeCloseTo(certified.explained, 10)
    expect(fitted.degreesOfFreedom).toBe(9)
  })

  it('has intervals of the certified deviations: t 0.975 of 9 degrees of freedom is 2.262157 (any table)', () => {
    for (const [index, [slope, deviation]] of certified.slopes.entries()) {
      const { high, low, isShown } = fitted.slopes[index]!
      expect((high - low) / 2 / deviation!).toBeCloseTo(2.262157, 5)
      expect(isShown).toBe(Math.abs(slope!) > 2.262157 * deviation!)
    }
  })
})

describe('one factor', () => {
  const x = [0, 0.2, 0.4, 0.7, 1]
  const y = [3, 3.4, 3.1, 4.2, 4]

  it('agrees with simple-statistics', () => {
    const { m, b } = linearRegression(x.map((value, index) => [value, y[index]!]))
    const fitted = regression(
      x.map((value) => [value]),
      y,
      0.9,
    )!
    expect(fitted.intercept).toBeCloseTo(b, 12)
    expect(fitted.slopes[0]!.mean).toBeCloseTo(m, 12)
    const points = x.map((value, index) => [value, y[index]!] as [number, number])
    expect(fitted.explained).toBeCloseTo(
      rSquared(points, (value) => m * value + b),
      12,
    )
    // of one factor the standardised slope is the correlation, its square R squared
    expect(fitted.slopes[0]!.standardised ** 2).toBeCloseTo(fitted.explained, 12)
  })

  it('is judged more strictly as one of several', () => {
    const rows = x.map((value) => [value])
    const [alone, many] = [1, 20].map((count) => regression(rows, y, 0.95, count)!.slopes[0]!)
    expect(many!.high - many!.low).toBeGreaterThan(1.5 * (alone!.high - alone!.low))
    expect(many!.mean).toBe(alone!.mean)
  })
})

describe('what cannot be fitted', () => {
  it('is null: too few rows, factors that follow from others, figures that are not known', () => {
    expect(regression([[0], [1]], [1, 2], 0.95)).toBeNull()
    expect(
      regression(
        [0, 1, 2, 3].map((value) => [value, 2 * value]),
        [1, 2, 4, 3],
        0.95,
      ),
    ).toBeNull()
    expect(regression([[0], [1], [2]], [1, Number.NaN, 2], 0.95)).toBeNull()
  })

  it('explains nothing of figures that do not vary', () => {
    const { explained, slopes } = regression([[0], [1], [2]], [5, 5, 5], 0.95)!
    expect(explained).toBeNaN()
    expect(slopes[0]).toMatchObject({ mean: 0, isShown: false })
  })

  it('takes rounding for nothing', () => {
    const third = 1 / 3
    const nearly = [third, third + 1e-16, third - 1e-16, third]
    expect(regression([[0], [1], [2], [4]], nearly, 0.95)!.explained).toBeNaN()
    // exactly a line in the first factor: the second does nothing
    const rows = [0, 1, 2, 3, 4, 5].map((row) => [row / 5, ((row * 5) % 7) / 7])
    const fitted = regression(
      rows,
      rows.map(([a]) => 0.1 + 0.7 * a!),
      0.95,
    )!
    expect(fitted.slopes[0]!.mean).toBeCloseTo(0.7, 12)
    expect(fitted.slopes[1]).toMatchObject({ mean: 0, isShown: false })
    expect(fitted.residual).toBe(0)
  })
})
