/** Text for a terminal without a library: paragraphs broken at spaces, and tables that go on below where they are too wide. */
import { printable } from '../scenario/problems.js'
import type { Table } from './content.js'

/** How text may be set: bold where the terminal shows it. */
export interface TextStyle {
  bold: (text: string) => string
  width: number
}

const between = '  '

/**
 * Breaks a text at spaces so that no line is longer than `width`; a word longer than that stays whole. `first` stands before the
 * first line, `indent` before the others.
 */
export function paragraph(text: string, width: number, indent = '', first = ''): string {
  const lines: string[] = []
  let line = first
  let isBegun = false
  for (const word of printable(text).split(' ')) {
    if (isBegun && line.length + 1 + word.length > width) {
      lines.push(line)
      line = indent + word
    } else line = isBegun ? `${line} ${word}` : line + word
    isBegun = true
  }
  lines.push(line)
  return lines.join('\n')
}

/** A table with its title and note; columns that do not fit go on below, with the first column again. Numbers stand to the right. */
export function plainTable(table: Table, { bold, width }: TextStyle): string {
  const cells = [table.columns, ...table.rows].map((row) => row.map((cell) => printable(cell)))
  const widths = table.columns.map((_, column) => Math.max(...cells.map((row) => row[column]!.length)))
  const isNumber = table.columns.map((_, column) =>
    table.rows.every((row) => row[column] === '' || /^[–\d-]|^without limit|^never/.test(row[column]!)),
  )
  const line = (row: readonly string[], columns: readonly number[]) =>
    columns
      .map((column) =>
        column > 0 && isNumber[column]
          ? row[column]!.padStart(widths[column]!)
          : row[column]!.padEnd(widths[column]!),
      )
      .join(between)
      .trimEnd()
  const groups = columnsThatFit(widths, between.length, width).map((columns) =>
    cells.map((row) => line(row, columns)).join('\n'),
  )
  const note = table.note ? [paragraph(table.note, width)] : []
  return [bold(table.title), ...note, groups.join('\n\n')].join('\n')
}

/** Groups of columns, each beginning with the first, that fit into `width` with `gap` between two. */
export function columnsThatFit(widths: readonly number[], gap: number, width: number): number[][] {
  const groups: number[][] = [[0]]
  let used = widths[0]!
  for (let column = 1; column < widths.length; column++) {
    const more = widths[column]! + gap
    if (used + more > width && groups.at(-1)!.length > 1) {
      groups.push([0])
      used = widths[0]!
    }
    groups.at(-1)!.push(column)
    used += more
  }
  return groups
}
