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

function tableText(table: Table, style: Style): string {
  const body = new CliTable({
    head: table.columns.map(printable),
    style: { head: [], border: [], compact: true },
    colAligns: table.columns.map((_, index) => (index === 0 ? 'left' : 'right')),
    chars: {
      top: '',
      'top-mid': '',
      'top-left': '',
      'top-right': '',
      bottom: '',
      'bottom-mid': '',
      'bottom-left': '',
      'bottom-right': '',
      left: '',
      'left-mid': '',
      mid: '',
      'mid-mid': '',
      right: '',
      'right-mid': '',
      middle: '  ',
    },
  })
  for (const row of table.rows) body.push(row.map(printable))
  const lines = body
    .toString()
    .split('\n')
    .map((line) => line.trimEnd())
  const note = table.note ? [wrap(table.note, style.width)] : []
  return [style.bold(table.title), ...note, ...lines].join('\n')
}

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
