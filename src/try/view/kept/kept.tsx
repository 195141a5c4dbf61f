/** Designs that are kept by name: side by side on the same random numbers, taken up again, dropped. */
import { useSignal } from '@preact/signals'
import { differenceParts } from '../../../answers/difference.js'
import { figureText } from '../../../report/format.js'
import type { Pin } from '../../study/messages.js'
import type { Desk } from '../desk/desk.js'
import { dropped, keep, renamed } from '../desk/kept.js'

export function Kept({ desk }: { desk: Desk }) {
  const name = useSignal('')
  const pins = desk.pins.value
  const told = useSignal('')
  return (
    <>
      <form
        class="keep"
        onSubmit={(event) => {
          event.preventDefault()
          told.value = keep(desk, name.value)
          name.value = ''
        }}
      >
        <label>
          Name of this design{' '}
          <input
            type="text"
            value={name.value}
            maxLength={36}
            placeholder={`design ${pins.length + 1}`}
            onInput={({ currentTarget }) => {
              name.value = currentTarget.value
            }}
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
        {desk.pinFault.value || told.value}
      </p>
      {pins.length > 0 ? (
        <Table desk={desk} pins={pins} />
      ) : (
        <p class="note">
          Nothing is kept yet. A kept design can be taken up again, and compared with others.
        </p>
      )}
    </>
  )
}

/** Measures that designs are compared by. */
const measures = { throughput: 'Good cases out', 'cost-per-1000': '1000 cases cost' } as const

const less = 'less the line as it came'
const entriesOf = Object.entries as (of: typeof measures) => [keyof typeof measures, string][]

function Table({ desk, pins }: { desk: Desk; pins: readonly Pin[] }) {
  return (
    <div class="wide">
      <table class="as-cards" aria-label="Kept designs">
        <thead>
          <tr>
            <th scope="col">Design</th>
            {Object.entries(measures).flatMap(([measure, label]) => [
              <th scope="col" key={measure}>
                {label}
              </th>,
              <th scope="col" key={`${measure} less`}>
                {less}
              </th>,
            ])}
            <th scope="col">
              <span class="unseen">What to do with it</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {pins.map((pin) => (
            <Row key={pin.name} desk={desk} pin={pin} />
          ))}
        </tbody>
      </table>
    </div>
  )
}

function Row({ desk, pin }: { desk: Desk; pin: Pin }) {
  const compared = desk.pinned.value?.compared
  const design = compared?.variants[pin.name]
  const differences = compared?.differences[pin.name]
  return (
    <tr>
      <th scope="row">
        <input
          type="text"
          class="name"
          aria-label={`Name of ${pin.name}`}
          value={pin.name}
          maxLength={36}
          onChange={({ currentTarget }) => {
            currentTarget.value = renamed(desk, pin, currentTarget.value)
          }}
        />
      </th>
      {entriesOf(measures).flatMap(([measure, label]) => [
        <td key={measure} data-head={label}>
          {design ? figureText(design.measures[measure], compared!.display) : '–'}
        </td>,
        <td key={`${measure} less`} data-head={less}>
          {differences ? differenceParts(differences[measure], compared!.display).join(' ') : '–'}
        </td>,
      ])}
      <td class="words acts-of-row">
        <button type="button" onClick={() => desk.take(pin.text, `kept ${pin.name}`)}>
          Take up<span class="unseen"> {pin.name}</span>
        </button>{' '}
        <button type="button" onClick={() => dropped(desk, pin)}>
          Drop<span class="unseen"> {pin.name}</span>
        </button>
      </td>
    </tr>
  )
}
