/** Quantiles read from tables against closed forms and those that are worked out, from the middle far into both tails. */
import { describe, expect, it } from 'vitest'
import { logGammaQuantile, normalQuantile } from '../../src/engine/tails.js'
import { inverse } from './inverse.js'

/** Shares of both halves, down to the last octave of a table; the cells meet none of them at their ends alone. */
const shares = Array.from({ length: 500 }, (_, index) => 2 ** (-1 - (27.9 * index) / 499)).flatMap(
  (share) => [share, 1 - share],
)

const standardGamma = (shape: number) => inverse({ law: 'gamma', mean: shape, cv: 1 / Math.sqrt(shape) })
const standardNormal = inverse({ law: 'normal', mean: 0, sd: 1, atLeast: -40 })

describe('a quantile read from a table', () => {
  it('of the gamma law of shape 1 is that of the exponential law: -ln(1 - u)', () => {
    const quantile = standardGamma(1)
    for (const u of shares) expect(Math.abs(quantile(u) + Math.log1p(-u)), `u ${u}`).toBeLessThan(1e-7)
  })

  it('of an Erlang law has the distribution function 1 - exp(-x)(1 + x + x²/2 + x³/6)', () => {
    const quantile = standardGamma(4)
    for (const u of shares) {
      const x = quantile(u)
      const above = Math.exp(-x) * (1 + x + x ** 2 / 2 + x ** 3 / 6)
      // what an error of 1e-7 of the mean does to the share: the density at most, e^-x x³/6
      expect(Math.abs(above - (1 - u)), `u ${u}`).toBeLessThan(4e-7 * Math.exp(-x) * (x ** 3 / 6) + 1e-15)
    }
  })

  it('of the gamma law of shape 1/2 is half the square of a normal quantile', () => {
    const quantile = standardGamma(0.5)
    for (const u of shares.filter((each) => each > 2 ** -20 && each < 1 - 2 ** -20))
      expect(Math.abs(quantile(u) - standardNormal((1 + u) / 2) ** 2 / 2), `u ${u}`).toBeLessThan(2e-7)
  })

  it('of the normal law lies as far below 0 as that of the other tail above', () => {
    for (const u of shares) expect(Math.abs(standardNormal(u) + standardNormal(1 - u))).toBeLessThan(1e-7)
    expect(Math.abs(standardNormal(0.5))).toBeLessThan(1e-7)
  })

  it.each([0.04, 0.25, 0.5, 2, 4, 10, 400, 500, 10_000])('of shape %d is what is worked out', (shape) => {
    const quantile = standardGamma(shape)
    const size = Math.max(shape, Math.sqrt(shape))
    for (const u of shares)
      expect(Math.abs(quantile(u) - Math.exp(logGammaQuantile(u, shape))), `u ${u}`).toBeLessThan(1e-7 * size)
  })

  it('of the normal law is what is worked out, beyond the table too', () => {
    for (const u of [...shares, 2 ** -31, 1 - 2 ** -31])
      expect(Math.abs(standardNormal(u) - normalQuantile(u)), `u ${u}`).toBeLessThan(1e-7)
  })

  it.each([
    // R 4.2: -qnorm((1 - u) * pnorm(-cut)) with u 1e-6, 1/2, 0.999 and 1 - 2^-32
    [0, [1.25331413735187e-6, 0.674489750196082, 3.29052673149189, 6.33795775455379]],
    [5, [5.0000001928082, 5.1320183320443, 6.19760082293609, 8.27042480657535]],
  ])('of the normal law cut %d deviations above its mean, to the last draw', (cut, values) => {
    const quantile = inverse({ law: 'normal', mean: 0, sd: 1, atLeast: cut })
    for (const [index, u] of [1e-6, 0.5, 0.999, 1 - 2 ** -32].entries())
      expect(Math.abs(quantile(u) - values[index]!), `u ${u}`).toBeLessThan(1e-7)
  })
})
