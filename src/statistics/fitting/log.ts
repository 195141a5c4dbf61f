/** How a log came about: other logs like it, of times that a law draws, for bootstraps. */
import type { RandomNumbers } from '../../engine/draw.js'
import { firstWhere } from '../search.js'
import { distributionOf, type FittedLaw } from './law.js'
import { timesIn } from './rough.js'
import { readAs, type Sample, type Seen, sampleFrom } from './sample.js'

/** How a time is read. */
type Clock =
  | { kind: 'exact' }
  /** The difference of two readings of a clock. */
  | { kind: 'clocked'; grain: number }
  /** Rounded: the interval of a ruler with a mark at `mark` and every `width`, and with one at 0. */
  | { kind: 'ruler'; width: number; mark: number }

/** What something may be, and how much of it lies up to there: from above 0 to 1, growing. */
interface Shares<T> {
  what: readonly T[]
  upTo: readonly number[]
}

/** What a log does to times. */
export interface Log {
  n: number
  from: number
  clocks: Shares<Clock>
  /** When times are cut off, Infinity: never; null where none was. */
  cuts: Shares<number> | null
}

/** The log that `sample`, with one time or more, has come from: its clocks as often as they stand there, and its cuts by the Kaplan-Meier estimate of when they come. */
export function logOf(sample: Sample): Log {
  const main = commonRuler(sample)
  const read = clocksOf(sample, (seen) => clockOf(seen, main))
  return {
    n: timesIn(sample),
    from: sample.from,
    clocks: sharesOf(
      read.map(({ clock }) => clock),
      read.map(({ count }) => count),
    ),
    cuts: cutsOf(sample),
  }
}

/** The clocks of the times that have one, alike ones once, with the number of their times. */
function clocksOf({ seen, counts }: Sample, of: (seen: Seen) => Clock | null) {
  const clocks = new Map<string, { clock: Clock; count: number }>()
  for (const [index, each] of seen.entries()) {
    const clock = of(each)
    if (clock === null) continue
    const key = JSON.stringify(clock)
    clocks.set(key, { clock, count: (clocks.get(key)?.count ?? 0) + counts[index]! })
  }
  return [...clocks.values()]
}

function sharesOf<T>(what: readonly T[], counts: readonly number[]): Shares<T> {
  const all = counts.reduce((sum, count) => sum + count, 0)
  let sum = 0
  const upTo = counts.map((count) => {
    sum += count
    return sum / all
  })
  return { what, upTo }
}

/** The clock of what was not cut off; null of what was. */
function clockOf(seen: Seen, main: Clock | null): Clock | null {
  if ('at' in seen) return { kind: 'exact' }
  if ('over' in seen) return null
  if ('clocked' in seen) return { kind: 'clocked', grain: seen.grain }
  const [low, high] = seen.between
  if (high === Infinity) return null
  // an interval from 0 may be a part of one that the ruler of the others would make
  return low === 0 && main !== null ? main : rulerOf(low, high)
}

const rulerOf = (low: number, high: number): Clock => {
  const width = high - low
  const rest = low % width
  // a mark that rounding has put a hair below a whole width
  return { kind: 'ruler', width, mark: width - rest < 1e-9 * high ? 0 : rest }
}

/** The ruler of most intervals that do not begin at 0; null where there are none. */
function commonRuler(sample: Sample): Clock | null {
  const rulers = clocksOf(sample, (seen) =>
    'between' in seen && seen.between[0] > 0 ? clockOf(seen, null) : null,
  )
  return rulers.sort((one, other) => other.count - one.count)[0]?.clock ?? null
}

/** From which length on a time was not seen that was cut off. */
const cutAt = (seen: Seen): number =>
  'over' in seen ? seen.over : 'between' in seen ? seen.between[0] : Number.NaN

/** When cuts come: Kaplan & Meier, J. Am. Stat. Assoc. 53 (1958) 457-481, with ends and cuts changing parts; ends come before cuts at the same time. */
function cutsOf({ seen, counts }: Sample): Shares<number> | null {
  const order = seen
    .map((each, index) => {
      const read = readAs(each)
      return { at: read ?? cutAt(each), isCut: read === null, count: counts[index]! }
    })
    .sort((one, other) => one.at - other.at || Number(one.isCut) - Number(other.isCut))
  if (!order.some(({ isCut }) => isCut)) return null
  let left = order.reduce((sum, { count }) => sum + count, 0)
  let never = 1
  const what: number[] = []
  const masses: number[] = []
  for (const { at, isCut, count } of order) {
    if (isCut) {
      what.push(at)
      masses.push((never * count) / left)
      never *= 1 - count / left
    }
    left -= count
  }
  return sharesOf([...what, Infinity], [...masses, never])
}

/** Another log of as many times, of `law`, read by the same clocks and cut off alike. Alike times stand once. */
export function drawLog(log: Log, law: FittedLaw, random: RandomNumbers): Sample {
  const time = timesOver(log.from, law, random)
  const drawn = Array.from({ length: log.n }, (): Seen => {
    const x = time()
    const cut = log.cuts === null ? Infinity : pick(log.cuts, random)
    return cut < x ? { over: cut } : read(x, pick(log.clocks, random), random)
  })
  return sampleFrom(drawn, log.from)
}

/** Draws one of them; of one alone no number is drawn. */
function pick<T>({ what, upTo }: Shares<T>, random: RandomNumbers): T {
  if (what.length === 1) return what[0]!
  random.advance()
  return what[firstWhere(0, what.length - 1, (place) => upTo[place]! > random.value)]!
}

function read(x: number, clock: Clock, random: RandomNumbers): Seen {
  switch (clock.kind) {
    case 'exact':
      return { at: x }
    case 'clocked': {
      random.advance()
      return { clocked: Math.floor(x / clock.grain + random.value) * clock.grain, grain: clock.grain }
    }
    case 'ruler': {
      const low = clock.mark + Math.floor((x - clock.mark) / clock.width) * clock.width
      return { between: [Math.max(0, low), low + clock.width] }
    }
  }
}

/** Draws of the times of `law` that are over `from`. */
function timesOver(from: number, law: FittedLaw, random: RandomNumbers): () => number {
  if (law.family === 'mixture') {
    const [first, second] = [law.first, law.second].map((part) => timesOver(from, part, random))
    const shares = [
      law.share * distributionOf(law.first).above(from),
      (1 - law.share) * distributionOf(law.second).above(from),
    ] as const
    const parts = sharesOf([first!, second!], shares)
    return () => pick(parts, random)()
  }
  const { below, above, quantile } = distributionOf(law)
  const [missing, kept] = [below(from), above(from)]
  return () => {
    random.advance()
    return Math.max(from, quantile(missing + kept * random.value))
  }
}
