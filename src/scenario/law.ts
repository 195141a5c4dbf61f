/** A law of a time, as the engine draws from it, and its mean; how a scenario writes it is in `distribution`. */
import exp from '@stdlib/math-base-special-exp'
import gamma from '@stdlib/math-base-special-gamma'
import normalBelow from '@stdlib/stats-base-dists-normal-cdf'

/** A law, or a mixture of laws by shares that sum to 1. */
export type Distribution = PlainDistribution | Mixture

/** Each draw follows one of the laws, as often as its share says. */
export interface Mixture {
  law: 'mixture'
  mixture: { share: number; law: PlainDistribution }[]
}

/** All parameters in SI; `observed` values are filled in after its file is read. */
export type PlainDistribution =
  | { law: 'constant'; value: number }
  | { law: 'exponential'; mean: number }
  | { law: 'lognormal'; mean: number; cv: number }
  | { law: 'gamma'; mean: number; cv: number }
  | { law: 'erlang'; mean: number; phases: number }
  | { law: 'weibull'; shape: number; scale: number }
  | { law: 'triangular'; low: number; mode: number; high: number }
  | { law: 'uniform'; low: number; high: number }
  | { law: 'normal'; mean: number; sd: number; atLeast: number; atMost?: number | undefined }
  | Observed

/** Recorded values; sorted, smallest first, once read. */
export interface Observed {
  law: 'observed'
  file: string
  column: string
  unit: string
  /** Column of days: whole days are drawn anew, for what happens on one day may go together. */
  day?: string | undefined
  values: number[]
  /** The day of each value, by its place among the days of the file, and how many these are; where `day` names them. */
  byDay?: { of: Uint32Array; count: number }
}

/** Mean of the law in its SI unit; NaN of no observed values. Infinity where what it is the time to never happens. */
export function meanOf(distribution: Distribution): number {
  switch (distribution.law) {
    case 'constant':
      return distribution.value
    case 'weibull':
      return distribution.scale * gamma(1 + 1 / distribution.shape)
    case 'triangular':
      return (distribution.low + distribution.mode + distribution.high) / 3
    case 'uniform':
      return (distribution.low + distribution.high) / 2
    case 'normal':
      return cutNormalMean(distribution)
    case 'observed':
      return distribution.values.reduce((sum, value) => sum + value, 0) / distribution.values.length
    case 'mixture':
      return weighed(distribution, meanOf)
    default:
      return distribution.mean
  }
}

type Normal = Extract<PlainDistribution, { law: 'normal' }>

/** Densities of the standard normal law at the two cuts, 0 where nothing is cut, and the share between them. */
function cutsOf({ mean, sd, atLeast, atMost = Infinity }: Normal) {
  const density = (z: number) => exp((-z * z) / 2) / Math.sqrt(2 * Math.PI)
  const [low, high] = [(atLeast - mean) / sd, (atMost - mean) / sd]
  // the upper tail keeps its digits where the cut lies above the mean
  const kept = normalBelow(-low, 0, 1) - normalBelow(-high, 0, 1)
  return { below: density(low), above: density(high), kept }
}

/**
 * Mean of a normal law cut off below `atLeast` and above `atMost`, and scaled up: m + sd (phi(a) - phi(b)) / (Phi(b) - Phi(a)), a = (atLeast
 * - m) / sd, b likewise. Johnson, Kotz & Balakrishnan, Continuous Univariate Distributions 1, sec. 13.10.1 (from memory). `atLeast` at most
 * 5 sd above the mean.
 */
function cutNormalMean(law: Normal): number {
  if (law.sd === 0) return Math.max(law.mean, law.atLeast)
  const { below, above, kept } = cutsOf(law)
  return law.mean + (law.sd * (below - above)) / kept
}

/** Variance of the law in its SI unit squared; that of the values themselves for observed ones. */
export function varianceOf(distribution: Distribution): number {
  switch (distribution.law) {
    case 'constant':
      return 0
    case 'exponential':
      return distribution.mean ** 2
    case 'erlang':
      return distribution.mean ** 2 / distribution.phases
    case 'weibull':
      return distribution.scale ** 2 * gamma(1 + 2 / distribution.shape) - meanOf(distribution) ** 2
    case 'triangular': {
      const { low, mode, high } = distribution
      return (low * low + mode * mode + high * high - low * mode - low * high - mode * high) / 18
    }
    case 'uniform':
      return (distribution.high - distribution.low) ** 2 / 12
    case 'normal': {
      const { mean, sd, atLeast, atMost } = distribution
      // sd^2 (1 + a h - h^2) with h = phi(a) / (1 - Phi(a)), as for the mean; cut above too, less (b - a) phi(b) / (Phi(b) - Phi(a))
      const beyond = meanOf(distribution) - mean
      const { above, kept } = cutsOf(distribution)
      const cutAbove = atMost === undefined ? 0 : (sd * (atMost - atLeast) * above) / kept
      return Math.max(0, sd * sd + beyond * (atLeast - mean) - beyond * beyond - cutAbove)
    }
    case 'observed': {
      const mean = meanOf(distribution)
      return (
        distribution.values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / distribution.values.length
      )
    }
    case 'mixture': {
      // law of total variance: within the parts, and from part to part
      const mean = meanOf(distribution)
      return weighed(distribution, (law) => varianceOf(law) + (meanOf(law) - mean) ** 2)
    }
    default:
      return (distribution.mean * distribution.cv) ** 2
  }
}

const weighed = ({ mixture }: Mixture, of: (law: PlainDistribution) => number): number =>
  mixture.reduce((sum, { share, law }) => sum + share * of(law), 0)

/** Whether the parameters keep the rules between them: those of one law by themselves are told of by the schema. */
export function isSound(distribution: Distribution): boolean {
  switch (distribution.law) {
    case 'triangular': {
      const { low, mode, high } = distribution
      return low <= mode && mode <= high && low < high
    }
    case 'uniform':
      return distribution.low <= distribution.high
    case 'normal': {
      const { mean, sd, atLeast } = distribution
      return sd === 0 || atLeast <= mean + 5 * sd
    }
    case 'mixture':
      return distribution.mixture.every(({ share, law }) => share > 0 && isSound(law))
    default:
      return true
  }
}
