/** Keeps the page's state in the browser as it changes, and says where that cannot be, or another page has kept something else. */
import { useSignal, useSignalEffect } from '@preact/signals'
import { useEffect } from 'preact/hooks'
import type { Desk } from '../desk/desk.js'
import type { Saved, Store } from '../desk/store.js'

/** After the last change it is kept, ms. */
const soon = 400

export function Keeping({ desk, store }: { desk: Desk; store: Store }) {
  const state = useSignal<Saved>('saved')
  const save = (isForced = false) => {
    const { line, history, pins } = desk
    state.value = store.save({ line, history: history.peek(), pins: pins.peek() }, isForced)
  }
  const takeTheirs = () => {
    const theirs = store.read()
    if (!theirs) return
    desk.pins.value = theirs.pins
    desk.turn(theirs.history)
    state.value = 'saved'
  }
  useSignalEffect(() => {
    desk.history.value
    desk.pins.value
    const timer = setTimeout(() => save(), soon)
    return () => clearTimeout(timer)
  })
  useEffect(() => {
    const end = store.watch(() => {
      if (store.isOthers) state.value = 'other'
    })
    const leave = () => save()
    addEventListener('pagehide', leave)
    return () => {
      end()
      removeEventListener('pagehide', leave)
    }
  }, [])
  if (state.value === 'saved') return null
  return (
    <div class="cautions" role="status">
      {state.value === 'none' ? (
        <p>This browser keeps nothing for the page: save the file before you close it.</p>
      ) : (
        <p>
          Another page with this line has kept its own changes. What is changed here is not kept.{' '}
          <button type="button" onClick={() => save(true)}>
            Keep what is here
          </button>{' '}
          <button type="button" onClick={takeTheirs}>
            Take what is there
          </button>
        </p>
      )}
    </div>
  )
}
