/** What every report has for the page alone. */

import type { Report } from '../report/report.js'
import type { About } from './about.js'
import { findingsTable, givenTable } from './about-table.js'

export type StudyRecord = Pick<Report, 'summary' | 'findings' | 'given' | 'definitions' | 'checklist'>

/** Findings and what is given, alike for all. */
export const ofAll = ({ about }: { about?: About | undefined }) => ({
  findings: findingsTable(about),
  given: givenTable(about),
})
