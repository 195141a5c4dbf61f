/** What can be done with a kind of case, a place of arrival or a crew as a whole: followed by another like it, taken out. */
import type { Room } from '../../draft/entries.js'
import type { Desk } from '../desk/desk.js'
import { addEntry, dropEntry } from '../desk/edits.js'
import { focusChosen } from './focus-chosen.js'
import { RefusedEdit } from './refused-edit.js'

/** What one more is called. */
const another: Readonly<Record<Room, string>> = {
  cases: 'Add a case like it',
  arrivals: 'Add arrivals like these',
  crew: 'Add a crew like it',
}

/** The room and name of an entry; null of all else. */
export function entryOf(path: string): { room: Room; name: string } | null {
  const dot = path.indexOf('.')
  const room = path.slice(0, Math.max(0, dot))
  return Object.hasOwn(another, room) ? { room: room as Room, name: path.slice(dot + 1) } : null
}

export function EntryActs({
  desk,
  room,
  name,
  count,
}: {
  desk: Desk
  room: Room
  name: string
  count: number
}) {
  const button = (words: string, act: typeof addEntry, isOff = false) => (
    <button
      type="button"
      disabled={isOff}
      onClick={() => {
        act(desk, room, name)
        focusChosen()
      }}
    >
      {words}
    </button>
  )
  return (
    <fieldset class="acts">
      <legend class="unseen">{name}</legend>
      {button(another[room], addEntry)}
      {button('Remove', dropEntry, count < 2)}
      <RefusedEdit desk={desk} path={`${room}.${name}`} />
    </fieldset>
  )
}
