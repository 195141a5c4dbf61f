/** What is asked of the crew: stops to put right, and posts to stand at. */
import type { Call } from '../scenario/calls.js'

/** A stop that needs somebody. Each piece owns one and uses it again, for it has one stop at a time. */
export interface Task {
  /** The piece that stands. */
  readonly place: string
  skill: Call
  /** Planned work: what it is, and the crew that does it, whatever else its people do; null: a stop, for whoever has the skill. */
  readonly planned: { does: string; crew: string } | null
  /** Time that the work takes once somebody is there, s; drawn by the piece. */
  duration: number
  /** Somebody has come and begins. */
  begin(): void
  /** The work is done. */
  done(): void
  /** It waits, and all who could come are on a break; told each time that this is seen. */
  waitsOutBreak(): void
}

/** Where people of a standing duty are when they are free. */
export interface Post {
  /** Somebody stands there from now, or nobody does. */
  manned(isManned: boolean): void
}

/** Whoever sends people to tasks. */
export interface Helpers {
  /** Somebody is needed. */
  call(task: Task): void
  /** A break begins or ends: for the crew `name`, or, for null, for all who have no breaks of their own. */
  turnBreak(begins: boolean, name: string | null): void
}
