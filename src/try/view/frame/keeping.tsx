/** Keeps the page's state in the browser as it changes, and says what came of it: kept since when, not kept and why, or another page has kept something else. */
import { useSignal, useSignalEffect } from '@preact/signals'
import { useEffect, useState } from 'preact/hooks'
import type { Desk } from '../desk/desk.js'
import type { Kept, Saved, Store } from '../desk/store.js'

/** After the last change it is kept, ms. */
const soon = 400

interface KeepingProps {
  desk: Desk
  store: Store
  /** What the page began with, where that had been kept. */
  kept: Kept | null
}

export function Keeping({ desk, store, kept }: KeepingProps) {
  const state = useSignal<Saved>(store.state)
  const save = (isForced = false) => {
    state.value = store.save(desk.line, doneOf(desk), isForced)
  }
  useSignalEffect(() => {
    desk.history.value
    desk.pins.value
    const timer = setTimeout(() => save(), soon)
    return () => clearTimeout(timer)
  })
  useEffect(() => {
    const end = store.watch(() => {
      state.value = store.state
    })
    const leave = () => save()
    addEventListener('pagehide', leave)
    return () => {
      end()
      removeEventListener('pagehide', leave)
      leave()
    }
  }, [])
  if (state.value === 'saved') return kept && <Restored desk={desk} kept={kept} />
  return (
    <div class="cautions" role="status">
      <NotKept desk={desk} store={store} state={state.value} save={save} />
    </div>
  )
}

const doneOf = ({ history, pins }: Desk) => ({ history: history.peek(), pins: pins.peek() })

interface NotKeptProps extends Pick<KeepingProps, 'desk' | 'store'> {
  state: Exclude<Saved, 'saved'>
  save: (isForced: boolean) => void
}

/** Why nothing is kept, and what can be done. */
function NotKept({ desk, store, state, save }: NotKeptProps) {
  const takeTheirs = () => {
    const theirs = store.read()
    if (theirs) {
      desk.pins.value = theirs.pins
      desk.turn(theirs.history)
      store.begin(doneOf(desk))
    }
    save(!theirs)
  }
  switch (state) {
    case 'none':
      return <p>This browser keeps nothing for the page: save the file before you close it.</p>
    case 'full':
      return (
        <p>
          The browser's storage is full, so what is changed here is not kept: save the file before you close
          the page.{' '}
          <button
            type="button"
            onClick={() => {
              store.forgetOthers()
              save(true)
            }}
          >
            Drop what is kept of other lines
          </button>
        </p>
      )
    case 'other':
      return (
        <p>
          Another page with this line has kept its own changes. What is changed here is not kept.{' '}
          <button type="button" onClick={() => save(true)}>
            Keep what is here
          </button>{' '}
          <button type="button" onClick={takeTheirs}>
            Take what is there
          </button>
        </p>
      )
  }
}

/** Says in one line that a page goes on where somebody left it, with the way back. */
function Restored({ desk, kept }: { desk: Desk; kept: Kept }) {
  const [isClosed, setClosed] = useState(
    kept.history.present.text === desk.line.text && kept.pins.length === 0,
  )
  if (isClosed) return null
  return (
    <p class="note restored" role="status">
      Your changes{kept.at > 0 ? ` of ${clockOf(new Date(kept.at), new Date())}` : ''} were kept.{' '}
      <button
        type="button"
        onClick={() => {
          desk.take(desk.line.text, 'as it came')
          setClosed(true)
        }}
      >
        Start again from the file
      </button>{' '}
      <button type="button" onClick={() => setClosed(true)}>
        Close
      </button>
    </p>
  )
}

/** The time of a day, with the day where that is not today. */
function clockOf(at: Date, now: Date): string {
  const day = at.toDateString() === now.toDateString() ? {} : ({ day: 'numeric', month: 'short' } as const)
  return at.toLocaleString('en-GB', { ...day, hour: '2-digit', minute: '2-digit' })
}
