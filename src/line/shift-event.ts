/** What happens in a shift, as it is told to whoever observes it. */
import type { CauseKey } from '../catalogue/causes.js'
import type { StateKey } from '../catalogue/states.js'

/** What may happen to other work of a crew. */
export type OtherWorkEvent = 'other-work-due' | 'other-work-begins' | 'other-work-left' | 'other-work-done'

/** What may happen, in the words of the trace. */
export type EventName =
  | 'arrives'
  | 'waits'
  | 'queues'
  | 'turned-away'
  | 'taken'
  | 'tail-held'
  | 'tail-let-go'
  | 'on-belts'
  | 'service-begins'
  | 'planned-stop'
  | 'strip-laid'
  | 'passes-unsealed'
  | 'tape-breaks'
  | 'jams'
  | 'freed'
  | 'spoilt'
  | 'strip-spoilt'
  | 'rejected'
  | 'leaves'
  | 'state'
  | 'stops'
  | 'sensor-stops'
  | 'sensor-starts'
  | 'runs-at'
  | 'carries-at'
  | 'slow-start-begins'
  | 'slow-start-ends'
  | 'sets-out'
  | 'work-begins'
  | 'work-done'
  | 'planned-work'
  | 'planned-work-done'
  | OtherWorkEvent
  | 'roll-changed'
  | 'blade-serviced'
  | 'post-manned'
  | 'post-left'
  | 'break-begins'
  | 'break-ends'
  | 'handover-begins'
  | 'handover-ends'
  | 'start-up-ends'
  | 'arrivals-end'

/** One event. A key that says nothing of it is left out. */
export interface ShiftEvent {
  /** Since the start of the shift, s. */
  time: number
  event: EventName
  /** The source or the piece of equipment where it happens; `shift` for the calendar, `crew.NAME` for what they do beside the line. */
  at: string
  /** Running number of the case in order of arrival, from 1. */
  case?: number
  kind?: string
  /** Outside size of a case whose kind varies, m. */
  length?: number
  width?: number
  height?: number
  /** Where a case that is taken was before; the machine that holds its tail. */
  from?: string
  /** The state that a piece is in from now, as results name it. */
  state?: StateKey
  /** Why a piece stops, as results name it. */
  cause?: CauseKey
  /** Kind of a jam, where the piece has several. */
  jam?: string
  /** The conveyor whose sensor stops a piece, and what that has shown for long enough. */
  sensor?: string
  sees?: 'full' | 'clear'
  /** Speed of a drive, or that at which a piece carries what lies on it, 0 where it stands, m/s. */
  speed?: number
  /** Who of the crew. */
  person?: string
  /** The task, or the other or planned work, in the words of `does`. */
  task?: string
  head?: string
  /** Tape drawn for a strip, m off the roll. */
  tape?: number
  /** How long work, service or planned stop takes unless something holds it up, s. */
  lasts?: number
  /** Time from arrival to exit of a case that leaves, s. */
  after?: number
  /** As what a case leaves. */
  as?: 'good' | 'rejected' | 'unsealed'
}
