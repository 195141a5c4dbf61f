/** Which measures count the stops that come by chance. */
import { type CauseKey, causes } from '../catalogue/causes.js'
import type { StudyMeasure } from './figures.js'

/** Of the measures of a line those that count, shift by shift, the stops by chance that its scenario names. */
export const chanceStops = (measures: readonly StudyMeasure[]): StudyMeasure[] =>
  measures.filter(
    ({ path: [room, , group, key] }) =>
      room === 'equipment' && group === 'measures' && causes[key as CauseKey]?.isByChance === true,
  )
