/** The report as text for a terminal. */
import { printable } from '../scenario/printable.js'
import type { Head, Report, Table } from './report.js'
import { tableText } from './table-text.js'
import { paragraph, type TextStyle } from './text.js'

const spacing = { gap: 4, margin: 1 }

/** The report in full, ending in a newline. */
export function terminalReport(report: Report, style: TextStyle): string {
  const { bold, width } = style
  const said = (lines: readonly string[]) => lines.map((line) => paragraph(line, width))
  const listed = (lines: readonly string[]) => lines.map((line) => paragraph(line, width, '  ', '- '))
  const headLines = ({ title, lines }: Head) => [bold(paragraph(title, width)), ...listed(lines), '']
  const parts = [
    bold(printable(report.title)),
    ...said([report.subtitle]),
    '',
    ...(report.head ? headLines(report.head) : []),
    ...said(report.headline),
    ...(report.certainty.length > 0 ? ['', ...said(report.certainty)] : []),
    ...shownTables(report).flatMap((table) => ['', tableText(table, report.display, style, spacing)]),
    '',
    bold('Limits'),
    ...listed(report.limits),
    ...assumedLines(report, bold, listed),
    '',
    bold('Safety'),
    ...said([report.cautions[0]!, 'The report has the full list of cautions.']),
  ]
  return `${parts.join('\n')}\n`
}

/** The figures, and what the inputs rest on where they say so. */
const shownTables = ({ tables, rests }: Report): readonly Table[] =>
  rests && rests.table.rows.length > 0 ? [...tables, rests.table] : tables

/** What nobody named: one by one what has no published source, and the number of the others. */
function assumedLines(
  { assumed, unsourced }: Report,
  bold: TextStyle['bold'],
  listed: (lines: readonly string[]) => string[],
): string[] {
  const all = assumed.rows.length
  if (all === 0) return []
  const rest = all - unsourced.length
  return [
    '',
    bold(`${all} values were assumed`),
    ...listed(unsourced),
    ...(rest > 0 ? [`- and ${rest} defined by the format; scenario.yaml and the report list all`] : []),
  ]
}
