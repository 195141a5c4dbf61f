/** The place in the scenario that something is said of: it opens the fields there. */
import type { Desk } from '../desk/desk.js'

export function PathButton({ desk, path }: { desk: Desk; path: string }) {
  return (
    <button type="button" class="quiet path" onClick={() => openAt(desk, path)}>
      {path}
    </button>
  )
}

/** Opens the fields of the part that a path leads to. */
function openAt(desk: Desk, path: string): void {
  const [room = '', name] = path.split('.')
  const isEntry = ['line', 'cases', 'arrivals', 'crew'].includes(room) && name !== undefined
  desk.chosen.value = isEntry ? `${room}.${name}` : ['target', 'title', 'display'].includes(room) ? '' : room
}
