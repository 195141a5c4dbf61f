/** What can be done with a piece, a kind of case, a place of arrival or a crew as a whole: moved, put twice side by side, followed by another, taken out. */

import type { ComponentChildren } from 'preact'
import { useState } from 'preact/hooks'
import { addLike, type Room, removeEntry } from '../../draft/entries.js'
import { addNewPiece, removePiece } from '../../draft/line.js'
import { newKinds, newPieces } from '../../draft/new-pieces.js'
import type { Desk } from '../desk/desk.js'
import { type Act, act, beside, downstream, upstream } from '../desk/edits.js'
import { Ruled } from '../prose.js'

/** What the buttons act on. */
interface On {
  desk: Desk
  room: Room | 'line'
  name: string
}

interface ActButtonProps extends On {
  words: string
  does: Act
  isOff?: boolean
  /** It is there again once it was used; who used another goes on at the part that is open then. */
  isLasting?: boolean
}

function ActButton({ desk, room, name, words, does, isOff = false, isLasting = false }: ActButtonProps) {
  return (
    <button
      type="button"
      disabled={isOff}
      onClick={() => {
        act(desk, room, name, does)
        if (!isLasting) focusChosen()
      }}
    >
      {words}
    </button>
  )
}

/** Puts the keys onto the part that is open, once the page shows it; on a narrow screen onto the list of parts. */
function focusChosen(): void {
  setTimeout(() => {
    const chosen = [...document.querySelectorAll<HTMLElement>('.part[aria-pressed=true], .chooser select')]
    chosen.find((each) => each.offsetParent !== null)?.focus()
  })
}

/** The buttons, and why the last edit of what they act on was refused. */
function Acts({ desk, room, name, words, children }: On & { words: string; children: ComponentChildren }) {
  const refused = desk.refused.value
  return (
    <fieldset class="acts">
      <legend class="unseen">{words}</legend>
      {children}
      {refused?.of === `${room}.${name}` ? (
        <p class="wrong">
          <Ruled {...refused} />
        </p>
      ) : null}
    </fieldset>
  )
}

export function PieceActs({ desk, piece, pieces }: { desk: Desk; piece: string; pieces: readonly string[] }) {
  const [kind, choose] = useState<(typeof newKinds)[number]>('conveyor')
  const on: On = { desk, room: 'line', name: piece }
  const at = pieces.indexOf(piece)
  const isLast = at < 0 || at === pieces.length - 1
  return (
    <Acts {...on} words={`${piece} in the line`}>
      <ActButton {...on} words="Move upstream" does={upstream} isOff={at <= 0} isLasting={true} />
      <ActButton {...on} words="Move downstream" does={downstream} isOff={isLast} isLasting={true} />
      <ActButton {...on} words="Another beside it" does={beside} isLasting={true} />
      <ActButton {...on} words="Remove" does={removePiece} isOff={pieces.length < 2} />
      <span class="add">
        <label>
          Add after it{' '}
          <select value={kind} onChange={({ currentTarget }) => choose(currentTarget.value as typeof kind)}>
            {newKinds.map((each) => (
              <option key={each} value={each} title={newPieces[each].about}>
                {newPieces[each].name}
              </option>
            ))}
          </select>
        </label>
        <ActButton {...on} words="Add" does={(text) => addNewPiece(text, kind, piece)} />
      </span>
    </Acts>
  )
}

/** What one more is called. */
const another: Readonly<Record<Room, string>> = {
  cases: 'Add a case like it',
  arrivals: 'Add arrivals like these',
  crew: 'Add a crew like it',
}

export function EntryActs({ count, ...on }: On & { room: Room; count: number }) {
  const { room, name } = on
  return (
    <Acts {...on} words={name}>
      <ActButton {...on} words={another[room]} does={(text) => addLike(text, room, name)} />
      <ActButton {...on} words="Remove" does={(text) => removeEntry(text, room, name)} isOff={count < 2} />
    </Acts>
  )
}
