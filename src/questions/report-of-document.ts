/** The report of a result document, whichever command made it. */

import { headOf } from '../answers/warnings.js'
import type { Report } from '../report/report.js'
import type { DocumentOf, ResultDocument } from './charts-of-document.js'
import { compareReport } from './compare/report.js'
import { fitReport } from './fit/report.js'
import { frontOf } from './front-of-document.js'
import { runReport } from './run/report.js'
import { sizeReport } from './size/report.js'
import { sweepReport } from './sweep/report.js'
import { validateReport } from './validate/report.js'

const reports: {
  [Command in ResultDocument['command']]: (document: DocumentOf<Command>) => Report
} = {
  ...{ run: runReport, compare: compareReport, size: sizeReport, sweep: sweepReport },
  ...{ fit: fitReport, validate: validateReport },
}

/** Commands whose documents have a report. */
export const reported = Object.keys(reports)

/** Its report, headed by what must be known before its figures are read. */
export function reportOf<Command extends ResultDocument['command']>(document: DocumentOf<Command>): Report {
  const head = headOf(document)
  return {
    ...reports[document.command as Command](document),
    ...(head ? { head } : {}),
    front: frontOf(document),
  }
}
