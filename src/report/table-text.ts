/** Tables as text for a terminal: without lines, and going on below where they are too wide. */
import type { Display } from '../catalogue/printed-units.js'
import { printable } from '../scenario/printable.js'
import { cellText } from './cell.js'
import type { Table } from './report.js'
import { paragraph, type TextStyle } from './text.js'

/** How wide columns stand apart, and what stands before the first. */
interface Spacing {
  gap: number
  margin: number
}

/**
 * A table with its title and note. Words stand to the left and are broken into lines, figures stand to the right. Rows that say nothing and room
 * that no line needs are left out.
 */
export function tableText(
  table: Table,
  display: Display,
  { bold, width }: TextStyle,
  { gap, margin }: Spacing,
): string {
  const rows = [
    table.columns.map(({ title }) => title),
    ...table.rows.map((row) => row.map((cell) => cellText(cell, display))),
  ].map((row) => row.map(printable))
  const areWords = table.columns.map(({ kind }) => kind === 'words')
  const groups = columnsThatFit(rows, areWords, gap, width - margin).map((columns) => {
    const broken = rows
      .map((row) => columns.map(({ column, width: room }) => linesOf(row[column]!, room)))
      .filter(([, ...cells]) => cells.some(([first]) => first !== ''))
    const widths = columns.map((_, at) => Math.max(...broken.flatMap((cells) => cells[at]!.map(placesOf))))
    const set = (cells: readonly (readonly string[])[]): string[] =>
      Array.from({ length: Math.max(...cells.map(({ length }) => length)) }, (_, line) => {
        const across = columns.map(({ column }, at) =>
          padded(cells[at]![line] ?? '', widths[at]!, areWords[column]!),
        )
        return (' '.repeat(margin) + across.join(' '.repeat(gap))).trimEnd()
      })
    return broken.flatMap(set).join('\n')
  })
  const note = table.note ? [paragraph(table.note, width)] : []
  return [bold(table.title), ...note, groups.join('\n\n')].join('\n')
}

/** Places of a terminal that a text takes: a mark over a letter none, a letter of a wide script two (Unicode Standard Annex 11, its wide blocks). */
function placesOf(text: string): number {
  let places = 0
  for (const letter of text) places += /\p{M}/u.test(letter) ? 0 : wide.test(letter) ? 2 : 1
  return places
}
const wide =
  /[\u1100-\u115f\u2e80-\ua4cf\ua960-\ua97f\uac00-\ud7a3\uf900-\ufaff\ufe30-\ufe6f\uff01-\uff60\uffe0-\uffe6\u{1f300}-\u{1faff}\u{20000}-\u{3fffd}]/u

function padded(text: string, room: number, isOfWords: boolean): string {
  const rest = ' '.repeat(Math.max(0, room - placesOf(text)))
  return isOfWords ? text + rest : rest + text
}

/** A column as it is set in a group of columns that stand beside each other. */
interface SetColumn {
  column: number
  width: number
}

/** Words are not set narrower than this to have them beside other columns. */
const leastWords = 20

/**
 * Groups of columns, each beginning with the first, that fit into `width` with `gap` between two: columns of words are broken into
 * lines, figures only where one does not fit even alone.
 */
function columnsThatFit(
  rows: readonly (readonly string[])[],
  areWords: readonly boolean[],
  gap: number,
  width: number,
): SetColumn[][] {
  const natural = areWords.map((_, column) => Math.max(...rows.map((row) => placesOf(row[column]!))))
  const first = Math.min(natural[0]!, Math.max(leastWords, Math.floor(width / 2)))
  const least = natural.map((each, column) => {
    if (column === 0) return first
    return areWords[column] ? Math.min(each, leastWords) : each
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
    const of = (widths: readonly number[]) => columns.map((column) => widths[column]!)
    const widths = narrowed(of(natural), of(least), width - gap * (columns.length - 1))
    return columns.map((column, index) => ({ column, width: widths[index]! }))
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
const linesOf = (text: string, width: number): string[] =>
  paragraph(text, width)
    .split('\n')
    .flatMap((line) => (line.length <= width ? [line] : line.match(new RegExp(`.{1,${width}}`, 'gu'))!))
