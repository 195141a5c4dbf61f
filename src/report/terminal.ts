/** The report as text for a terminal. */
import CliTable from 'cli-table3'
import { printable } from '../scenario/problems.js'
import type { Report, Table } from './content.js'

/** How text may be set: bold where the terminal shows it. */
export interface Style {
  bold: (text: string) => string
  width: number
}

/** The report in full, ending in a newline. */
export function terminalReport(report: Report, style: Style): string {
  const parts = [
    style.bold(printable(report.title)),
    wrap(printable(report.subtitle), style.width),
    '',
    ...report.headline.map((line) => wrap(printable(line), style.width)),
    '',
    ...report.certainty.map((line) => wrap(printable(line), style.width)),
    ...report.tables.flatMap((table) => ['', tableText(table, style)]),
    '',
    style.bold('Limits'),
    ...report.limits.map((line) => wrap(`- ${printable(line)}`, style.width, '  ')),
  ]
  if (report.assumed.rows.length > 0) {
    parts.push('', style.bold(`${report.assumed.rows.length} values were assumed`))
    const own = report.assumed.rows.filter(([, , basis]) => basis !== 'definition of the format')
    for (const [path, value, basis] of own)
      parts.push(wrap(`- ${printable(path!)} = ${printable(value!)} (${basis})`, style.width, '  '))
    const rest = report.assumed.rows.length - own.length
    if (rest > 0)
      parts.push(`- and ${rest} that the format defines; all stand in scenario.yaml and in the report`)
  }
  parts.push(
    '',
    style.bold('Safety'),
    wrap(report.cautions[0]!, style.width),
    wrap('The full list of cautions stands in the report.', style.width),
  )
  return `${parts.join('\n')}\n`
}

/** A table; one that is too wide for the terminal goes on below, with its first column again. */
function tableText(table: Table, style: Style): string {
  const note = table.note ? [wrap(table.note, style.width)] : []
  const parts = partsThatFit(table, style.width).map((columns) => gridText(table, columns))
  return [style.bold(table.title), ...note, parts.join('\n\n')].join('\n')
}

/** Groups of columns, each beginning with the first, that fit into `width`. */
function partsThatFit(table: Table, width: number): number[][] {
  const widths = table.columns.map(
    (column, index) => Math.max(column.length, ...table.rows.map((row) => row[index]!.length)) + 4,
  )
  const parts: number[][] = [[0]]
  let used = widths[0]!
  for (let index = 1; index < widths.length; index++) {
    if (used + widths[index]! > width && parts.at(-1)!.length > 1) {
      parts.push([0])
      used = widths[0]!
    }
    parts.at(-1)!.push(index)
    used += widths[index]!
  }
  return parts
}

function gridText(table: Table, columns: readonly number[]): string {
  const body = new CliTable({
    head: columns.map((index) => printable(table.columns[index]!)),
    style: { head: [], border: [], compact: true },
    colAligns: columns.map((_, index) => (index === 0 ? 'left' : 'right')),
    chars: noLines,
  })
  for (const row of table.rows) {
    const cells = columns.map((index) => printable(row[index]!))
    const saysNothing = cells.slice(1).every((cell) => cell === '')
    if (!saysNothing) body.push(cells)
  }
  const lines = body.toString().split('\n')
  return lines.map((line) => line.trimEnd()).join('\n')
}

/** The table library draws lines; a report that is read aloud needs none. */
const noLines = Object.fromEntries([
  ['middle', '  '],
  ...[
    ...['top', 'top-mid', 'top-left', 'top-right', 'bottom', 'bottom-mid', 'bottom-left', 'bottom-right'],
    ...['left', 'left-mid', 'mid', 'mid-mid', 'right', 'right-mid'],
  ].map((part) => [part, '']),
]) as Record<CliTable.CharName, string>

/** Breaks a text at spaces so that no line is longer than `width`; a word longer than that stays whole. */
function wrap(text: string, width: number, indent = ''): string {
  const lines: string[] = []
  let line = ''
  for (const word of text.split(' ')) {
    if (line !== '' && line.length + 1 + word.length > width) {
      lines.push(line)
      line = indent + word
    } else line = line === '' ? word : `${line} ${word}`
  }
  lines.push(line)
  return lines.join('\n')
}
