/** The report as text for a terminal. */
import CliTable from 'cli-table3'
import { printable } from '../scenario/printable.js'
import { columnsThatFit, paragraph, type SetColumn, type TextStyle } from './plain-text.js'
import type { Report, Table } from './report.js'

/** The report in full, ending in a newline. */
export function terminalReport(report: Report, style: TextStyle): string {
  const parts = [
    style.bold(printable(report.title)),
    paragraph(report.subtitle, style.width),
    '',
    ...headLines(report, style),
    ...report.headline.map((line) => paragraph(line, style.width)),
    '',
    ...report.certainty.map((line) => paragraph(line, style.width)),
    ...report.tables.flatMap((table) => ['', tableText(table, style)]),
    '',
    style.bold('Limits'),
    ...report.limits.map((line) => paragraph(line, style.width, '  ', '- ')),
  ]
  if (report.assumed.rows.length > 0) {
    parts.push('', style.bold(`${report.assumed.rows.length} values were assumed`))
    const own = report.assumed.rows.filter(([, , basis]) => basis !== 'definition of the format')
    for (const [path, value, basis] of own)
      parts.push(paragraph(`${path} = ${value} (${basis})`, style.width, '  ', '- '))
    const rest = report.assumed.rows.length - own.length
    if (rest > 0)
      parts.push(`- and ${rest} that the format defines; all stand in scenario.yaml and in the report`)
  }
  parts.push(
    '',
    style.bold('Safety'),
    paragraph(report.cautions[0]!, style.width),
    paragraph('The full list of cautions stands in the report.', style.width),
  )
  return `${parts.join('\n')}\n`
}

/** What must be known first, and an empty line. */
const headLines = ({ head }: Report, style: TextStyle): string[] =>
  head === undefined
    ? []
    : [
        style.bold(paragraph(head.title, style.width)),
        ...head.lines.map((line) => paragraph(line, style.width, '  ', '- ')),
        '',
      ]

/** A table; one that is too wide for the terminal goes on below, with its first column again. */
function tableText(table: Table, style: TextStyle): string {
  const note = table.note ? [paragraph(table.note, style.width)] : []
  // the library pads a cell by a letter on each side
  const groups = columnsThatFit(table, between.length + 2, style.width - 1)
  const parts = groups.map((columns) => gridText(table, columns))
  return [style.bold(table.title), ...note, parts.join('\n\n')].join('\n')
}

function gridText(table: Table, columns: readonly SetColumn[]): string {
  const cellsOf = (row: readonly string[]) => columns.map(({ lines }) => lines(row).join('\n'))
  const body = new CliTable({
    head: cellsOf(table.columns),
    style: { head: [], border: [], compact: true },
    colAligns: columns.map(({ isWords }) => (isWords ? 'left' : 'right')),
    chars: noLines,
  })
  for (const row of table.rows) {
    const saysNothing = columns.slice(1).every(({ column }) => row[column] === '')
    if (!saysNothing) body.push(cellsOf(row))
  }
  const lines = body.toString().split('\n')
  return lines.map((line) => line.trimEnd()).join('\n')
}

const between = '  '

/** The table library draws lines; a report that is read aloud needs none. */
const noLines = Object.fromEntries([
  ['middle', between],
  ...[
    ...['top', 'top-mid', 'top-left', 'top-right', 'bottom', 'bottom-mid', 'bottom-left', 'bottom-right'],
    ...['left', 'left-mid', 'mid', 'mid-mid', 'right', 'right-mid'],
  ].map((part) => [part, '']),
]) as Record<CliTable.CharName, string>
