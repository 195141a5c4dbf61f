/** A stretch of one shift as it was simulated: which case was where, when, and in what state every piece was. */

import { median } from 'simple-statistics'
import type { StateKey } from '../catalogue/states.js'
import type { Movement } from '../kinds/in-pictures.js'
import { inPicturesOf } from '../kinds/pictures.js'
import type { Line, ShiftResult } from '../line/line.js'
import type { Scenario } from '../scenario/schema.js'
import { Recorder } from './recorder.js'

/** Times are in seconds since the start of the shift (of several in a row: of the first). */
export interface Stretch {
  shift: number
  from: number
  to: number
  /** Why this shift and this stretch of it, in words. */
  why: string
  /** Cases on the line in the stretch, in order of arrival, and those just ahead of them. */
  cases: {
    id: number
    /** Place of its kind in the scenario. */
    kind: number
    /** Outside, m, where its kind varies. */
    size?: { length: number; width: number }
    /** Each piece that it enters, from its coming to the end of the stretch: piece, time in, time out or null. */
    path: [number, number, number | null][]
    /** Source that it comes from, and when it comes. */
    came: [number, number]
    /** When it goes onto the belts of each sealer of its path, in their order; null for not in the stretch. */
    belts?: (number | null)[]
    /** While the machine behind stood and held its tail: which of its path, begin, end or null for not in the stretch. */
    held?: [number, number, number | null][]
    /** It was spoilt in a jam and taken out where its path ends. */
    lost?: true
  }[]
  /** Of each piece in order of the file its states, from the first time that a path needs: time, state. */
  states: [number, StateKey][][]
  /** Of each piece, over the same time, the speed at which it carries: time, m/s, 0 while it stands; empty where it has no drive. */
  drives: [number, number][][]
  /** Breaks of the shift, as far as they lie in the stretch: begin, end. */
  breaks: [number, number][]
  /** Cases in the line, floor stacks before it included, from each of these instants on. */
  held: [number, number][]
  /** In order of the file. */
  pieces: Movement[]
  /** In order of the file; what those who bring cases do when the line is full. */
  sources: { name: string; whenFull: string }[]
}

/**
 * The shift that shows best what costs output: the one whose output is nearest the median, the first of those
 * that are equally near. In the shift of the lowest output one rare breakdown hides everything else.
 * `shifts` in their order, at least one; the answer counts from 1. Common practice, no source.
 */
export function ordinaryShift(shifts: readonly Pick<ShiftResult, 'outputs'>[]): {
  shift: number
  why: string
} {
  const outputs = shifts.map(({ outputs: each }) => each.reduce((sum, output) => sum + output, 0))
  const middle = median(outputs)
  let best = 0
  for (const [index, output] of outputs.entries())
    if (Math.abs(output - middle) < Math.abs(outputs[best]! - middle)) best = index
  const share = `Shift ${best + 1} of ${outputs.length}`
  return {
    shift: best + 1,
    why: `${share} has a typical output: half of the shifts have more, half have less. Its stops are typical of the line.`,
  }
}

/** Departed cases whose leaving still tells where the first one on an accumulating conveyor is. */
const leaders = { atOnce: 1, withDelay: 30 }

/**
 * Simulates shift `shift` (from 1) of study `seed` and records `length` seconds of it around its longest queue: the first
 * instant, outside breaks if there is one, at which most cases are in the line stands in the middle, as far as the shift
 * reaches. A length beyond that of the shift takes the whole shift. Throws what `Line.simulate` throws.
 */
export function recordStretch(
  line: Line,
  scenario: Scenario,
  seed: string,
  shift: number,
  { length, why = '' }: { length: number; why?: string },
): Stretch {
  const recorder = new Recorder(scenario)
  line.observe((event) => recorder.take(event))
  try {
    line.simulate(seed, shift)
  } finally {
    line.observe(null)
  }
  const allBreaks = breaksOf(scenario)
  const most = recorder.longestQueue(allBreaks)
  const span = Math.min(length, line.end)
  const from = Math.min(Math.max(0, most.time - span / 2), line.end - span)
  const to = from + span
  const pieces = Object.values(scenario.line).map((keys) => inPicturesOf(keys).movement(keys, scenario))
  const cases = casesOf(recorder, pieces, from, to)
  const first = Math.min(from, ...cases.flatMap(({ path }) => path.slice(0, 1).map(([, time]) => time)))
  return {
    shift,
    from,
    to,
    why: [why, `The period shown is around its longest queue, ${most.count} cases in the line.`]
      .filter((part) => part !== '')
      .join(' '),
    cases,
    states: recorder.states.map((all) => between(all, first, to)),
    drives: recorder.drives.map((all) => between(all, first, to)),
    breaks: allBreaks
      .filter(([begin, end]) => begin < to && end > from)
      .map(([begin, end]) => [Math.max(begin, from), Math.min(end, to)]),
    held: between(recorder.held, from, to).map(([time, count]) => [Math.max(time, from), count]),
    pieces,
    sources: Object.entries(scenario.arrivals).map(([name, keys]) => ({ name, whenFull: keys['when-full'] })),
  }
}

/** Breaks of all shifts in a row, s since the start of the first. */
function breaksOf({ shift }: Scenario): [number, number][] {
  const span = shift.length + shift['run-out']
  return Array.from({ length: shift.campaign }, (_, index) =>
    shift.breaks.map((pause): [number, number] => [
      index * span + pause.at,
      index * span + pause.at + pause.for,
    ]),
  ).flat()
}

/** The entries of a step function that hold somewhere in [from, to]. */
function between<Value>(steps: readonly [number, Value][], from: number, to: number): [number, Value][] {
  const isPast = (index: number) => index + 1 < steps.length && steps[index + 1]![0] <= from
  return steps.filter(([time], index) => time <= to && !isPast(index)).map(([time, value]) => [time, value])
}

/** The cases that are on the line, or stand before it, in [from, to], and those whose leaving tells where others are. */
function casesOf(
  recorder: Recorder,
  pieces: readonly Movement[],
  from: number,
  to: number,
): Stretch['cases'] {
  const all = recorder.cases
  const there = [...all.keys()].filter((index) => all[index]!.came[1] <= to && all[index]!.gone > from)
  const gone = all.flatMap(({ path }) => path.filter(({ out }) => out <= from))
  const ahead = pieces.flatMap(({ moves, startDelay }, piece) => {
    if (moves !== 'accumulating') return []
    const here = gone.filter((visit) => visit.piece === piece).sort((a, b) => b.out - a.out)
    return here.slice(0, startDelay > 0 ? leaders.withDelay : leaders.atOnce).map(({ item }) => item)
  })
  return [...new Set([...there, ...ahead])]
    .sort((a, b) => a - b)
    .map((index) => caseUntil(to, recorder.cases[index]!, pieces))
}

/** What is known of a case at `to`. */
function caseUntil(
  to: number,
  { id, kind, size, came, isLost, path }: Recorder['cases'][number],
  pieces: readonly Movement[],
): Stretch['cases'][number] {
  const known = (time: number) => (time <= to ? time : null)
  const entered = path.filter((visit) => visit.in <= to)
  const belts = entered
    .filter(({ piece }) => pieces[piece]!.moves === 'sealer')
    .map((visit) => known(visit.belts))
  const held = entered.flatMap((visit, index) =>
    visit.held
      .filter(([begin]) => begin <= to)
      .map(([begin, end]): [number, number, number | null] => [index, begin, known(end)]),
  )
  const isOut = entered.length === path.length && (path.at(-1)?.out ?? Infinity) <= to
  return {
    id,
    kind,
    ...(size ? { size } : {}),
    path: entered.map((visit) => [visit.piece, visit.in, known(visit.out)]),
    came,
    ...(belts.length > 0 ? { belts } : {}),
    ...(held.length > 0 ? { held } : {}),
    ...(isLost && isOut ? { lost: true } : {}),
  }
}
