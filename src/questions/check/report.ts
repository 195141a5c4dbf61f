/** What the report of a check says: a verdict, findings the worst first, the hand calculation, what was assumed, cautions. */

import { assumedColumns, assumedRows, isUnsourced, restsOnTable } from '../../answers/rests-on.js'
import { type Severity, severities } from '../../hand/finding.js'
import { counted } from '../../report/format.js'
import type { Table } from '../../report/report.js'
import { tableText } from '../../report/table-text.js'
import { paragraph, type TextStyle } from '../../report/text.js'
import { cautionLine } from '../../trade/cautions.js'
import type { CheckResult, FindingResult } from './document.js'
import { expectedSentence } from './expected-table.js'
import { handTables } from './tables.js'

const headings: Record<Severity, string> = {
  error: 'Errors: the line cannot work as described',
  warning: 'Warnings: expect trouble',
  note: 'Notes',
}

/** The verdict in a sentence or two. */
export function verdict({ canWork, counts, hand, findings }: CheckResult): string {
  const all = severities.map((each) => counted(counts[each], each)).join(', ')
  if (!hand) return `This scenario cannot be read: ${counted(counts.error, 'error')}.`
  if (!canWork) return `This line cannot work as described: ${all}.`
  if (findings.some(({ code }) => code === 'target-above-expected'))
    return `This line can work, but by hand calculation it misses its target: ${all}. Simulate it with \`tapeshift run\` to see how often.`
  return `No error found: ${all}. Simulate it with \`tapeshift run\` to see whether it reaches its target when arrivals and stops vary.`
}

const place = ({ path, place: at }: FindingResult): string => {
  if (!at) return path === '' ? '' : `${path} (assumed)`
  return at.line > 0 ? `${path} (${at.source}:${at.line}:${at.column})` : `${path} (${at.source})`
}

/** Findings under a heading for each severity, as text. */
function findingsText(result: CheckResult, { bold, width }: TextStyle): string {
  const parts = severities.flatMap((severity) => {
    const findings = result.findings.filter((each) => each.severity === severity)
    if (findings.length === 0) return []
    return [
      '',
      bold(headings[severity]),
      ...findings.flatMap((finding) => [
        paragraph([`[${finding.code}]`, place(finding)].filter((part) => part).join(' '), width, '  ', '- '),
        paragraph(finding.message, width, '  ', '  '),
        paragraph(`Basis: ${finding.basis}. Fix: ${finding.fix}.`, width, '  ', '  '),
      ]),
    ]
  })
  return parts.join('\n')
}

/** Everything that nobody named; what has no published source comes first. */
function assumedTable({ assumed, display }: CheckResult): Table {
  return {
    title: 'Assumed, because the scenario does not say',
    note: 'Values with "common practice, no source" or "from memory, low confidence" have no published source: enter your own.',
    columns: assumedColumns,
    rows: assumedRows(
      [...assumed].sort((a, b) => Number(isUnsourced(b)) - Number(isUnsourced(a))),
      display,
    ),
  }
}

const spacing = { gap: 2, margin: 0, isTight: false }

/** The whole check as text for a terminal; `isShort` leaves findings and one line of caution. Ends in a newline. */
export function checkText(result: CheckResult, style: TextStyle, isShort = false): string {
  const { bold, width } = style
  const head = [
    bold(paragraph(result.made?.scenario.title ?? 'Check', width)),
    paragraph(verdict(result), width),
    ...(result.hand ? [paragraph(expectedSentence(result), width)] : []),
    findingsText(result, style),
  ]
  if (isShort) return `${[...head, '', paragraph(`Safety: ${cautionLine}`, width)].join('\n')}\n`
  const rests = restsOnTable(result.evidence, result.display)
  const tables = [...handTables(result), rests, assumedTable(result)].filter(({ rows }) => rows.length > 0)
  return `${[
    ...head,
    ...tables.flatMap((table) => ['', tableText(table, result.display, style, spacing)]),
    ...(result.exact === '' ? [] : ['', paragraph(result.exact, width)]),
    '',
    bold('Safety'),
    ...result.cautions.map((caution) => paragraph(caution, width, '  ', '- ')),
  ].join('\n')}\n`
}
