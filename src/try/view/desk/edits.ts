/** What people do to the line of the page: values, and pieces and entries as a whole. */
import type { Edited } from '../../draft/edited.js'
import { addToList, type Room } from '../../draft/entries.js'
import { movePiece, putSideBySide } from '../../draft/line.js'
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

/** An edit elsewhere than in the field that is written in; the name of what it makes, null where it is refused. */
function turn(desk: Desk, by: string, change: (text: string) => Edited): string | null {
  const made = desk.edit(by, change)
  if (made !== null) desk.turned.value++
  return made
}

/** Makes the change that a fix names. */
export const mend = (desk: Desk, fix: string) => turn(desk, 'fix', (text) => withSets(text, setsIn(fix)))

/** Puts one more entry behind a list. */
export const lengthen = (desk: Desk, path: string) => turn(desk, path, (text) => addToList(text, path))

/** What can be done with a piece or another entry that has a name, one of `all` in their order: the text that comes of it. */
export type Act = (text: string, name: string, all: readonly string[]) => Edited

/** Behind the piece before the one before it. */
export const upstream: Act = (text, piece, all) => movePiece(text, piece, all[all.indexOf(piece) - 2] ?? null)

export const downstream: Act = (text, piece, all) =>
  movePiece(text, piece, all[all.indexOf(piece) + 1] ?? null)

/** One more of a piece side by side. */
export const beside: Act = (text, piece) => {
  const count = Number(Object(Object(treeOf(text)?.line)[piece])['side-by-side'])
  return putSideBySide(text, piece, Number.isInteger(count) && count > 1 ? count + 1 : 2)
}

/** Does it, and opens the fields of what it makes; where it takes the entry out, of the one beside that. */
export function act(desk: Desk, room: Room | 'line', name: string, does: Act): void {
  desk.settle()
  const names = () => Object.keys(Object(desk.tree.value?.[room]))
  const before = names()
  const made = turn(desk, `${room}.${name}`, (text) => does(text, name, before))
  if (made === null) return
  const at = before.indexOf(name)
  if (made !== '') desk.chosen.value = `${room}.${made}`
  else if (!names().includes(name)) desk.chosen.value = `${room}.${before[at - 1] ?? before[at + 1]}`
}
