/** A piece that may break down in the words of ISO 22400-2: mean operating time to failure and between failures, mean time to repair. */
import { elements } from './effectiveness.js'
import type { Floor } from './floor.js'
import { isoMeasures, type Measure } from './measure.js'
import { Cause } from './states.js'
import { ofStopTime, restsOn } from './stop-measures.js'
import type { Tallies } from './unit.js'

/** What counts as what, in words, printed beside the figures. */
export const failureMapping =
  'After ISO 22400-2 (definitions from memory, the text was not at hand). A failure is a breakdown. MTTF: operating time (working and changeovers; without waiting, blocked, jams, tape, planned stops and breaks). MTTR: time from breakdown to restart, waiting for crew included. MTBF: both together. Each is the total of the study / (breakdowns + 1). With no breakdown, MTTF is all the operating time seen, and the true one may be far longer. With few breakdowns MTTR is too low: see the mean under "Stops".'

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
