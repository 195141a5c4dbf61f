/** Variates by inversion: each takes one uniform number on (0, 1) and gives one value, so that streams stay in step. */
import jStat from 'jstat'

/** A law with its parameters. `observed` values are sorted, smallest first, at least one. */
export type Law =
  | { law: 'constant'; value: number }
  | { law: 'exponential'; mean: number }
  | { law: 'lognormal'; mean: number; cv: number }
  | { law: 'gamma'; mean: number; cv: number }
  | { law: 'erlang'; mean: number; phases: number }
  | { law: 'weibull'; shape: number; scale: number }
  | { law: 'triangular'; low: number; mode: number; high: number }
  | { law: 'uniform'; low: number; high: number }
  | { law: 'normal'; mean: number; sd: number; atLeast: number }
  | { law: 'observed'; values: readonly number[] }

/** The value below which the share `u` of the law lies; `u` on the open interval (0, 1). */
export type Inverse = (u: number) => number

/** Quantile function of a law. Formulas: Law, Simulation Modeling and Analysis, ch. 8 (from memory). */
export function inverse(law: Law): Inverse {
  switch (law.law) {
    case 'constant': {
      const { value } = law
      return () => value
    }
    case 'exponential': {
      const { mean } = law
      // 1 - u is exact for the 32 bits of a stream, so that the quicker logarithm loses nothing
      return (u) => -mean * Math.log(1 - u)
    }
    case 'weibull': {
      const { scale } = law
      const power = 1 / law.shape
      return (u) => scale * Math.exp(power * Math.log(-Math.log(1 - u)))
    }
    case 'uniform': {
      const { low } = law
      const width = law.high - law.low
      return (u) => low + width * u
    }
    case 'triangular':
      return triangular(law.low, law.mode, law.high)
    case 'lognormal': {
      // mean m and coefficient of variation c of the value itself: sigma^2 = ln(1 + c^2), mu = ln m - sigma^2 / 2
      const variance = Math.log1p(law.cv * law.cv)
      const location = Math.log(law.mean) - variance / 2
      const spread = Math.sqrt(variance)
      const standard = standardNormal()
      return (u) => Math.exp(location + spread * standard(u))
    }
    case 'normal':
      return cutNormal(law.mean, law.sd, law.atLeast)
    case 'erlang':
      return gamma(law.phases, law.mean / law.phases)
    case 'gamma': {
      const shape = 1 / (law.cv * law.cv)
      return gamma(shape, law.mean / shape)
    }
    case 'observed': {
      const { values } = law
      return (u) => values[Math.floor(u * values.length)]!
    }
  }
}

const standardNormal = (): Inverse => tableOf('normal', (u) => jStat.normal.inv(u, 0, 1))

function gamma(shape: number, scale: number): Inverse {
  const standard = tableOf(`gamma ${shape}`, (u) => jStat.gamma.inv(u, shape, 1))
  return (u) => scale * standard(u)
}

/** Tables made so far, by law: one takes some milliseconds, and the lines of a study that differ in a belt speed share all. */
const tables = new Map<string, Inverse>()
const mostTables = 64

function tableOf(law: string, exact: Inverse): Inverse {
  const known = tables.get(law)
  if (known) return known
  if (tables.size === mostTables) tables.clear()
  const made = tabulated(exact)
  tables.set(law, made)
  return made
}

/** Share of each tail that is not tabulated: there a quantile bends too sharply for its table. */
const tail = 1 / 128
const cells = 4096

/**
 * A quantile function read from a table by cubic interpolation (Lagrange, four points), within 1e-6 of the mean
 * between the tails and exact in them. An exact gamma quantile takes a microsecond, and a shift draws thousands. The
 * table is made when it is first read: not every line that is built is simulated.
 */
function tabulated(exact: Inverse): Inverse {
  const step = (1 - 2 * tail) / cells
  let table: Float64Array | null = null
  return (u) => {
    table ??= Float64Array.from({ length: cells + 3 }, (_, index) => exact(tail + (index - 1) * step))
    const place = (u - tail) / step
    if (!(place >= 0 && place < cells)) return exact(u)
    const cell = Math.floor(place)
    const t = place - cell
    const before = table[cell]!
    const at = table[cell + 1]!
    const next = table[cell + 2]!
    const after = table[cell + 3]!
    return (
      (-t * (t - 1) * (t - 2) * before) / 6 +
      ((t + 1) * (t - 1) * (t - 2) * at) / 2 -
      ((t + 1) * t * (t - 2) * next) / 2 +
      ((t + 1) * t * (t - 1) * after) / 6
    )
  }
}

function triangular(low: number, mode: number, high: number): Inverse {
  const below = (mode - low) / (high - low)
  const rising = (high - low) * (mode - low)
  const falling = (high - low) * (high - mode)
  return (u) => (u < below ? low + Math.sqrt(u * rising) : high - Math.sqrt((1 - u) * falling))
}

/** Normal law cut off below `atLeast` and scaled up: the quantile of the share that remains. */
function cutNormal(mean: number, sd: number, atLeast: number): Inverse {
  if (sd === 0) return () => Math.max(mean, atLeast)
  // the upper tail keeps its digits where the cut lies far above the mean
  const kept = jStat.normal.cdf((mean - atLeast) / sd, 0, 1)
  const standard = standardNormal()
  return (u) => Math.max(atLeast, mean - sd * standard((1 - u) * kept))
}
