/** What every report ends with: assumptions, cautions, how to repeat it and what made it. */

import type { Report } from '../report/report.js'
import { cautions } from '../trade/cautions.js'
import { assumedColumns, assumedRows, isUnsourced } from './assumed.js'
import { flowText } from './flow.js'
import type { Assumed, Made } from './made.js'

/** The end of a report; `title` heads the assumptions. */
export const closingOf = (
  made: Made,
  assumed: readonly Assumed[],
  title: string,
): Pick<Report, 'assumed' | 'unsourced' | 'cautions' | 'repeat' | 'origin'> => ({
  assumed: { title, note: '', columns: assumedColumns, rows: assumedRows(assumed) },
  unsourced: assumed
    .filter(isUnsourced)
    .map(({ path, value, basis }) => `${path} = ${flowText(value)} (${basis})`),
  cautions,
  repeat: made.repeat,
  origin: `tapeshift ${made.version} on Node ${made.node}, seed "${made.seed}", scenario sha256 ${made.scenario.sha256}`,
})
