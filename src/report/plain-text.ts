/** Text for a terminal without a library: paragraphs broken at spaces, and tables that go on below where they are too wide. */
import { printable } from '../scenario/printable.js'
import type { Table } from './report.js'

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

/** A table with its title and note. Words stand to the left and are broken into lines, numbers stand to the right. */
export function plainTable(table: Table, { bold, width }: TextStyle): string {
  const groups = columnsThatFit(table, between.length, width).map((columns) => {
    const line = (row: readonly string[]): string[] => {
      const cells = columns.map((column) => column.lines(row))
      const height = Math.max(...cells.map((lines) => lines.length))
      return Array.from({ length: height }, (_, index) =>
        columns
          .map(({ isWords, width: room }, at) => {
            const text = cells[at]![index] ?? ''
            return isWords ? text.padEnd(room) : text.padStart(room)
          })
          .join(between)
          .trimEnd(),
      )
    }
    return [table.columns, ...table.rows].flatMap(line).join('\n')
  })
  const note = table.note ? [paragraph(table.note, width)] : []
  return [bold(table.title), ...note, groups.join('\n\n')].join('\n')
}

/** Does the column hold words? The first one always does. */
export const isOfWords = ({ columns, words = [] }: Table, column: number): boolean =>
  column === 0 || words.includes(columns[column]!)

/** A column as it is set in a group of columns that stand beside each other. */
export interface SetColumn {
  column: number
  isWords: boolean
  width: number
  /** Its cell of a row, in lines that are no longer than `width`. */
  lines: (row: readonly string[]) => string[]
}

/** Words are not set narrower than this to have them beside other columns. */
const leastWords = 20

/**
 * Groups of columns, each beginning with the first, that fit into `width` with `gap` between two: columns of words are broken into
 * lines, numbers only where one does not fit even alone.
 */
export function columnsThatFit(table: Table, gap: number, width: number): SetColumn[][] {
  const natural = table.columns.map((_, column) =>
    Math.max(...[table.columns, ...table.rows].map((row) => printable(row[column]!).length)),
  )
  const first = Math.min(natural[0]!, Math.max(leastWords, Math.floor(width / 2)))
  const least = natural.map((each, column) => {
    if (column === 0) return first
    return isOfWords(table, column) ? Math.min(each, leastWords) : each
  })
  const groups: number[][] = [[0]]
  let used = first
  for (let column = 1; column < natural.length; column++) {
    const more = least[column]! + gap
    if (used + more > width && groups.at(-1)!.length > 1) {
      groups.push([0])
      used = first
    }
    groups.at(-1)!.push(column)
    used += more
  }
  return groups.map((columns) => {
    const room = width - gap * (columns.length - 1)
    const widths = narrowed(
      columns.map((column) => natural[column]!),
      columns.map((column) => least[column]!),
      room,
    )
    return columns.map((column, index) => ({
      column,
      isWords: isOfWords(table, column),
      width: widths[index]!,
      lines: (row) => broken(row[column]!, widths[index]!),
    }))
  })
}

/** Widths that add up to no more than `room`: the widest gives first, down to `least`, and below that where it must. */
function narrowed(natural: readonly number[], least: readonly number[], room: number): number[] {
  const widths = [...natural]
  for (const floor of [least, least.map(() => 1)])
    for (let over = widths.reduce((sum, each) => sum + each, 0) - room; over > 0; over--) {
      const givers = widths.filter((each, index) => each > floor[index]!)
      if (givers.length === 0) break
      const widest = Math.max(...givers)
      widths[widths.findIndex((each, index) => each === widest && each > floor[index]!)]!--
    }
  return widths
}

/** Lines of a cell; a word that is longer than a line goes on in the next one. */
const broken = (text: string, width: number): string[] =>
  paragraph(text, width)
    .split('\n')
    .flatMap((line) => (line.length <= width ? [line] : line.match(new RegExp(`.{1,${width}}`, 'gu'))!))
