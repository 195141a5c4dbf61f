/** The report of a result document, whichever command made it. */
import type { ResultDocument } from './charts/of-document.js'
import { compareReport } from './compare.js'
import { type Report, runReport } from './content.js'
import { sizeReport } from './size.js'
import { sweepReport } from './sweep.js'

/** Commands whose documents have a report. */
export const reported = ['run', 'compare', 'size', 'sweep'] as const satisfies ResultDocument['command'][]

/** Its report. */
export function reportOf(document: ResultDocument): Report {
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
