/** What a law says that a log would show: for each time the share of the log below it, and above it, as the log has it. */
import type { Distribution } from './law.js'
import type { Sample, Seen } from './sample.js'

/** A place in the log that a law predicts: the share of times below it and the share above, each with its digits where it is small. */
export interface Tails {
  below: number
  above: number
}

/** Where in the predicted log one time stands: of an exact one both ends are one place, of others it is anywhere between them. */
export interface Span {
  low: Tails
  high: Tails
}

const begin: Tails = { below: 0, above: 1 }
const end: Tails = { below: 1, above: 0 }

/** Spans of all that is seen, in its order, where the times are of `law` and those that are not over `sample.from` are missing. */
export function spansOf(sample: Sample, law: Distribution): Span[] {
  const shown = new Shown(law, sample.from)
  return sample.seen.map((seen) => spanOf(seen, shown))
}

function spanOf(seen: Seen, shown: Shown): Span {
  if ('at' in seen) {
    const place = shown.at(seen.at)
    return { low: place, high: place }
  }
  if ('over' in seen) return { low: shown.at(seen.over), high: end }
  if ('between' in seen) return { low: shown.at(seen.between[0]), high: shown.at(seen.between[1]) }
  const { clocked, grain } = seen
  return { low: shown.read(clocked - grain, grain), high: shown.read(clocked, grain) }
}

/** The law of the times that a log has. */
class Shown {
  private readonly belowFrom: number
  private readonly aboveFrom: number

  constructor(
    private readonly law: Distribution,
    private readonly from: number,
  ) {
    this.belowFrom = law.below(from)
    this.aboveFrom = law.above(from)
  }

  /** The place of the time `x`, Infinity being one. */
  at(x: number): Tails {
    if (x <= this.from) return begin
    if (x === Infinity) return end
    const below = (this.law.below(x) - this.belowFrom) / this.aboveFrom
    return below < 0.5 ? { below, above: 1 - below } : atAbove(this.law.above(x) / this.aboveFrom)
  }

  /**
   * The place of what a clock of `grain` shows as at most `reading`. Where a time began within a grain is even chance, so it is the mean of the
   * places from the reading to a grain beyond it: a difference of the integral of the law, or of that of its tail.
   */
  read(reading: number, grain: number): Tails {
    const last = reading + grain
    if (last <= this.from) return begin
    const width = grain * this.aboveFrom
    const below = (this.integral(last) - this.integral(reading)) / width
    if (below < 0.5) return { below: Math.max(0, below), above: 1 - below }
    return atAbove((this.integralOfTail(reading) - this.integralOfTail(last)) / width)
  }

  /** Integral from `from` to y of F(x) - F(from). */
  private integral(y: number): number {
    const { law, from, belowFrom } = this
    if (y <= from) return 0
    return y * law.below(y) - law.partialBelow(y) - (y * belowFrom - law.partialBelow(from))
  }

  /** Integral from y on of the share over x, or over `from` where x is less. */
  private integralOfTail(y: number): number {
    const x = Math.max(y, this.from)
    return this.law.partialAbove(x) - y * this.law.above(x)
  }
}

const atAbove = (above: number): Tails => ({ below: 1 - above, above: Math.max(0, above) })
