/** The exit: counts the good cases that leave the line and how long they were in it. */

import { Observations } from '../engine/tally.js'
import { unset } from '../engine/unset.js'
import type { CaseIndex } from './cases.js'
import type { Floor } from './floor.js'
import type { Outlet } from './handshake.js'
import type { Tail } from './tail.js'

export class Exit implements Outlet {
  readonly takesWhole = true
  /** Good cases out. */
  out = 0
  /** Tape on them, m off the roll. */
  tape = unset
  /** Unsealed cases that nobody caught: out of the line, and not good. */
  escaped = 0
  /** Cases that an inspection rejected: out of the line, and not good. */
  rejected = 0
  readonly timeInSystem = new Observations()

  constructor(private readonly floor: Floor) {}

  reset(): void {
    this.out = 0
    this.tape = 0
    this.escaped = 0
    this.rejected = 0
    this.timeInSystem.reset()
  }

  offer(item: CaseIndex): boolean {
    const { now } = this.floor.clock
    const { cases } = this.floor
    this.floor.observer?.leaves(item)
    if (cases.rejected[item]) this.rejected++
    else if (cases.unsealed[item]) this.escaped++
    else {
      this.out++
      this.tape += cases.tape[item]!
      this.timeInSystem.latest = now - cases.arrivedAt[item]!
      this.timeInSystem.add()
    }
    cases.remove(item)
    return true
  }

  /** It holds nothing and refuses nobody. */
  held(): number {
    return 0
  }

  withdraw(): void {}

  /** Whoever leaves is out of the way. */
  follow(tail: Tail): void {
    tail.through()
  }

  hold(): void {}

  addRoom(): void {}

  isShut(): boolean {
    return false
  }
}
