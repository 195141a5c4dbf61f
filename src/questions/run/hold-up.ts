/** Where a piece cannot pass its cases on: which of those after it is the cause, and what may be tried there. */
import { shareIn } from '../../answers/first-screen.js'
import { entriesOf } from '../../catalogue/figure.js'
import { states } from '../../catalogue/states.js'
import { has } from '../../kinds/traits.js'
import { percentText } from '../../report/format.js'
import { exitName } from '../../scenario/routes.js'
import type { RunResult } from './document.js'

type Told = Pick<RunResult, 'equipment' | 'layout'>

/**
 * The piece that holds up another one: the first after it that is itself held up for less than half as long. Null where ways part before it, or a
 * document of an earlier version tells no ways.
 */
export function heldUpBy(name: string, { equipment, layout }: Told): string | null {
  const ways = new Map(layout?.pieces.map((piece) => [piece.name, piece.next]))
  const least = shareIn(equipment[name]!, 'blocked') / 2
  let at = name
  for (let steps = ways.size; steps > 0; steps--) {
    const next = ways.get(at) ?? []
    if (next.length !== 1 || next[0] === exitName) return null
    at = next[0]!
    if (shareIn(equipment[at]!, 'blocked') < least) return at
  }
  return null
}

/** What to try where a piece is blocked for `of` of the shift, by what the piece that holds it up does in that time; null where none is known. */
export function holdUpText(name: string, of: string, told: Told): string | null {
  const by = heldUpBy(name, told)
  if (by === null) return null
  const piece = told.equipment[by]!
  const stops = entriesOf(piece.states).filter(([state]) => states[state].group === 'stop')
  const stopped = stops.reduce((sum, [state]) => sum + shareIn(piece, state), 0)
  // no case goes on while it stops, and those behind wait longer than that
  if (stopped >= shareIn(told.equipment[name]!, 'blocked') / 2)
    return `Stops of ${by}, ${percentText(stopped, 2)} of the shift, block ${name} for ${of}. Try more conveyor between them, or fewer and shorter stops.`
  const help = has(piece, 'conveys')
    ? 'Try a faster belt there: a longer one does not help.'
    : `Try a faster ${by}: more conveyor only evens out what varies.`
  return `Cases leave ${by} too slowly, which blocks ${name} for ${of} of the shift. ${help}`
}
