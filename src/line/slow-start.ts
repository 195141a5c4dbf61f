/** A piece that works slower for a while after it stood long: a cold machine, a packer who gets going again. */
import { type Actor, never } from '../engine/clock.js'
import type { SlowStartKeys } from '../scenario/slow-starts.js'
import type { Floor } from './floor.js'

/** The piece. */
interface Place {
  readonly name: string
  readonly frozen: boolean
  /** It works at this share of its speed from now. */
  worksAt(share: number): void
  slowStart: SlowStart | null
}

/** It lasts while the piece does not stand: a short stop interrupts it, one that is long enough begins it anew. It acts before all else that is due. */
export class SlowStart implements Actor {
  readonly label: string
  private readonly slot: number
  /** What is left of it, s, and since when that has run, s; `never` while the piece stands, or works at its whole speed. */
  private left = 0
  private since = never
  private isSlow = false
  /** When the next shift begins, s. */
  private nextShift = never
  /** Shift and run-out, s. */
  private readonly span: number

  constructor(
    private readonly floor: Floor,
    private readonly place: Place,
    private readonly keys: SlowStartKeys,
  ) {
    const { shift } = floor.scenario
    this.label = `line.${place.name}`
    this.span = shift.length + shift['run-out']
    this.slot = floor.clock.add(this)
  }

  /** At the start of a simulation, where the piece works at its whole speed. */
  reset(): void {
    this.left = 0
    this.since = never
    this.isSlow = false
    this.nextShift = never
    if (!this.keys['at-shift-start']) return
    this.nextShift = 0
    this.comesAgain()
    this.begin()
  }

  /** At the end of the simulation no other shift begins. */
  private comesAgain(): void {
    const next = this.nextShift + this.span
    this.nextShift = next < this.floor.end ? next : never
  }

  /** The piece stands from now. */
  stands(): void {
    if (this.since === never) return
    this.left -= this.floor.clock.now - this.since
    this.since = never
    this.plan()
  }

  /** It moves again after `passed` seconds. */
  goesOn(passed: number): void {
    if (passed >= this.keys.after) this.begin()
    else if (this.left > 0) this.since = this.floor.clock.now
    this.plan()
  }

  act(): void {
    const { now } = this.floor.clock
    if (this.nextShift <= now) {
      this.comesAgain()
      this.begin()
      return
    }
    this.left = 0
    this.since = never
    this.turn(false)
    this.plan()
  }

  private begin(): void {
    this.left = this.keys.for
    this.since = this.place.frozen ? never : this.floor.clock.now
    this.turn(true)
    this.plan()
  }

  private turn(isSlow: boolean): void {
    if (isSlow === this.isSlow) return
    this.isSlow = isSlow
    this.floor.observer?.slowStart(this.place.name, isSlow)
    this.place.worksAt(isSlow ? this.keys.at : 1)
  }

  private plan(): void {
    const endsAt = this.since === never ? never : this.since + this.left
    this.floor.clock.set(this.slot, Math.min(endsAt, this.nextShift))
  }
}

/** Of the pieces that have any. */
export const slowStarts = (floor: Floor, pieces: readonly Place[]): SlowStart[] =>
  pieces.flatMap((piece) => {
    const keys = floor.scenario.line[piece.name]!
    if (!('slow-start' in keys) || keys['slow-start'] === undefined) return []
    piece.slowStart = new SlowStart(floor, piece, keys['slow-start'])
    return [piece.slowStart]
  })
