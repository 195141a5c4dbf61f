/** The exit: counts the good cases that leave the line and how long they were in it. */
import { Observations } from '../engine/tally.js'
import type { CaseIndex } from './cases.js'
import type { Taker } from './equipment.js'
import type { Floor } from './floor.js'

export class Exit implements Taker {
  /** Good cases out. */
  out = 0
  /** Tape on them, m off the roll. */
  tape = 0
  readonly timeInSystem = new Observations()

  constructor(private readonly floor: Floor) {}

  reset(): void {
    this.out = 0
    this.tape = 0
    this.timeInSystem.reset()
  }

  offer(now: number, item: CaseIndex): boolean {
    const { cases } = this.floor
    this.out++
    this.tape += cases.tape[item]!
    this.timeInSystem.add(now - cases.arrivedAt[item]!)
    cases.remove(item)
    return true
  }
}
