/** What the cases of a record say of arrivals: the time from one case to the next, and how they are shared out among the kinds. */
import type { Seen } from '../statistics/fitting/sample.js'
import type { Facts, LoggedInput, LoggedMix, LoggedTimeBetween } from './input.js'
import { stopsByShift } from './minutes.js'
import type { CleanRecord, LoggedCases, Span } from './record.js'
import { union } from './spans.js'
import type { sampleFrom } from './stop-times.js'
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
    words: 'how the cases are shared out among the kinds',
    count,
    kinds: [...counts].map(([name, each]) => ({ name, count: each })),
    notes: [],
  }
}

/** Finds whether spans of a shift overlap what stood still, going forward in time. */
class Standing {
  private next = 0

  constructor(private readonly stood: readonly Span[]) {}

  overlaps(from: number, to: number): boolean {
    while (this.next < this.stood.length && this.stood[this.next]!.ends <= from) this.next++
    return this.next < this.stood.length && this.stood[this.next]!.begins < to
  }
}

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
    if (standing.overlaps(from, to)) {
      leftOut++
      continue
    }
    const hour = clock.hour(from)
    countByHour[hour]!++
    secondsByHour[hour]! += to - from
    shiftOf[count] = shift
    gaps[count++] = to - from
  }
  const kept = gaps.subarray(0, count)
  return {
    what: 'time-between',
    path: `arrivals.${source}.time-between`,
    words: 'time from one case to the next',
    count,
    sample: sampleOfGaps(kept, roundedTo),
    gaps: kept,
    shifts: shiftOf.subarray(0, count),
    countByHour,
    secondsByHour,
    leftOut,
    notes: [
      ...(leftOut > 0
        ? [
            `${leftOut} gaps during which a stop, a break or lost time was logged are left out: the line held the cases up.`,
          ]
        : []),
      ...(source === anySource
        ? [
            'The record does not say at which entry of `arrivals` these cases come: add `source` under `cases`.',
          ]
        : []),
    ],
  }
}

/** Finer clocks show milliseconds. */
const finest = 0.001

function sampleOfGaps(gaps: Float64Array, roundedTo: number): ReturnType<typeof sampleFrom> {
  const grain = roundedTo === 0 ? finest : roundedTo
  const numbers = new Map<number, number>()
  // differences of large numbers are not whole in the grain to the last digit
  for (const gap of gaps) {
    const grains = Math.round(gap / grain)
    numbers.set(grains, (numbers.get(grains) ?? 0) + 1)
  }
  const sorted = [...numbers].sort(([a], [b]) => a - b)
  return {
    seen: sorted.map(([grains]): Seen => ({ clocked: grains * grain, grain })),
    counts: sorted.map(([, count]) => count),
    from: 0,
  }
}
