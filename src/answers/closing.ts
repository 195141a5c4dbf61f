/** What every report ends with: assumptions, cautions, how to repeat it and what made it. */

import type { Report } from '../report/report.js'
import { cautions } from '../trade/cautions.js'
import { assumedRows } from './assumed.js'
import type { Assumed, Made } from './made.js'

/** The end of a report; `title` heads the assumptions. */
export const closingOf = (
  made: Made,
  assumed: readonly Assumed[],
  title: string,
): Pick<Report, 'assumed' | 'cautions' | 'repeat' | 'origin'> => ({
  assumed: {
    title,
    note: '',
    columns: ['what', 'value', 'where the value comes from'],
    words: ['value', 'where the value comes from'],
    rows: assumedRows(assumed),
  },
  cautions,
  repeat: made.repeat,
  origin: `tapeshift ${made.version} on Node ${made.node}, seed "${made.seed}", scenario sha256 ${made.scenario.sha256}`,
})
