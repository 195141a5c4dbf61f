/** What a report tells of its study beside the figures: findings of the check, and what the scenario gives. */

import { words } from '../report/cell.js'
import type { Table } from '../report/report.js'
import type { About } from './about.js'

/** Errors and warnings of the check; without rows where there are none. */
export function findingsTable(about: About | undefined): Table {
  const findings = about?.findings ?? []
  const isOfDesigns = findings.some(({ design }) => design !== null)
  return {
    title: 'Findings of the check',
    note: 'What pencil, paper and the standards say against the scenario before anything is simulated. An error: the line cannot work so. A warning: it will give trouble.',
    columns: words(
      ...['finding', 'about', 'what was found', 'basis', 'nearest mend'],
      ...(isOfDesigns ? ['design'] : []),
    ),
    rows: findings.map(({ severity, code, path, message, basis, fix, design }) => [
      ...[`${severity}: ${code}`, { path }, message, basis, fix],
      ...(isOfDesigns ? [design ?? 'the scenario itself'] : []),
    ]),
  }
}

/** What the scenario says itself. */
export function givenTable(about: About | undefined): Table {
  return {
    title: 'Given by the scenario',
    columns: words('what', 'value'),
    rows: (about?.given ?? []).map(({ path, value }) => [{ path }, value]),
  }
}
