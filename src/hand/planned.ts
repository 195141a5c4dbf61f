/** Planned work, handovers and slow starts by hand: how often, how long, and what they leave of the working time. */
import { meanOf, varianceOf } from '../scenario/law.js'
import { duesPerShift } from '../scenario/planned.js'
import type { Scenario } from '../scenario/schema.js'
import { lostBySlowStart } from '../scenario/slow-starts.js'
import { workingTime } from '../scenario/working-time.js'

type Piece = Scenario['line'][string]

/** One kind of planned work of a piece. Times in s. */
interface PlannedHand {
  /** A shift. */
  count: number
  time: number
  variance: number
  /** Whose people do it; null: nobody. */
  needs: string | null
}

export const plannedOf = ({ shift }: Scenario, { planned = [] }: Piece): PlannedHand[] =>
  planned.map((work) => ({
    count: duesPerShift(work, shift.length),
    time: meanOf(work.takes),
    variance: varianceOf(work.takes),
    needs: work.needs ?? null,
  }))

/** All planned work of a piece as one kind of stop: it runs on until somebody is there, so no walk is in it; null where there is none. */
export function plannedStop(scenario: Scenario, piece: Piece) {
  const kinds = plannedOf(scenario, piece)
  const sum = (of: (kind: PlannedHand) => number) =>
    kinds.reduce((total, kind) => total + kind.count * of(kind), 0)
  const count = sum(() => 1)
  if (count === 0) return null
  const time = sum((kind) => kind.time) / count
  const spread = Math.sqrt(sum((kind) => kind.variance + (kind.time - time) ** 2) / count)
  return { key: 'planned-work', skill: null, count, work: 0, time, spread } as const
}

/** The handovers of a place as a kind of stop, one at either end of a shift; null where there are none. */
export function handoverStop(piece: Piece) {
  const time = 'handover' in piece ? piece.handover : undefined
  if (time === undefined) return null
  return { key: 'planned-work', skill: null, count: 2, work: 0, time, spread: 0 } as const
}

/** Of a shift: how many, and what each costs as time in which the piece would have worked at its usual speed, s. */
interface SlowStartsHand {
  count: number
  time: number
}

/**
 * After breaks in which the piece stands, its handovers, planned work that takes long enough on the mean, and at the start of each shift where that is
 * asked for. Those after breakdowns and jams are left out, for pencil and paper know no more of them than their mean.
 */
export function slowStartsOf({ shift, ...scenario }: Scenario, piece: Piece): SlowStartsHand {
  const keys = 'slow-start' in piece ? piece['slow-start'] : undefined
  if (keys === undefined) return { count: 0, time: 0 }
  const isLong = (time: number) => time >= keys.after
  const stopsAtBreaks =
    shift['breaks-stop'] === 'everything' || ('run-by' in piece && piece['run-by'] === 'people')
  const breaks = stopsAtBreaks ? shift.breaks.filter((pause) => isLong(pause.for)).length : 0
  const planned = plannedOf({ shift, ...scenario }, piece).filter(({ time }) => isLong(time))
  // of the two handovers of a shift the one at its start is followed by work
  const handovers = isLong(handoverStop(piece)?.time ?? 0) ? 1 : 0
  const atStart = keys['at-shift-start'] && handovers === 0 ? 1 : 0
  return {
    count: breaks + handovers + atStart + planned.reduce((sum, { count }) => sum + count, 0),
    time: lostBySlowStart(keys),
  }
}

/** Share of the working time that they leave to a piece. What of it lies in breaks is counted as if it did not. */
export function withoutPlanned(scenario: Scenario, piece: Piece): number {
  const lost = [plannedStop(scenario, piece), handoverStop(piece), slowStartsOf(scenario, piece)].reduce(
    (sum, stop) => sum + (stop === null ? 0 : stop.count * stop.time),
    0,
  )
  return Math.max(0, 1 - lost / workingTime(scenario.shift))
}
