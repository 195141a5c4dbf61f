/** Says in one line that a page goes on where somebody left it, with the way back. */
import { useSignal } from '@preact/signals'
import type { Desk } from '../desk/desk.js'
import type { Kept } from '../desk/store.js'

export function Restored({ desk, kept }: { desk: Desk; kept: Kept }) {
  const isClosed = useSignal(kept.history.present.text === desk.line.text && kept.pins.length === 0)
  if (isClosed.value) return null
  const close = () => {
    isClosed.value = true
  }
  return (
    <p class="note restored" role="status">
      Your changes{kept.at > 0 ? ` of ${clockOf(new Date(kept.at), new Date())}` : ''} were kept.{' '}
      <button
        type="button"
        onClick={() => {
          desk.take(desk.line.text, 'as it came')
          close()
        }}
      >
        Start again from the file
      </button>{' '}
      <button type="button" onClick={close}>
        Close
      </button>
    </p>
  )
}

/** The time of a day, with the day where that is not today. */
export function clockOf(at: Date, now: Date): string {
  const day = at.toDateString() === now.toDateString() ? {} : ({ day: 'numeric', month: 'short' } as const)
  return at.toLocaleString('en-GB', { ...day, hour: '2-digit', minute: '2-digit' })
}
