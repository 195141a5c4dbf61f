/**
 * Intervals of a figure of a mixture from the profile of the likelihood: where few times tell the parts apart the likelihood is bent, and what its
 * curvature at the top says of such a figure is too narrow.
 */
import { standardNormal } from '../quantile.js'
import type { Mixture } from './expectation.js'
import { type Distribution, distributionOf, type Lognormal } from './law.js'
import { maximise } from './maximise.js'
import { lawsNear } from './mixture-near.js'
import { type Ends, intervalOf } from './profile.js'

/** A figure of a mixture that is the mean of that of its parts by their shares. */
export interface PartFigure {
  of(law: Distribution): number
  /** Location of a lognormal part with this `value` of it; NaN where none has. */
  locationOf(value: number, spread: number): number
}

export const meanOfParts: PartFigure = {
  of: ({ mean }) => mean,
  locationOf: (mean, spread) => Math.log(mean) - (spread * spread) / 2,
}

/** Share of times over `from`, s. */
export const overOfParts = (from: number): PartFigure => ({
  of: ({ above }) => above(from),
  locationOf: (over, spread) =>
    over > 0 && over < 1 ? Math.log(from) + spread * standardNormal(over) : Number.NaN,
})

/** A mixture at the top of its likelihood. */
export interface Profiled {
  law: Mixture
  top: number
  heightOf(law: Mixture): number
  /** Least spread of a part. */
  floor: number
  figure: PartFigure
}

/** Ends where twice the log-likelihood has fallen by `fall`; 0 or Infinity where that is not reached. `se`: about the standard error. */
export function mixtureInterval(profiled: Profiled, se: number, fall: number): Ends {
  const value = profiled.figure.of(distributionOf(profiled.law))
  return intervalOf(() => restOf(profiled), { value, isPositive: true, unit: value, se }, fall)
}

/** The root of the fall at a value of the figure; each search begins where the last one ended. NaN where none is found. */
function restOf({ law, top, heightOf, floor, figure }: Profiled): (value: number) => number {
  let last = law
  return (value) => {
    const near = lawsNear(last)
    const lawAt = ([share, wider, along, other]: readonly number[]) =>
      withFigure(near([share!, 0, wider!, along!, other!]), figure, value)
    const found = maximise(
      (x) => {
        const each = lawAt(x)
        return each === null || Math.min(each.first.spread, each.second.spread) <= floor
          ? Number.NEGATIVE_INFINITY
          : heightOf(each)
      },
      [0, 0, 0, 0],
    )
    const reached = found && lawAt(found.at)
    if (!found || !reached) return Number.NaN
    last = reached
    return Math.sqrt(Math.max(0, 2 * (top - found.value)))
  }
}

/** The mixture with the first part moved so that the figure has this value; null where no place of it gives that. */
function withFigure({ share, first, second }: Mixture, figure: PartFigure, value: number): Mixture | null {
  const ofFirst = (value - (1 - share) * figure.of(distributionOf(second))) / share
  const location = figure.locationOf(ofFirst, first.spread)
  const moved: Lognormal = { ...first, location }
  return Number.isFinite(location) ? { family: 'mixture', share, first: moved, second } : null
}
