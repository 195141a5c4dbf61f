/** Pieces of the line in a text: added, taken out, moved along, put side by side. Cases find their way as variants find theirs. */
import { isMap } from '../../scenario/is-map.js'
import { nearest } from '../../scenario/nearest.js'
import type { Override } from '../../scenario/overrides.js'
import { addPiece, type PieceFault, removePieces } from '../../scenario/pieces.js'
import { shown } from '../../scenario/printable.js'
import type { Edited, Refused } from './edited.js'
import { freeName, newPieces } from './new-pieces.js'
import { rewritten } from './rewritten.js'
import { putAt, takeFrom } from './values.js'
import type { Tree } from './yaml-text.js'

/** A change of pieces as the loader makes it. */
const change = (name: string, does: 'add' | 'remove', value: unknown): Override => ({
  ...{ path: `line.${name}`, value, source: '', at: null },
  does,
})

const refusedBy = ({ finding: { rule, fix } }: PieceFault): Refused => ({ rule, fix })

const piecesOf = ({ line }: Tree): Tree => (isMap(line) ? line : {})

/** The names of the pieces of a text, in their order. */
export const pieceNames = (tree: Tree): string[] => Object.keys(piecesOf(tree))

/** The text with a piece of a kind behind `after`; its name comes back with it. */
export function addNewPiece(text: string, kind: keyof typeof newPieces, after: string): Edited {
  const { keys, name: wanted } = newPieces[kind]
  return rewritten(text, (tree) => {
    const name = freeName(wanted, pieceNames(tree))
    const found = addPiece(tree, change(name, 'add', { after, ...structuredClone(keys) }))
    return found ? refusedBy(found) : name
  })
}

/** The text without a piece: what it passed on goes to where it passed it on to. Its prices and its post go too. */
export const removePiece = (text: string, name: string): Edited =>
  rewritten(text, (tree) => {
    const [found] = removePieces(tree, [change(name, 'remove', name)])
    return found ? refusedBy(found) : null
  })

/** The text with a piece further up or down the line: behind `after`, or, where that is null, before all others. */
export const movePiece = (text: string, name: string, after: string | null): Edited =>
  rewritten(text, (tree) => {
    const names = pieceNames(tree)
    const unknown = [name, ...(after === null ? [] : [after])].find((each) => !names.includes(each))
    if (unknown !== undefined)
      return { rule: `\`${shown(unknown)}\` is not a piece of the line`, fix: nearest(unknown, names) }
    if (after === name || names[names.indexOf(name) - 1] === (after ?? undefined)) return null
    const piece = piecesOf(tree)[name]
    if (!isMap(piece) || (piece.to !== undefined && typeof piece.to !== 'string'))
      return {
        rule: `\`${shown(name)}\` sends cases several ways, so it cannot be moved by itself`,
        fix: 'change its `to` in the text',
      }
    return moved(tree, name, piece, after)
  })

/** Takes the piece out and puts it in again; what is said of it elsewhere stays. */
function moved(tree: Tree, name: string, piece: Tree, after: string | null): Refused | null {
  const said = structuredClone({ money: tree.money, crew: tree.crew })
  const [gap] = removePieces(tree, [change(name, 'remove', name)])
  if (gap) return refusedBy(gap)
  const { to: _, 'right-of-way': __, ...keys } = piece
  if (after === null) putFirst(tree, name, keys)
  else {
    const found = addPiece(tree, change(name, 'add', { after, ...keys }))
    if (found) return refusedBy(found)
  }
  for (const [key, value] of Object.entries(said)) if (value !== undefined) tree[key] = value
  return null
}

/** Before all others: sources that brought their cases to the first piece bring them to it. */
function putFirst(tree: Tree, name: string, keys: Tree): void {
  const [first] = pieceNames(tree)
  tree.line = { [name]: keys, ...piecesOf(tree) }
  for (const source of Object.values(isMap(tree.arrivals) ? tree.arrivals : {}))
    if (isMap(source) && source.to === first) source.to = name
}

/** The text with `count` pieces alike in place of one; 1 leaves it alone. */
export const putSideBySide = (text: string, name: string, count: number): Edited =>
  rewritten(text, (tree) => {
    const path = `line.${name}.side-by-side`
    if (count !== 1) return putAt(tree, path, count)
    return takeFrom(tree, `line.${name}.divert`) ?? takeFrom(tree, path)
  })
