/** The laws that can be drawn from, with the same digits on every machine. Formulas: Law, Simulation Modeling and Analysis, ch. 8 (from memory). */
import exp from '@stdlib/math-base-special-exp'
import gammaln from '@stdlib/math-base-special-gammaln'
import ln from '@stdlib/math-base-special-ln'
import log1p from '@stdlib/math-base-special-log1p'
import normalBelow from '@stdlib/stats-base-dists-normal-cdf'
import { Draw, type RandomNumbers } from './draw.js'
import { type QuantileTable, tableOf } from './quantile-table.js'
import { logGammaQuantile, normalQuantile } from './tails.js'
import { unset } from './unset.js'

/** A law with its parameters, or a mixture of such. */
export type Law = PlainLaw | { law: 'mixture'; mixture: readonly { share: number; law: PlainLaw }[] }

/** A law of its own. `observed` values are sorted, smallest first, at least one. */
type PlainLaw =
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

/** Draws of `law`; a law of one value needs no stream. */
export function drawsOf(law: Law, stream: () => RandomNumbers): Draw {
  switch (law.law) {
    case 'constant':
      return new Constant(law.value)
    case 'exponential':
      return new Exponential(stream(), law.mean)
    case 'weibull':
      return new Weibull(stream(), law.shape, law.scale)
    case 'uniform':
      return new Uniform(stream(), law.low, law.high - law.low)
    case 'triangular':
      return new Triangular(stream(), law.low, law.mode, law.high)
    case 'lognormal': {
      // mean m and coefficient of variation c of the value itself: sigma^2 = ln(1 + c^2), mu = ln m - sigma^2 / 2
      const variance = log1p(law.cv * law.cv)
      return new Lognormal(stream(), ln(law.mean) - variance / 2, Math.sqrt(variance))
    }
    case 'normal':
      return law.sd === 0
        ? new Constant(Math.max(law.mean, law.atLeast))
        : new CutNormal(stream(), law.mean, law.sd, law.atLeast)
    case 'erlang':
      return new Gamma(stream(), law.phases, law.mean / law.phases)
    case 'gamma': {
      const shape = 1 / (law.cv * law.cv)
      return new Gamma(stream(), shape, law.mean / shape)
    }
    case 'observed':
      return new Observed(stream(), law.values)
    case 'mixture':
      return new Mixture(stream(), law.mixture)
  }
}

class Constant extends Draw {
  constructor(value: number) {
    super()
    this.value = value
  }

  override next(): void {}
}

class Exponential extends Draw {
  constructor(
    private readonly stream: RandomNumbers,
    private readonly mean: number,
  ) {
    super()
  }

  override next(): void {
    this.stream.advance()
    // 1 - u is exact for the 32 bits of a stream, so that the quicker logarithm loses nothing
    this.value = -this.mean * ln(1 - this.stream.value)
  }
}

class Weibull extends Draw {
  private readonly power: number

  constructor(
    private readonly stream: RandomNumbers,
    shape: number,
    private readonly scale: number,
  ) {
    super()
    this.power = 1 / shape
  }

  override next(): void {
    this.stream.advance()
    this.value = this.scale * exp(this.power * ln(-ln(1 - this.stream.value)))
  }
}

class Uniform extends Draw {
  constructor(
    private readonly stream: RandomNumbers,
    private readonly low: number,
    private readonly width: number,
  ) {
    super()
  }

  override next(): void {
    this.stream.advance()
    this.value = this.low + this.width * this.stream.value
  }
}

class Triangular extends Draw {
  private readonly below: number
  private readonly rising: number
  private readonly falling: number

  constructor(
    private readonly stream: RandomNumbers,
    private readonly low: number,
    mode: number,
    private readonly high: number,
  ) {
    super()
    this.below = (mode - low) / (high - low)
    this.rising = (high - low) * (mode - low)
    this.falling = (high - low) * (high - mode)
  }

  override next(): void {
    this.stream.advance()
    const u = this.stream.value
    this.value =
      u < this.below ? this.low + Math.sqrt(u * this.rising) : this.high - Math.sqrt((1 - u) * this.falling)
  }
}

const standardNormal = (): QuantileTable =>
  tableOf('normal', () => ({
    exact: normalQuantile,
    slope: (y) => Math.sqrt(2 * Math.PI) * exp((y * y) / 2),
    value: (y) => y,
  }))

/** Gamma law of scale 1, by the logarithm of its values: of small shapes most lie next to 0. */
const standardGamma = (shape: number): QuantileTable =>
  tableOf(`gamma ${shape}`, () => {
    const logGamma = gammaln(shape)
    return {
      exact: (u) => logGammaQuantile(u, shape),
      slope: (y) => exp(logGamma - shape * y + exp(y)),
      value: (y) => exp(y),
    }
  })

class Lognormal extends Draw {
  private readonly standard = standardNormal()

  constructor(
    private readonly stream: RandomNumbers,
    private readonly location: number,
    private readonly spread: number,
  ) {
    super()
  }

  override next(): void {
    this.stream.advance()
    this.standard.read(this.stream)
    this.value = exp(this.location + this.spread * this.standard.value)
  }
}

/** Normal law cut off below `atLeast` and scaled up: the quantile of the share that remains. */
class CutNormal extends Draw {
  private readonly standard = standardNormal()
  /** Share above the cut: seen from there, the upper tail keeps its digits where the cut lies far above the mean. */
  private readonly kept: number

  constructor(
    private readonly stream: RandomNumbers,
    private readonly mean: number,
    private readonly sd: number,
    private readonly atLeast: number,
  ) {
    super()
    this.kept = normalBelow((mean - atLeast) / sd, 0, 1)
  }

  override next(): void {
    this.stream.advance()
    this.value = (1 - this.stream.value) * this.kept
    this.standard.read(this)
    this.value = Math.max(this.atLeast, this.mean - this.sd * this.standard.value)
  }
}

class Gamma extends Draw {
  private readonly standard: QuantileTable

  constructor(
    private readonly stream: RandomNumbers,
    shape: number,
    private readonly scale: number,
  ) {
    super()
    this.standard = standardGamma(shape)
  }

  override next(): void {
    this.stream.advance()
    this.standard.read(this.stream)
    this.value = this.scale * this.standard.value
  }
}

class Observed extends Draw {
  constructor(
    private readonly stream: RandomNumbers,
    private readonly values: readonly number[],
  ) {
    super()
  }

  override next(): void {
    this.stream.advance()
    this.value = this.values[Math.floor(this.stream.value * this.values.length)]!
  }
}

/** What is left of a number that chose a part: the stream of that part, drawn with it. */
class Rest implements RandomNumbers {
  value = unset

  advance(): void {}
}

/** Nearest to 0 and to 1 that numbers of a stream come. */
const edge = 2 ** -33

/** Laws of which each draw follows one, by shares that sum to 1: the part in which its number falls, and what remains of it rescaled. */
class Mixture extends Draw {
  private readonly rest = new Rest()
  private readonly parts: readonly Draw[]
  /** Shares up to the end of each part. */
  private readonly ends: Float64Array

  constructor(
    private readonly stream: RandomNumbers,
    mixture: readonly { share: number; law: PlainLaw }[],
  ) {
    super()
    this.parts = mixture.map(({ law }) => drawsOf(law, () => this.rest))
    let sum = 0
    this.ends = Float64Array.from(mixture, ({ share }) => (sum += share))
    // not a hair below the largest number of a stream
    this.ends[mixture.length - 1] = 1
  }

  override next(): void {
    this.stream.advance()
    const u = this.stream.value
    let part = 0
    while (u >= this.ends[part]!) part++
    const begin = part === 0 ? 0 : this.ends[part - 1]!
    const rest = (u - begin) / (this.ends[part]! - begin)
    this.rest.value = Math.min(Math.max(rest, edge), 1 - edge)
    const draw = this.parts[part]!
    draw.next()
    this.value = draw.value
  }
}
