/** The report of a result document, whichever command made it. */

import { headOf } from '../answers/warnings.js'
import type { Report } from '../report/report.js'
import type { ResultDocument } from './charts-of-document.js'
import { compareReport } from './compare/report.js'
import { runReport } from './run/report.js'
import { sizeReport } from './size/report.js'
import { sweepReport } from './sweep/report.js'

/** Commands whose documents have a report. */
export const reported = ['run', 'compare', 'size', 'sweep'] as const satisfies ResultDocument['command'][]

/** Its report, headed by what must be known before its figures are read. */
export function reportOf(document: ResultDocument): Report {
  const head = headOf(document)
  return { ...bodyOf(document), ...(head ? { head } : {}) }
}

function bodyOf(document: ResultDocument): Report {
  switch (document.command) {
    case 'run':
      return runReport(document)
    case 'compare':
      return compareReport(document)
    case 'size':
      return sizeReport(document)
    case 'sweep':
      return sweepReport(document)
  }
}
