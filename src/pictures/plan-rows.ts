/** The rows of a plan: a long line is broken into pieces of a strip, and each row knows its lanes. */
import { has } from '../kinds/traits.js'
import type { Layout, LayoutPiece } from './layout.js'

/** Longest stretch of a line in one row, m, of a line that fits into `mostRows`. */
export const longestRow = 24
const mostRows = 8

/** A row shows the line from `from` to `to`, m. */
export interface Row {
  from: number
  to: number
}

const hair = 1e-9
const isRigid = (piece: LayoutPiece): boolean => !has(piece, 'conveys')

/**
 * Rows of at most 24 m, or an eighth of a line that is longer than eight such. A row ends where it cuts nothing, else where it cuts conveyors
 * only, if there is such a place in its second half; else where it is full.
 */
export function rowsOf({ pieces, length }: Pick<Layout, 'pieces' | 'length'>): Row[] {
  const most = Math.max(longestRow, length / mostRows)
  const rows: Row[] = []
  let from = 0
  while (length - from > most + hair) {
    const to = from + most
    // the rows are much of one length where the line is cut anywhere
    const even = from + (length - from) / Math.ceil((length - from) / most - hair)
    const edges = pieces
      .flatMap(({ x, length: long }) => [x, x + long])
      .filter((x) => x > from + most / 2 && x <= to + hair)
      .sort((a, b) => b - a)
    const cuts = (at: number) => pieces.filter(({ x, length: long }) => x < at - hair && x + long > at + hair)
    const cut =
      edges.find((at) => cuts(at).length === 0) ??
      edges.find((at) => !cuts(at).some(isRigid)) ??
      [even, to].find((at) => !cuts(at).some(isRigid)) ??
      to
    rows.push({ from, to: cut })
    from = cut
  }
  return [...rows, { from, to: Math.max(length, from) }]
}

/** Lane of each piece by name, from 0 at the upper edge: pieces side by side have their middles at different heights. */
export function lanesOf(pieces: readonly LayoutPiece[]): Map<string, number> {
  const middle = ({ y, width }: LayoutPiece) => Math.round((y + width / 2) * 1e6) / 1e6
  const heights = [...new Set(pieces.map(middle))].sort((a, b) => a - b)
  return new Map(pieces.map((piece) => [piece.name, heights.indexOf(middle(piece))]))
}
