/** Slow starts by hand: those that are known beforehand, and the output that they cost. */
import type { Scenario } from '../scenario/schema.js'
import { lostBySlowStart } from '../scenario/slow-starts.js'
import { handoverStop, plannedOf } from './planned.js'

type Piece = Scenario['line'][string]

/** Of a shift: how many, and what each costs as time in which the piece would have worked at its usual speed, s. */
export interface SlowStartsHand {
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
