/** The cells of tables as data: each renderer prints them, in the units of the reader, and none reads a text again. */

import type { Amount, Figure } from '../catalogue/figure.js'
import { amountText, type Display, nothing } from '../catalogue/printed-units.js'
import { briefly } from '../catalogue/unit-name.js'
import { figureParts, type Parts } from './format.js'

/** A dotted path of a key, which may be broken after its dots. */
export interface Path {
  path: string
}

/** What only the reader can fill in. */
interface ToFill {
  toFill: string
}

/**
 * A cell: words as they stand; a figure or an amount, of which the heads say whether it is of 1000 cases; figures printed
 * already, in parts; where nothing is known, no value.
 */
export type Cell = string | Figure | Amount | Parts | Path | ToFill | null | undefined

/** Words stand to the left and are broken anywhere; figures stand to the right and are broken between their parts alone. */
export interface Column {
  title: string
  kind: 'words' | 'figures'
}

/** Columns of words with these titles. */
export const words = (...titles: readonly string[]): Column[] =>
  titles.map((title) => ({ title, kind: 'words' }))

/** Columns of figures with these titles. */
export const figures = (...titles: readonly string[]): Column[] =>
  titles.map((title) => ({ title, kind: 'figures' }))

/** What is printed of a cell, in parts between which a line of figures may end. */
export function cellParts(cell: Cell, display: Display): Parts {
  if (cell === null || cell === undefined) return [nothing]
  if (typeof cell === 'string') return [cell]
  if ('mean' in cell) return figureParts(briefly(cell), display)
  if ('value' in cell) return [amountText(cell, display)]
  if ('path' in cell) return [cell.path]
  if ('toFill' in cell) return [`To fill in: ${cell.toFill}`]
  return cell
}

/** What is printed of a cell, in one line. */
export const cellText = (cell: Cell, display: Display): string => cellParts(cell, display).join(' ')

/** Does a row say anything beside its head? */
export const saysSomething = ([, ...cells]: readonly Cell[]): boolean => cells.some((cell) => cell !== '')
