/** Designs that are kept by name: side by side on the same random numbers, taken up again, dropped. */
import { useState } from 'preact/hooks'
import { counted } from '../../../report/format.js'
import { pinName } from '../../pins.js'
import type { Desk } from '../desk/desk.js'
import { keep } from '../desk/kept.js'
import { KeptTable } from './kept-table.js'

export function Kept({ desk }: { desk: Desk }) {
  const [name, setName] = useState('')
  const [told, tell] = useState('')
  const pins = desk.pins.value
  return (
    <>
      <form
        class="keep"
        onSubmit={(event) => {
          event.preventDefault()
          tell(keep(desk, name))
          setName('')
        }}
      >
        <label>
          Name of this design{' '}
          <input
            type="text"
            value={name}
            maxLength={36}
            placeholder={pinName(pins, '')}
            onInput={({ currentTarget }) => setName(currentTarget.value)}
          />
        </label>
        <button type="submit">Keep this</button>
        {pins.length > 0 ? (
          <button type="button" onClick={() => desk.askPins()}>
            Compare what is kept
          </button>
        ) : null}
      </form>
      <p class="note" role="status">
        {desk.pinFault.value || told}
      </p>
      {pins.length > 0 ? (
        <>
          <KeptTable desk={desk} pins={pins} />
          <p class="note">{comparedOf(desk)}</p>
        </>
      ) : (
        <p class="note">Nothing is kept yet. A kept design can be opened again, and compared with others.</p>
      )}
    </>
  )
}

/** On how many shifts the table rests, and whether more are coming. */
function comparedOf({ pinned }: Desk): string {
  if (!pinned.value) return ''
  const { compared, isDone } = pinned.value
  return `${counted(compared.made.shifts, 'simulated shift')} of each, on the same random numbers${isDone ? '' : '; more are coming'}.`
}
