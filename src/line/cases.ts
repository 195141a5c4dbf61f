/** The pool of cases: attributes in typed arrays, addressed by a small number that is used again after the exit. */
import type { Clock } from '../engine/clock.js'
import { Ring } from '../engine/ring.js'
import type { Sizes } from './sizes.js'

/** Number of a case in the pool. */
export type CaseIndex = number

export class Cases {
  /** Which kind of case, by its place in the scenario. */
  kind = new Uint16Array(256)
  /** Its outside length along the travel, m, and the tape that one head draws for it, m off the roll. */
  length = new Float64Array(256)
  strip = new Float64Array(256)
  /** Its outside width and height, m; kept only where the sizes of a kind vary. */
  width = new Float64Array(256)
  height = new Float64Array(256)
  /** Its running number in order of arrival, from 1. */
  number = new Uint32Array(256)
  /** When it was first offered to the line, s. */
  arrivedAt = new Float64Array(256)
  /** When it came to the place where it is now, s. */
  enteredAt = new Float64Array(256)
  /** Tape laid on it so far, m off the roll. */
  tape = new Float64Array(256)
  /** 1 for a case that a head left without its strip, or whose strip is spoilt. */
  unsealed = new Uint8Array(256)
  /** 1 for a case that the last inspection rejected. */
  rejected = new Uint8Array(256)
  /** Cases that are somewhere between arrival and exit. */
  inUse = 0
  private readonly free = new Ring(256)
  private made = 0
  private arrived = 0

  constructor(
    private readonly clock: Clock,
    readonly sizes: Sizes,
  ) {}

  reset(): void {
    this.free.clear()
    this.inUse = 0
    this.made = 0
    this.arrived = 0
  }

  /** A case of `kind` that arrives now. */
  create(kind: number): CaseIndex {
    const { now } = this.clock
    const index = this.free.length > 0 ? this.free.shift() : this.made++
    if (index === this.kind.length) this.grow()
    this.kind[index] = kind
    this.sizes.give(this, index, kind)
    this.number[index] = ++this.arrived
    this.arrivedAt[index] = now
    this.enteredAt[index] = now
    this.tape[index] = 0
    this.unsealed[index] = 0
    this.rejected[index] = 0
    this.inUse++
    return index
  }

  /** The case has left for good; its number may be used again. */
  remove(index: CaseIndex): void {
    this.free.push(index)
    this.inUse--
  }

  private grow(): void {
    const size = this.kind.length * 2
    const wider = <T extends Uint8Array | Uint16Array | Uint32Array | Float64Array>(old: T, made: T): T => {
      made.set(old as never)
      return made
    }
    this.kind = wider(this.kind, new Uint16Array(size))
    this.length = wider(this.length, new Float64Array(size))
    this.strip = wider(this.strip, new Float64Array(size))
    this.width = wider(this.width, new Float64Array(size))
    this.height = wider(this.height, new Float64Array(size))
    this.number = wider(this.number, new Uint32Array(size))
    this.arrivedAt = wider(this.arrivedAt, new Float64Array(size))
    this.enteredAt = wider(this.enteredAt, new Float64Array(size))
    this.tape = wider(this.tape, new Float64Array(size))
    this.unsealed = wider(this.unsealed, new Uint8Array(size))
    this.rejected = wider(this.rejected, new Uint8Array(size))
  }
}
