/** Why the last edit of a piece or an entry was refused, and what to do instead. */
import type { Desk } from '../desk/desk.js'
import { Prose } from '../prose.js'

/** `path`: of what the buttons beside it act on; nothing where the last edit was of something else, or was done. */
export function RefusedEdit({ desk, path }: { desk: Desk; path: string }) {
  const refused = desk.refused.value
  if (refused?.of !== path) return null
  return (
    <p class="wrong">
      <Prose text={refused.rule} />. Fix: <Prose text={refused.fix} />
    </p>
  )
}
