/**
 * Quantiles and tails that intervals and tests rest on, from few to many degrees of freedom: values of R 4.2 (qt, qchisq, qbeta, pbinom, pt),
 * fifteen digits, and closed forms. All are wanted to 1e-12 of themselves.
 */
import { describe, expect, it } from 'vitest'
import {
  beta,
  binomialAtMost,
  chiSquare,
  signTest,
  studentT,
  studentTBeyond,
} from '../../src/statistics/quantile.js'
import { nearly } from '../nearly.js'

describe('Student t', () => {
  it.each([
    // degrees of freedom; 60 %, 97.5 %, 99.95 %
    [1, 0.324919696232906, 12.7062047361747, 636.61924876879],
    [1.5, 0.300745392569795, 6.01666310442793, 82.8474467036637],
    [2.37, 0.283039911766725, 3.71892083979746, 20.5580590980674],
    [7.3, 0.262756805250719, 2.3450667365477, 5.2832117589395],
    [29, 0.255683634571256, 2.0452296421327, 3.65940501946637],
    [1000, 0.253414515839499, 1.96233908082641, 3.30028264842394],
    [1_000_000, 0.253347170537842, 1.95996635681411, 3.29053646124872],
  ])('with %d degrees of freedom', (df, ...values) => {
    for (const [index, p] of [0.6, 0.975, 0.9995].entries()) {
      nearly(studentT(p, df), values[index]!, 1e-12)
      nearly(studentT(1 - p, df), -values[index]!, 1e-12)
    }
    expect(studentT(0.5, df)).toBe(0)
  })

  it('with 2 degrees of freedom is (2p - 1) sqrt(2 / (4 p (1 - p))), to the very ends', () => {
    for (const p of [1e-10, 0.2, 0.975, 1 - 2 ** -33])
      nearly(studentT(p, 2), (2 * p - 1) * Math.sqrt(2 / (4 * p * (1 - p))), 1e-12)
  })

  it.each([
    [40, 100, 2.46210760214007e-63],
    [1, 1, 0.5],
    [5, 1_000_000, 5.73399787089074e-7],
    [12, 7.3, 4.55578522957055e-6],
    [-0.01, 29, 0.992089764803225],
    [0, 5, 1],
    [Number.POSITIVE_INFINITY, 5, 0],
  ])('lies as far out as %d or farther, with %d', (t, df, chance) => {
    // df / (df + t^2) is rounded by half of 2^-52, of which df / 2 times as much comes through
    nearly(studentTBeyond(t, df), chance, Math.max(2e-12, (df / 4) * Number.EPSILON))
  })
})

describe('chi-square', () => {
  it.each([
    // degrees of freedom; 0.5 %, 50 %, 99.5 %
    [1, 3.92704222205159e-5, 0.454936423119573, 7.87943857662241],
    [2.5, 0.032113433111051, 1.87384776778088, 11.753761484983],
    [30, 13.7867198595027, 29.3360315166616, 53.6719619302406],
    [2000, 1840.84809232672, 1999.33337285393, 2166.66430039156],
    [1_000_000, 996360.983935382, 999999.333333412, 1003646.52925848],
  ])('with %d degrees of freedom', (df, ...values) => {
    for (const [index, p] of [0.005, 0.5, 0.995].entries()) nearly(chiSquare(p, df), values[index]!, 1e-12)
  })

  it('with 2 is -2 ln(1 - p)', () => {
    for (const p of [1e-9, 0.05, 0.5, 0.9, 1 - 2 ** -33]) nearly(chiSquare(p, 2), -2 * Math.log1p(-p), 1e-12)
  })
})

describe('beta', () => {
  it.each([
    [0.05, 36.5, 39_964.5, 0.000679137187031752],
    [0.95, 36.5, 39_964.5, 0.00117414831905806],
    [0.95, 0.01, 100_000, 3.36264058659505e-8],
    [0.05, 0.5, 40_000.5, 4.91514415948332e-8],
    [0.025, 1_000_000, 1_000_000, 0.499307048333949],
    [0.975, 1_000_000, 5, 0.999998376518175],
    [0.95, 2, 3, 0.751395374269818],
  ])('below which %d lies, with shapes %d and %d', (p, a, b, value) => {
    nearly(beta(p, a, b), value, 1e-12)
  })

  it('with shape 1 is p^(1/a), and 1 - (1 - p)^(1/b)', () => {
    for (const p of [1e-6, 0.05, 0.5, 0.999])
      for (const shape of [0.01, 1, 3, 5000, 1e6]) {
        nearly(beta(p, shape, 1), p ** (1 / shape), 1e-12)
        nearly(beta(p, 1, shape), -Math.expm1(Math.log1p(-p) / shape), 1e-12)
      }
  })
})

describe('binomial', () => {
  it.each([
    [9, 1000, 0.1, 1.30467325061494e-33],
    [20, 1000, 0.1, 5.96248787659694e-24],
    [95_000, 100_000, 0.95, 0.502025961459828],
    [0, 4000, 0.001, 0.0182790198274895],
    [9, 10, 0.5, 1023 / 1024],
    [84, 100, 0.9, 0.0398905271110833],
    [999_999, 1_000_000, 0.999999, 0.632120742778933],
    [-1, 10, 0.3, 0],
    [10, 10, 0.3, 1],
  ])('at most %i of %i with chance %d', (k, n, p, chance) => {
    // 1000 terms that multiply leave their rounding
    nearly(binomialAtMost(k, n, p), chance, 5e-12)
  })

  it('none of n is (1 - p)^n, to where it is too small for a number', () => {
    for (const n of [1, 40, 4000, 100_000])
      nearly(binomialAtMost(0, n, 0.006), Math.exp(n * Math.log1p(-0.006)), 5e-12)
  })

  it.each([
    [0, 200, 2 ** -199],
    [9900, 10_001, 0.478410169536971],
    [5, 1000, 4.95881789452984e-290],
    [80, 100, 0.156531469578151],
    [99_800, 100_000, 0.656175201876174],
    [3, 20, 0.00048828125],
  ])('sign test of %i against %i', (ups, downs, chance) => {
    nearly(signTest(ups, downs), chance, 5e-12)
    nearly(signTest(downs, ups), chance, 5e-12)
  })
})
