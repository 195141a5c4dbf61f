/** The stops of a recorded stretch and the waiting of those who bring cases, with the words for them. */
import type { StateKey } from '../catalogue/states.js'
import { type StopKind, states } from '../catalogue/states.js'
import type { Stretch } from '../shifts/stretch.js'

/** A stop of a piece as far as it lies in the stretch; times in s since the start of the shift. */
export interface Stop {
  piece: number
  kind: StopKind
  from: number
  /** Somebody is there and begins. */
  workFrom: number
  to: number
  /** It began before the stretch, or lasts beyond it: longer than is seen. */
  isCut: boolean
}

/** A machine that sets its own size does so between two cases: shorter than this it is no stop, s. */
const leastSetting = 10

/** All stops that lie in the stretch in whole or in part, in order of their beginning. */
export const stopsOf = (stretch: Stretch): Stop[] =>
  stretch.states
    .flatMap((_, piece) => stopsOn(piece, stretch))
    .filter(({ kind, from, to }) => kind !== 'size' || to - from >= leastSetting)
    .sort((a, b) => a.from - b.from || a.piece - b.piece)

/** Of a state that is part of a stop: which kind, and whether somebody is there; undefined of others. */
function stopIn(state: StateKey): { kind: StopKind; isWork: boolean } | undefined {
  const { stop: kind, isWaitForCrew = false } = states[state]
  return kind && { kind, isWork: !isWaitForCrew }
}

/** The stops of one piece: states of one kind that follow one another are one stop. */
function stopsOn(piece: number, { states, from, to }: Stretch): Stop[] {
  const all = states[piece]!
  const parts = all.map(([begin, state], index) => {
    const end = Math.min(all[index + 1]?.[0] ?? to, to)
    const isCut = begin < from || index === all.length - 1
    const isSeen = end > from && begin < to
    return { what: isSeen ? stopIn(state) : undefined, begin: Math.max(begin, from), end, isCut }
  })
  const stops: Stop[] = []
  let open: Stop | undefined
  for (const { what, begin, end, isCut } of parts) {
    // people come before they work: work that is followed by waiting is another stop
    const goesOn = open?.kind === what?.kind && (what?.isWork || open?.workFrom === open?.to)
    if (open && what && goesOn) {
      if (!what.isWork) open.workFrom = end
      open.to = end
      open.isCut ||= isCut
      continue
    }
    const workFrom = what?.isWork ? begin : end
    open = what && { piece, kind: what.kind, from: begin, workFrom, to: end, isCut }
    if (open) stops.push(open)
  }
  return stops
}

/** Of each source whose people wait while the line is full: when they do in the stretch, breaks left out. */
export function waitsOf({ sources, cases, breaks, from, to }: Stretch): [number, number][][] {
  const waits: [number, number][][] = sources.map(() => [])
  for (const { came, path } of cases) {
    const [source, arrived] = came
    if (sources[source]!.whenFull !== 'wait') continue
    const begin = Math.max(arrived, from)
    const end = Math.min(path[0]?.[1] ?? to, to)
    if (!(end > begin)) continue
    const last = waits[source]!.at(-1)
    // cases of one batch wait together
    if (last && begin <= last[1]) last[1] = Math.max(last[1], end)
    else waits[source]!.push([begin, end])
  }
  return waits.map((all) => breaks.reduce(without, all))
}

/** Intervals less what of them lies in a pause. */
const without = (
  intervals: [number, number][],
  [begin, end]: readonly [number, number],
): [number, number][] =>
  intervals.flatMap(([from, to]) =>
    (
      [
        [from, Math.min(to, begin)],
        [Math.max(from, end), to],
      ] as [number, number][]
    ).filter(([a, b]) => b > a),
  )

/** Sum of the lengths of intervals. */
export const totalOf = (intervals: readonly (readonly [number, number])[]): number =>
  intervals.reduce((sum, [from, to]) => sum + to - from, 0)

/** A length of time as it is read at a glance: `45 s`, `2 min 10 s`, `1 h 5 min`. */
export function lasting(seconds: number): string {
  const whole = Math.round(seconds)
  if (whole < 60) return `${whole} s`
  const [hours, minutes] = [Math.floor(whole / 3600), Math.floor(whole / 60) % 60]
  const parts =
    hours > 0 ? [`${hours} h`, minutes > 0 ? `${minutes} min` : ''] : [`${minutes} min`, restOf(whole % 60)]
  return parts.filter((part) => part !== '').join(' ')
}

const restOf = (seconds: number) => (seconds > 0 ? `${seconds} s` : '')

/** Time since the start of the shift as h:mm, or h:mm:ss; seconds that are not over are cut off. */
export function clockOf(seconds: number, withSeconds = false): string {
  const whole = Math.floor(seconds + 1e-6)
  const two = (value: number) => String(value).padStart(2, '0')
  const hours = `${Math.floor(whole / 3600)}:${two(Math.floor(whole / 60) % 60)}`
  return withSeconds ? `${hours}:${two(whole % 60)}` : hours
}
