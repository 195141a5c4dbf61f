/** Which measures count the stops that come by chance. */
import { Cause, causes } from '../line/states.js'
import type { StudyMeasure } from './figures.js'

/** Stops that come by chance; roll changes, settings and blade services come with the cases. */
const byChance: readonly string[] = [Cause.jam, Cause.breakdown, Cause.tapeBreak].map(
  (cause) => causes[cause].key,
)

/** Of the measures of a line those that count, shift by shift, the stops by chance that its scenario names. */
export const chanceStops = (measures: readonly StudyMeasure[]): StudyMeasure[] =>
  measures.filter(
    ({ path: [room, , group, key] }) =>
      room === 'equipment' && group === 'measures' && byChance.includes(key!),
  )
