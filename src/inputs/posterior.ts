/** What a chance, a rate or a guessed value may be: each by inversion of one number on (0, 1). */
import { exp, ln } from '../engine/logarithms.js'
import { logGammaQuantile } from '../engine/tails.js'
import type { Known } from '../scenario/known.js'
import { beta, standardNormal } from '../statistics/quantile.js'

/** Shapes from which the cube root of a gamma value is as good as normal: within 1e-8 of the value. */
const largeShape = 1e5

/** Value of the gamma law with this shape and scale 1 below which the share `u` lies. Wilson & Hilferty (1931) for large shapes (from memory). */
export function gammaAt(u: number, shape: number): number {
  if (shape < largeShape) return exp(logGammaQuantile(u, shape))
  const spread = 1 / (9 * shape)
  const root = 1 - spread + standardNormal(u) * Math.sqrt(spread)
  return shape * root * root * root
}

/** Events a unit of exposure, of which `events` were counted: gamma, by the prior of Jeffreys. */
export const rateAt = (u: number, events: number, exposure: number): number =>
  gammaAt(u, events + 1 / 2) / exposure

/** A chance of which `events` in `trials` were counted: beta, by the prior of Jeffreys. */
export const chanceAt = (u: number, events: number, trials: number): number =>
  beta(u, events + 1 / 2, trials - events + 1 / 2)

/** The standard normal law lies this far on either side of 0 with 90 %. */
const reach = standardNormal(0.95)

const logit = (share: number): number => ln(share / (1 - share))

/** A guessed value: the law of its spread that has 5 % below the lower end and 5 % above the upper one. */
export function guessAt(
  u: number,
  { low, high, spread }: Pick<Extract<Known, { form: 'guess' }>, 'low' | 'high' | 'spread'>,
): number {
  const between = (one: number, other: number) =>
    (one + other) / 2 + ((other - one) / 2 / reach) * standardNormal(u)
  switch (spread) {
    case 'normal':
      return between(low, high)
    case 'lognormal':
      return exp(between(ln(low), ln(high)))
    case 'logit-normal':
      return 1 / (1 + exp(-between(logit(low), logit(high))))
  }
}
