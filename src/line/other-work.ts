/** Other work of a crew: when it is due, and what of it waits until somebody of the crew is free. */
import { type Actor, never } from '../engine/clock.js'
import type { Draw } from '../engine/draw.js'
import { unset } from '../engine/unset.js'
import type { OtherWorkKind } from '../scenario/other-work.js'
import type { Floor } from './floor.js'

export class OtherWork implements Actor {
  readonly label: string
  readonly does: string
  readonly canBeLeft: boolean
  private readonly slot: number
  private readonly every: Draw
  private readonly takes: Draw
  /** What each piece that is due has left, the one that is due longest first, s. */
  private readonly waiting: number[] = []
  /** When the next piece is due, s; while the crew is on a break, how long after it. */
  private dueAt = unset
  private isPaused = false

  /** `number`: its place among the kinds of other work of its crew, from 1. */
  constructor(
    private readonly floor: Floor,
    /** Who does it. */
    private readonly crew: string,
    number: number,
    { does, every, takes, canBeLeft }: OtherWorkKind,
    /** A piece is due: somebody who is free begins with it. */
    private readonly isDue: (work: OtherWork) => void,
  ) {
    this.label = `crew.${crew}`
    this.does = does
    this.canBeLeft = canBeLeft
    this.every = floor.draws(this.label, `time between other work ${number}`, every)
    this.takes = floor.draws(this.label, `other work ${number}`, takes)
    this.slot = floor.clock.add(this)
  }

  reset(): void {
    this.waiting.length = 0
    this.isPaused = false
    this.next()
  }

  act(): void {
    const takes = this.takes.draw()
    this.waiting.push(takes)
    this.floor.observer?.otherWork('other-work-due', this.crew, null, this.does, takes)
    this.next()
    this.isDue(this)
  }

  private next(): void {
    this.due(this.floor.clock.now + this.every.draw())
  }

  private due(time: number): void {
    this.dueAt = time
    this.floor.clock.set(this.slot, time)
  }

  /** The crew goes on a break or comes back: the time between counts while they are there. */
  turnBreak(begins: boolean): void {
    if (begins === this.isPaused) return
    this.isPaused = begins
    const { now } = this.floor.clock
    if (begins) {
      this.dueAt -= now
      this.floor.clock.set(this.slot, never)
    } else this.due(now + this.dueAt)
  }

  /** Takes the piece that is due longest, if one is; what is left of it, s, or null. */
  take(): number | null {
    return this.waiting.shift() ?? null
  }

  /** It was left with `rest` s of it to do: it comes first again. */
  putBack(rest: number): void {
    this.waiting.unshift(rest)
  }

  get isWaiting(): boolean {
    return this.waiting.length > 0
  }

  /** What is due and has not been begun, or was left, s. */
  get waits(): number {
    return this.waiting.reduce((sum, each) => sum + each, 0)
  }
}
