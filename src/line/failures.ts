/** A piece that may break down in the words of ISO 22400-2: mean operating time to failure and between failures, mean time to repair. */
import { elements } from './effectiveness.js'
import type { Floor } from './floor.js'
import { isoMeasures, type Measure } from './measure.js'
import { Cause } from './states.js'
import { ofStopTime, restsOn } from './stop-measures.js'
import type { Tallies } from './unit.js'

/** What counts as what, in words, printed beside the figures. */
export const failureMapping =
  'After ISO 22400-2 (definitions from memory, the text was not at hand): a failure is a breakdown; time to failure is operating time, at work and being set, without waiting, blocked, jams, tape, planned stops and breaks; time to repair is from breakdown to restart, waiting for crew included; time between failures is both. Each is the sum of the whole study over its breakdowns and one. With no breakdown MTTF is all the operating time seen, and the true one may be far longer; MTTR is low where breakdowns are few: the mean of those that came stands under "Stops".'

/**
 * MTBF, MTTF and MTTR: sums of times over failures + 1 (`isOverOneMore` of their rows). The standard counts them over a period; here that is the study, for a time
 * to failure is longer than a shift, and + 1 in each would give about the length of a shift whatever the machine is like.
 */
export function failureMeasures(unit: Tallies, floor: Floor): Measure[] {
  const measure = isoMeasures(unit.name)
  const over = () => unit.stopCounts[Cause.breakdown]!
  const repair = () => unit.stopTimes[Cause.breakdown]!
  const operating = () =>
    [...elements.APT, ...elements.AUST].reduce<number>((sum, state) => sum + unit.stateTimes[state]!, 0)
  const ofRepairs = { over, ...ofStopTime(unit, Cause.breakdown, floor) }
  return [
    measure('MTBF', () => operating() + repair(), ofRepairs),
    measure('MTTF', operating, { over, ...restsOn(unit, [Cause.breakdown]) }),
    measure('MTTR', repair, ofRepairs),
  ]
}
