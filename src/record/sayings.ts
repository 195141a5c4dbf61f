/** Everything that may be found in a record: what is said of it, what is done about it, and the nearest mend. */
import type { Saying } from './saying.js'
import { ofFiles, ofTimes } from './sayings-of-files.js'
import { ofCases, ofShifts, ofStops } from './sayings-of-logs.js'

export type Code = keyof (typeof ofFiles & typeof ofTimes & typeof ofShifts & typeof ofStops & typeof ofCases)

export const sayings: Readonly<Record<Code, Saying>> = {
  ...ofFiles,
  ...ofTimes,
  ...ofShifts,
  ...ofStops,
  ...ofCases,
}
