/**
 * Shares and quantiles far out in the tails. Values of R 4.2 (pgamma, qgamma, qnorm), fifteen digits, recomputed with 40 digits; the rest are
 * closed forms. Its own last digits leave R some 1e-14, and a shape of 10,000 multiplies the rounding of x in a share by its root.
 */
import { describe, expect, it } from 'vitest'
import { gammaAbove, gammaBelow } from '../../src/engine/gamma-shares.js'
import { logGammaQuantile, normalQuantile } from '../../src/engine/tails.js'
import { nearly } from '../nearly.js'

const gammaQuantile = (p: number, shape: number) => Math.exp(logGammaQuantile(p, shape))
const least = 2 ** -33

describe('shares of the gamma law', () => {
  it('of shape 1 are those of the exponential law, of shape 2 above are e^-x (1 + x): by hand', () => {
    for (const x of [1e-12, 0.3, 1, 7, 40]) {
      nearly(gammaBelow(x, 1), -Math.expm1(-x), 1e-13)
      nearly(gammaAbove(x, 1), Math.exp(-x), 1e-13)
      nearly(gammaAbove(x, 2), Math.exp(-x) * (1 + x), 1e-13)
    }
  })

  it.each([
    // shape; below shape - 5 deviations, below the shape, above shape + 5 deviations
    [500, 3.06091053988689e-8, 0.50594714617076, 1.40587240058722e-6],
    [1000, 6.45281959044686e-8, 0.504205244180216, 9.26613171951059e-7],
    [10_000, 1.86245465179516e-7, 0.501329808339955, 4.27587245505965e-7],
    [1_000_000, 2.74958035927007e-7, 0.500132980760873, 2.98749014011464e-7],
  ])('of shape %d', (shape, low, middle, high) => {
    const deviation = Math.sqrt(shape)
    nearly(gammaBelow(shape - 5 * deviation, shape), low, 1e-11)
    nearly(gammaBelow(shape, shape), middle, 1e-12)
    nearly(gammaAbove(shape + 5 * deviation, shape), high, 1e-11)
  })

  it('add up to 1, from end to end', () => {
    for (const shape of [0.04, 3, 499, 500, 10_000])
      for (const x of [0, shape / 2, shape, shape * 1.1, 4 * shape, Number.POSITIVE_INFINITY])
        nearly(gammaBelow(x, shape) + gammaAbove(x, shape), 1, 1e-13)
    expect([gammaBelow(0, 900), gammaAbove(0, 900)]).toEqual([0, 1])
    expect([gammaBelow(Infinity, 900), gammaAbove(Infinity, 900)]).toEqual([1, 0])
  })

  it('go on where the way of working them out changes', () => {
    for (const z of [-6, -1, 0, 1, 6]) {
      const x = 500 + z * Math.sqrt(500)
      // what 1e-9 of the shape changes in the share is less than z^2 times 1e-9 of it
      nearly(gammaBelow(x, 500 - 1e-9), gammaBelow(x, 500), 1e-9)
      nearly(gammaAbove(x, 500 - 1e-9), gammaAbove(x, 500), 1e-9)
    }
  })
})

describe('quantiles of the gamma law', () => {
  it.each([
    // shape; 2^-33, 0.3, 0.975, 1 - 2^-33
    [0.04, 2.59172302732914e-249, 4.91322189112145e-14, 0.457965002322481, 16.9095294414574],
    [0.5, 1.06441299377704e-20, 0.0742359309162727, 2.51194309365744, 20.7621460911579],
    [4, 0.00728094388943877, 2.76371104261265, 8.76727306974232, 31.5316241202642],
    [100, 49.0263080977886, 94.5242993588807, 120.528947753155, 176.961135255462],
    [499, 370.202917819821, 487.048531907132, 543.721600359444, 653.884969875262],
    [500, 371.061413691544, 488.036795628887, 544.765456387457, 655.026524477506],
    [1000, 812.441653365189, 983.178446757899, 1062.92115122489, 1213.65888168158],
    [10_000, 9379.20176299297, 9947.31926201958, 10196.9418249999, 10646.9101152985],
  ])('of shape %d', (shape, ...values) => {
    // the logarithm of 1e-249 has its last digit at 1e-13
    for (const [index, p] of [least, 0.3, 0.975, 1 - least].entries())
      nearly(gammaQuantile(p, shape), values[index]!, 2e-13)
  })

  it('too small for a number are told by their logarithms: x^a / gamma(a + 1) is the share', () => {
    // gamma(1.01) = 0.9943258511915060 (Abramowitz & Stegun, table 6.1, digits from R)
    nearly(logGammaQuantile(least, 0.01), 100 * Math.log(least * 0.994325851191506), 1e-12)
  })

  it('lead back to their shares', () => {
    for (const shape of [0.04, 0.3, 1, 7, 200, 3000, 1e6])
      for (const p of [1e-12, 0.02, 0.5]) {
        nearly(gammaBelow(gammaQuantile(p, shape), shape), p, 1e-11)
        nearly(gammaAbove(gammaQuantile(1 - p, shape), shape), 1 - (1 - p), 1e-11)
      }
  })

  it('end at 0 and without end, and of what is no share are no number', () => {
    expect(logGammaQuantile(0, 2)).toBe(-Infinity)
    expect(logGammaQuantile(1, 2)).toBe(Infinity)
    for (const p of [Number.NaN, -0.1, 1.1]) {
      expect(logGammaQuantile(p, 2)).toBeNaN()
      expect(normalQuantile(p)).toBeNaN()
    }
  })
})

describe('quantiles of the normal law', () => {
  it.each([
    [1e-300, -37.0470962993612],
    [1e-17, -8.4937932241096],
    [least, -6.33795775455379],
    [1e-5, -4.26489079392283],
    [0.3, -0.524400512708041],
  ])('below which %d lies', (p, value) => {
    nearly(normalQuantile(p), value, 1e-13)
    // as far above: of p = 1e-17 and less 1 - p is 1
    if (p > 1e-16) expect(normalQuantile(1 - p)).toBe(-normalQuantile(1 - (1 - p)))
  })

  it('are 0 in the middle, and end nowhere', () => {
    expect(Math.abs(normalQuantile(0.5))).toBeLessThan(1e-16)
    expect(normalQuantile(0)).toBe(-Infinity)
    expect(normalQuantile(1)).toBe(Infinity)
  })
})
