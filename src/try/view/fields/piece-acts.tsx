/** What can be done with a piece as a whole: moved along the line, put twice side by side, taken out, followed by another. */
import { useSignal } from '@preact/signals'
import { newKinds, newPieces } from '../../draft/new-pieces.js'
import type { Desk } from '../desk/desk.js'
import { type Act, act } from '../desk/edits.js'
import { focusChosen } from './focus-chosen.js'
import { RefusedEdit } from './refused-edit.js'

export function PieceActs({ desk, piece, pieces }: { desk: Desk; piece: string; pieces: readonly string[] }) {
  const kind = useSignal<(typeof newKinds)[number]>('conveyor')
  const at = pieces.indexOf(piece)
  const done = (what: Act) => {
    act(desk, piece, what)
    if (what.what === 'add' || what.what === 'remove') focusChosen()
  }
  const button = (words: string, what: Act, isOff = false) => (
    <button type="button" disabled={isOff} onClick={() => done(what)}>
      {words}
    </button>
  )
  return (
    <fieldset class="acts">
      <legend class="unseen">{piece} in the line</legend>
      {button('Move upstream', { what: 'move', by: -1 }, at <= 0)}
      {button('Move downstream', { what: 'move', by: 1 }, at < 0 || at === pieces.length - 1)}
      {button('Another beside it', { what: 'beside' })}
      {button('Remove', { what: 'remove' }, pieces.length < 2)}
      <span class="add">
        <label>
          Add after it{' '}
          <select
            value={kind.value}
            onChange={({ currentTarget }) => {
              kind.value = currentTarget.value as typeof kind.value
            }}
          >
            {newKinds.map((each) => (
              <option key={each} value={each} title={newPieces[each].about}>
                {newPieces[each].name}
              </option>
            ))}
          </select>
        </label>
        {button('Add', { what: 'add', kind: kind.value })}
      </span>
      <RefusedEdit desk={desk} path={`line.${piece}`} />
    </fieldset>
  )
}
