/** Which events of a shift a trace shows: those of one case, of some pieces, of a part of the shift. */
import type { EventName, ShiftEvent } from '../../line/shift-event.js'

/** What is to be shown; all that is given must hold. */
export interface TraceChoice {
  /** One case by its number, and the stops of the piece that it is in. */
  case?: number
  /** Pieces of equipment by name; none means all, and the shift and the sources too. */
  equipment: readonly string[]
  /** First and last instant, both included, s since the start of the shift. */
  from: number
  to: number
}

/** A piece stands, and what is done about it. */
const stopEvents: ReadonlySet<EventName> = new Set<EventName>([
  'stops',
  'sensor-stops',
  'sensor-starts',
  'planned-stop',
  'sets-out',
  'work-begins',
  'work-done',
  'planned-work',
  'planned-work-done',
  'roll-changed',
  'blade-serviced',
])

/** Where no case stays any longer. */
const lastEvents: ReadonlySet<EventName> = new Set<EventName>(['leaves', 'spoilt', 'turned-away'])

/**
 * Whether a speed at which a piece carries says something that its state and the speed that is set do not: it goes slower, behind a case that
 * crosses onto a slower piece, or as fast again as it is set.
 */
function speedNews(): (event: ShiftEvent) => boolean {
  const set = new Map<string, number>()
  const slower = new Set<string>()
  return ({ event, at, speed }) => {
    if (event === 'runs-at') set.set(at, speed!)
    if (event !== 'carries-at') return true
    if (speed === 0) return false
    const usual = set.get(at) ?? speed!
    set.set(at, usual)
    if (speed === usual) return slower.delete(at)
    slower.add(at)
    return true
  }
}

/** Says of each event whether it is shown. It must be asked of every event of the shift in order, for it follows the case. */
export function traceFilter(choice: TraceChoice): (event: ShiftEvent) => boolean {
  const pieces = new Set(choice.equipment)
  const isNews = speedNews()
  let inside: string | null = null
  const isOfCase = (event: ShiftEvent): boolean => {
    if (event.case !== choice.case) return event.at === inside && stopEvents.has(event.event)
    if (event.event === 'taken') inside = event.at
    else if (lastEvents.has(event.event)) inside = null
    return true
  }
  return (event) => {
    if (!isNews(event)) return false
    if (choice.case !== undefined && !isOfCase(event)) return false
    if (event.time < choice.from || event.time > choice.to) return false
    return pieces.size === 0 || pieces.has(event.at) || (event.from !== undefined && pieces.has(event.from))
  }
}
