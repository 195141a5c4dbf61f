/** Which part of the scenario the fields are of: the pieces of the line in the order of travel, then what is for all of it. */

import type { Part } from '../../fields/groups.js'
import type { Desk } from '../desk/desk.js'

interface ChooserProps {
  desk: Desk
  parts: readonly Part[]
  /** Path of the part that is open. */
  chosen: string
}

/** What rooms of several parts are called. */
const roomNames: Readonly<Record<string, string>> = {
  line: 'The line',
  cases: 'Cases',
  arrivals: 'Arrivals',
  crew: 'Crew',
}

/** Parts beside the pieces that have a button each; more stand in a list, and on a narrow screen all do. */
const mostButtons = 16
/** The same of the pieces. */
const mostPieces = 60

export function Chooser({ desk, parts, chosen }: ChooserProps) {
  const pieces = parts.filter(({ room }) => room === 'line')
  const others = parts.filter(({ room }) => room !== 'line')
  if (parts.length === 0) return null
  const rooms = [...new Set(others.map(({ room }) => room))]
  const inRooms = rooms.map((room) => ({ room, all: others.filter((part) => part.room === room) }))
  return (
    <nav class={`chooser${others.length > mostButtons ? ' lots' : ''}`} aria-label="Parts of the line">
      <span class="room">
        <span class="room-name">The line</span>
        {pieces.length > mostPieces ? (
          <Pieces desk={desk} parts={pieces} chosen={chosen} />
        ) : (
          <Buttons desk={desk} parts={pieces} chosen={chosen} />
        )}
      </span>
      <span class="rooms">
        {inRooms.map(({ room, all }) =>
          isNamed(all) ? (
            <span class="room" key={room}>
              <span class="room-name">{roomNames[room]}</span>
              <Buttons desk={desk} parts={all} chosen={chosen} />
            </span>
          ) : null,
        )}
        <span class="room">
          <span class="room-name">General</span>
          <Buttons
            desk={desk}
            parts={inRooms.flatMap(({ all }) => (isNamed(all) ? [] : all))}
            chosen={chosen}
          />
        </span>
      </span>
      <label class="room list">
        <span class="room-name">All else</span>
        <select
          value={others.some(({ path }) => path === chosen) ? chosen : '…'}
          onChange={({ currentTarget: { value } }) => {
            if (value !== '…') desk.chosen.value = value
          }}
        >
          <option value="…">cases, tape, crew, money …</option>
          {inRooms.map(({ room, all }) =>
            roomNames[room] === undefined ? (
              <Options key={room} parts={all} />
            ) : (
              <optgroup key={room} label={roomNames[room]}>
                <Options parts={all} />
              </optgroup>
            ),
          )}
        </select>
      </label>
    </nav>
  )
}

/** Whether it holds things by name. */
const isNamed = (all: readonly Part[]): boolean => all.some(({ path, room }) => path !== room)

function Buttons({ desk, parts, chosen }: ChooserProps) {
  return (
    <>
      {parts.map(({ path, name }) => (
        <button
          type="button"
          key={path}
          class="part"
          title={name}
          aria-pressed={path === chosen}
          onClick={() => {
            desk.chosen.value = path
          }}
        >
          {name}
        </button>
      ))}
    </>
  )
}

/** Pieces in a list. */
function Pieces({ desk, parts, chosen }: ChooserProps) {
  return (
    <select
      aria-label="Pieces of the line"
      value={parts.some(({ path }) => path === chosen) ? chosen : '…'}
      onChange={({ currentTarget: { value } }) => {
        if (value !== '…') desk.chosen.value = value
      }}
    >
      <option value="…">{parts.length} pieces …</option>
      <Options parts={parts} />
    </select>
  )
}

function Options({ parts }: Pick<ChooserProps, 'parts'>) {
  return (
    <>
      {parts.map(({ path, name }) => (
        <option key={path} value={path}>
          {name}
        </option>
      ))}
    </>
  )
}
