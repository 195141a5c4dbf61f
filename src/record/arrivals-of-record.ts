/** What the cases of a record say of arrivals: the time from one case to the next, and how they are shared out among the kinds. */
import type { Sample, Seen } from '../statistics/fitting/sample.js'
import { chosen, type Facts, type LoggedInput, type LoggedMix, type LoggedTimeBetween } from './input.js'
import { stopsByShift } from './minutes.js'
import type { CleanRecord, LoggedCases, Span } from './record.js'
import { union } from './spans.js'
import type { LocalClock } from './zone.js'

/** In place of the name of an entry of `arrivals` that nobody gave. */
export const anySource = '*'

/** Time between cases, and the mix where kinds are known; nothing where the record has no cases. */
export function arrivalInputs(record: CleanRecord, { source }: Facts, clock: LocalClock): LoggedInput[] {
  const { cases } = record
  if (!cases || cases.times.length === 0) return []
  const name = cases.source ?? source ?? anySource
  return [
    timeBetween(record, cases, name, clock),
    ...(cases.kinds ? [mixOf(record, cases, cases.kinds)] : []),
  ]
}

function mixOf({ shifts }: CleanRecord, cases: LoggedCases, kinds: Uint16Array): LoggedMix {
  const counts = new Map<string, number>()
  let count = 0
  for (const [index, kind] of kinds.entries()) {
    if (shifts[cases.shifts[index]!]!.isHeldOut) continue
    const name = cases.names[kind]!
    counts.set(name, (counts.get(name) ?? 0) + 1)
    count++
  }
  return {
    what: 'mix',
    path: 'cases',
    words: 'shares of the kinds of cases',
    count,
    kinds: [...counts].map(([name, each]) => ({ name, count: each })),
    notes: [],
  }
}

/** Finds what stood still in a shift, going forward in time. */
class Standing {
  private next = 0

  constructor(private readonly stood: readonly Span[]) {}

  /** When the line stands next, from `from` on: `from` or earlier where it stands then, Infinity where it never does. */
  nextFrom(from: number): number {
    while (this.next < this.stood.length && this.stood[this.next]!.ends <= from) this.next++
    return this.stood[this.next]?.begins ?? Infinity
  }
}

/**
 * A gap in which the line comes to stand is cut off there, and one that begins while it stands is left out. To leave out all gaps that a stop overlaps
 * would leave the short ones: a long gap meets a stop more often.
 */
function timeBetween(
  record: CleanRecord,
  { times, shifts, roundedTo }: LoggedCases,
  source: string,
  clock: LocalClock,
): LoggedTimeBetween {
  const stops = stopsByShift(record)
  const gaps = new Float64Array(times.length)
  const shiftOf = new Uint16Array(times.length)
  const countByHour: number[] = Array(24).fill(0)
  const secondsByHour: number[] = Array(24).fill(0)
  const cuts: number[] = []
  let count = 0
  let leftOut = 0
  let current = -1
  let standing = new Standing([])
  for (let index = 1; index < times.length; index++) {
    const shift = shifts[index]!
    const { isHeldOut, breaks, lost } = record.shifts[shift]!
    if (shifts[index - 1] !== shift || isHeldOut) continue
    if (shift !== current) standing = new Standing(union([...breaks, ...lost, ...stops[shift]!]))
    current = shift
    const [from, to] = [times[index - 1]!, times[index]!]
    const stands = standing.nextFrom(from)
    if (stands <= from) {
      leftOut++
      continue
    }
    const hour = clock.hour(from)
    secondsByHour[hour]! += Math.min(to, stands) - from
    if (stands < to) {
      cuts.push(stands - from)
      continue
    }
    countByHour[hour]!++
    shiftOf[count] = shift
    gaps[count++] = to - from
  }
  const kept = gaps.subarray(0, count)
  return {
    what: 'time-between',
    path: `arrivals.${source}.time-between`,
    words: 'time from one case to the next',
    count: count + cuts.length,
    sample: sampleOfGaps(kept, cuts, roundedTo),
    gaps: kept,
    shifts: shiftOf.subarray(0, count),
    countByHour,
    secondsByHour,
    leftOut,
    notes: chosen([
      leftOut > 0 &&
        `${leftOut} gaps that began during a logged stop, a break or lost time are left out: the line blocked the cases.`,
      cuts.length > 0 &&
        `${cuts.length} gaps ended in a stop, a break or lost time: their true length is longer.`,
      source === anySource &&
        'The record does not say to which entry of `arrivals` these cases belong: add `source` under `cases`.',
    ]),
  }
}

/** Finer clocks show milliseconds. */
const finest = 0.001

function sampleOfGaps(gaps: Float64Array, cuts: readonly number[], roundedTo: number): Sample {
  const grain = roundedTo === 0 ? finest : roundedTo
  const [whole, cut] = [grainsOf(gaps, grain), grainsOf(cuts, grain)]
  return {
    seen: [
      ...whole.map(([grains]): Seen => ({ clocked: grains * grain, grain })),
      ...cut.map(([grains]): Seen => ({ over: grains * grain })),
    ],
    counts: [...whole, ...cut].map(([, count]) => count),
    from: 0,
  }
}

/** How often each number of grains stands there, the least first: differences of large numbers are not whole in the grain to the last digit. */
function grainsOf(times: Iterable<number>, grain: number): [grains: number, count: number][] {
  const numbers = new Map<number, number>()
  for (const time of times) {
    const grains = Math.round(time / grain)
    numbers.set(grains, (numbers.get(grains) ?? 0) + 1)
  }
  return [...numbers].sort(([a], [b]) => a - b)
}
