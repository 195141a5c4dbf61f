/** Which part of the scenario the fields are of: the pieces of the line in the order of travel, then what is for all of it. */
import type { Desk } from '../desk/desk.js'
import { type Part, roomNames } from './parts.js'

/** Entries of a room that have a button each; more stand in a list. */
const mostButtons = 8

interface ChooserProps {
  desk: Desk
  parts: readonly Part[]
  /** Path of the part that is open. */
  chosen: string
}

export function Chooser({ desk, parts, chosen }: ChooserProps) {
  const rooms = [...new Set(parts.map(({ room }) => room))]
  return (
    <nav class="chooser" aria-label="Parts of the line">
      {[rooms.filter((room) => room === 'line'), rooms.filter((room) => room !== 'line')].map((all) => (
        <span class="rooms" key={all[0]}>
          {all.map((room) => (
            <Room
              key={room}
              desk={desk}
              room={room}
              chosen={chosen}
              parts={parts.filter((part) => part.room === room)}
            />
          ))}
        </span>
      ))}
    </nav>
  )
}

function Room({ desk, room, parts, chosen }: ChooserProps & { room: string }) {
  if (room !== 'line' && parts.length > mostButtons)
    return (
      <label class="room">
        <span class="room-name">{roomNames[room]}</span>
        <select
          value={chosen}
          onChange={({ currentTarget }) => {
            desk.chosen.value = currentTarget.value
          }}
        >
          <option value="">choose …</option>
          {parts.map(({ path, name }) => (
            <option key={path} value={path}>
              {name}
            </option>
          ))}
        </select>
      </label>
    )
  const isGroup = parts.some(({ path }) => path !== room)
  return (
    <span class="room">
      {isGroup ? <span class="room-name">{roomNames[room]}</span> : null}
      {parts.map(({ path, name }) => (
        <button
          type="button"
          key={path}
          class="part"
          aria-pressed={path === chosen}
          onClick={() => {
            desk.chosen.value = path
          }}
        >
          {name}
        </button>
      ))}
    </span>
  )
}
