/** Where a piece cannot pass its cases on: which of those after it are the cause, and what may be tried there. */
import { shareIn } from '../../answers/first-screen.js'
import { entriesOf } from '../../catalogue/figure.js'
import { states } from '../../catalogue/states.js'
import { has } from '../../kinds/traits.js'
import { listed, percentText } from '../../report/format.js'
import { exitName } from '../../scenario/routes.js'
import type { RunResult } from './document.js'

type Told = Pick<RunResult, 'equipment' | 'layout'>

/** Pieces on ways that part are starved alike if their shares are no further apart. */
const alike = 0.05

/**
 * The pieces that hold up another one: on each way the first after it that is itself held up for less than half as long; where ways part,
 * those of them that are starved least. None where the exit takes all, or a document of an earlier version tells no ways.
 */
export function heldUpBy(name: string, { equipment, layout }: Told): string[] {
  const ways = new Map(layout?.pieces.map((piece) => [piece.name, piece.next]))
  const least = shareIn(equipment[name]!, 'blocked') / 2
  const met = new Set([name])
  const found: string[] = []
  // met while it is gone through: a set gives what is added meanwhile
  for (const at of met)
    for (const next of ways.get(at) ?? []) {
      if (next === exitName || met.has(next)) continue
      if (shareIn(equipment[next]!, 'blocked') >= least) met.add(next)
      else if (!found.includes(next)) found.push(next)
    }
  const starved = (each: string) => shareIn(equipment[each]!, 'waiting')
  const fewest = Math.min(...found.map(starved))
  return found.filter((each) => starved(each) <= fewest + alike)
}

/** What to try where a piece is blocked for `of` of the shift, by what those that hold it up do in that time; null where none is known. */
export function holdUpText(name: string, of: string, told: Told): string | null {
  const by = heldUpBy(name, told)
  if (by.length === 0) return null
  const isOne = by.length === 1
  const names = listed(by)
  const stopped = Math.max(...by.map((each) => stopsOf(told.equipment[each]!)))
  // no case goes on while it stops, and those behind wait longer than that
  if (stopped >= shareIn(told.equipment[name]!, 'blocked') / 2)
    return `Stops of ${names}, ${percentText(stopped, 2)} of the shift${isOne ? '' : ' at most'}, block ${name} for ${of}. Try more conveyor between them, or fewer and shorter stops.`
  const help = by.some((each) => has(told.equipment[each]!, 'conveys'))
    ? `Try ${isOne ? 'a faster belt there: a longer one does' : 'faster belts there: longer ones do'} not help.`
    : `Try ${isOne ? `a faster ${names}` : 'faster ones'}: more conveyor only evens out what varies.`
  return `Cases leave ${names} too slowly, which blocks ${name} for ${of} of the shift. ${help}`
}

const stopsOf = (piece: RunResult['equipment'][string]): number =>
  entriesOf(piece.states)
    .filter(([state]) => states[state].group === 'stop')
    .reduce((sum, [state]) => sum + shareIn(piece, state), 0)
