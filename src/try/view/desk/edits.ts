/** What people do to the line of the page: values, pieces, designs that are kept. */
import type { Edited } from '../../draft/edited.js'
import { addLike, addToList, type Room, removeEntry } from '../../draft/entries.js'
import { addNewPiece, movePiece, pieceNames, putSideBySide, removePiece } from '../../draft/line.js'
import type { newKinds } from '../../draft/new-pieces.js'
import { setValue, unsetValue } from '../../draft/values.js'
import { treeOf } from '../../draft/yaml-text.js'
import { setsIn, withSets } from '../../fix-sets.js'
import type { Desk } from './desk.js'

/** Writes a value as YAML; null takes it out, back to its default. */
export function write(desk: Desk, path: string, value: string | null): void {
  desk.whenTyped(path, () =>
    desk.edit(path, (text) => (value === null ? unsetValue(text, path) : setValue(text, path, value))),
  )
}

/** Makes the change that a fix names. */
export function mend(desk: Desk, fix: string): void {
  if (desk.edit('fix', (text) => withSets(text, setsIn(fix))) !== null) desk.turned.value++
}

/** What can be done with a piece. */
export type Act =
  | { what: 'move'; by: -1 | 1 }
  | { what: 'beside' }
  | { what: 'remove' }
  | { what: 'add'; kind: (typeof newKinds)[number] }

/** Does it, and opens the fields of the piece that it leaves. */
export function act(desk: Desk, piece: string, asked: Act): void {
  desk.settle()
  const pieces = pieceNames(desk.tree.value ?? {})
  const at = pieces.indexOf(piece)
  const name = desk.edit(`line.${piece}`, (text) => acted(text, piece, asked, pieces))
  if (name === null) return
  desk.turned.value++
  if (asked.what === 'add') desk.chosen.value = `line.${name}`
  if (asked.what === 'remove') desk.chosen.value = `line.${pieces[at - 1] ?? pieces[at + 1]}`
}

function acted(text: string, piece: string, asked: Act, pieces: readonly string[]): Edited {
  const at = pieces.indexOf(piece)
  switch (asked.what) {
    case 'move':
      // up: behind the one before the one before it
      return movePiece(text, piece, pieces[asked.by < 0 ? at - 2 : at + 1] ?? null)
    case 'beside':
      return putSideBySide(text, piece, alike(text, piece) + 1)
    case 'remove':
      return removePiece(text, piece)
    case 'add':
      return addNewPiece(text, asked.kind, piece)
  }
}

/** Adds one more like an entry that has a name, and opens its fields. */
export function addEntry(desk: Desk, room: Room, name: string): void {
  const made = desk.edit(`${room}.${name}`, (text) => addLike(text, room, name))
  if (made === null) return
  desk.turned.value++
  desk.chosen.value = `${room}.${made}`
}

/** Takes an entry out, and opens the fields of the one beside it. */
export function dropEntry(desk: Desk, room: Room, name: string): void {
  const names = Object.keys(Object(treeOf(desk.text.value)?.[room]))
  const at = names.indexOf(name)
  if (desk.edit(`${room}.${name}`, (text) => removeEntry(text, room, name)) === null) return
  desk.turned.value++
  desk.chosen.value = `${room}.${names[at - 1] ?? names[at + 1]}`
}

/** Puts one more entry behind a list. */
export function lengthen(desk: Desk, path: string): void {
  if (desk.edit(path, (text) => addToList(text, path)) !== null) desk.turned.value++
}

/** How many of a piece stand side by side. */
function alike(text: string, piece: string): number {
  const line = Object(treeOf(text)?.line)
  const count = Number(Object(line[piece])['side-by-side'])
  return Number.isInteger(count) && count > 1 ? count : 1
}
