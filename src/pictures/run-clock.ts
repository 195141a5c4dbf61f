/** The time in which a piece moves: it stands still while the belts do. */
import type { StateKey } from '../catalogue/states.js'
import { countBefore } from './steps.js'

/** States in which belts run; accumulating conveyors move while they are blocked too. */
const moving: ReadonlySet<StateKey> = new Set<StateKey>(['working', 'waiting', 'size-being-set'])

export class RunClock {
  /** Begin and end of each standstill, s, and the time stood before it. */
  private readonly stands: [begin: number, end: number, before: number][] = []

  constructor(states: readonly (readonly [number, StateKey])[], until: number, isAccumulating: boolean) {
    let stood = 0
    for (const [index, [begin, state]] of states.entries()) {
      if (moving.has(state) || (isAccumulating && state === 'blocked')) continue
      const end = states[index + 1]?.[0] ?? until
      this.stands.push([begin, end, stood])
      stood += end - begin
    }
  }

  /** How many standstills there are of which `isBefore` is true: those that come first. */
  private countOf(isBefore: (stand: readonly [number, number, number]) => boolean): number {
    return countBefore(this.stands.length, (place) => isBefore(this.stands[place]!))
  }

  /** Time run at the instant `time`, s. */
  runAt(time: number): number {
    const count = this.countOf(([begin]) => begin < time)
    if (count === 0) return time
    const [begin, end, before] = this.stands[count - 1]!
    return Math.min(time, begin) - before + Math.max(0, time - end)
  }

  /** The first instant at which it has run `run` seconds. */
  whenRun(run: number): number {
    const count = this.countOf(([begin, , before]) => begin - before < run)
    if (count === 0) return run
    const [begin, end, before] = this.stands[count - 1]!
    return run + before + end - begin
  }

  /** Instants in (from, to) at which it stops or starts, in order. */
  turns(from: number, to: number): number[] {
    const turns: number[] = []
    for (let index = this.countOf(([, end]) => end <= from); index < this.stands.length; index++) {
      const [begin, end] = this.stands[index]!
      if (begin >= to) break
      if (begin > from) turns.push(begin)
      if (end > from && end < to) turns.push(end)
    }
    return turns
  }
}
