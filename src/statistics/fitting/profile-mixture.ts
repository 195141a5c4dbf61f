/**
 * Intervals of a figure of a mixture from the profile of the likelihood: where few times tell the parts apart the likelihood is bent, and what its
 * curvature at the top says of such a figure is too narrow.
 */
import { standardNormal } from '../quantile.js'
import type { Mixture } from './expectation.js'
import { type Distribution, distributionOf } from './law.js'
import { maximise } from './maximise.js'
import { type Ends, intervalOf } from './profile.js'

/** A figure of a mixture that is the mean of that of its parts by their shares. */
export interface PartFigure {
  /** The part that is moved to give it a value: the one that can. */
  moves: 'first' | 'second'
  of(law: Distribution): number
  /** Location of a lognormal part with this `value` of it; NaN where none has. */
  locationOf(value: number, spread: number): number
}

/** Nearly all of a mean may be that of the longer part. */
export const meanOfParts: PartFigure = {
  moves: 'second',
  of: ({ mean }) => mean,
  locationOf: (mean, spread) => Math.log(mean) - (spread * spread) / 2,
}

/** Share of times over `from`, s: of the longer part it may be all. */
export const overOfParts = (from: number): PartFigure => ({
  moves: 'first',
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
    const lawAt = ([share, first, along, second]: readonly number[]) => {
      const x = figure.moves === 'first' ? [0, first!, along!, second!] : [along!, first!, 0, second!]
      return withFigure(near([share!, ...x]), figure, value)
    }
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

/** Laws about a mixture, in coordinates in which its likelihood is nearly round: logit of the share, then location in spreads and logarithm of the spread of either part. */
export function lawsNear({ share, first, second }: Mixture): (x: readonly number[]) => Mixture {
  const odds = share / (1 - share)
  const part = (of: Mixture['first'], along: number, wider: number): Mixture['first'] => ({
    family: 'lognormal',
    location: of.location + of.spread * along,
    spread: of.spread * Math.exp(wider),
  })
  return (x) => ({
    family: 'mixture',
    share: 1 / (1 + 1 / (odds * Math.exp(x[0]!))),
    first: part(first, x[1]!, x[2]!),
    second: part(second, x[3]!, x[4]!),
  })
}

/** The mixture with one part moved so that the figure has this value; null where no place of it gives that. */
function withFigure(law: Mixture, figure: PartFigure, value: number): Mixture | null {
  const { moves } = figure
  const [moved, other] = moves === 'first' ? [law.first, law.second] : [law.second, law.first]
  const weight = moves === 'first' ? law.share : 1 - law.share
  const own = (value - (1 - weight) * figure.of(distributionOf(other))) / weight
  const location = figure.locationOf(own, moved.spread)
  return Number.isFinite(location) ? { ...law, [moves]: { ...moved, location } } : null
}
