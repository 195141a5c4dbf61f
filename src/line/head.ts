/** A taping head with its own roll: what it draws, lays, loses and cuts. */
import type { Stream } from '../engine/stream.js'
import type { Measure } from './measure.js'

/** What all heads of a line share about their tape, m. */
export interface TapeFacts {
  roll: number
  lostPerRoll: number
}

/** Rounding of many strips that must not cost one, m. */
const hair = 1e-6

export class Head {
  /** Tape laid on cases, m off the roll. */
  laid = 0
  /** Tape lost in threading and stubs, m. */
  lost = 0
  strips = 0
  changes = 0
  /** Cuts since the blade was serviced. */
  cuts = 0
  private remaining = 0
  private atStart = 0

  constructor(
    readonly name: string,
    /** From the start of the driven belts, m. */
    readonly position: number,
    private readonly tape: TapeFacts,
    /** Draws how much of the first roll is left; null where it starts full. */
    private readonly firstRoll: Stream | null,
  ) {}

  reset(): void {
    const { roll, lostPerRoll } = this.tape
    this.laid = 0
    this.lost = 0
    this.strips = 0
    this.changes = 0
    this.cuts = 0
    this.atStart = this.firstRoll ? lostPerRoll + this.firstRoll.next() * (roll - lostPerRoll) : roll
    this.remaining = this.atStart
  }

  /** Whether the roll can finish a strip that draws `drawn` metres. */
  canClose(drawn: number): boolean {
    return this.remaining - this.tape.lostPerRoll >= drawn - hair
  }

  lay(drawn: number): void {
    this.remaining -= drawn
    this.laid += drawn
    this.strips++
    this.cuts++
  }

  /** Takes the stub off and threads a full roll. */
  changeRoll(): void {
    this.lost += this.remaining
    this.remaining = this.tape.roll
    this.changes++
  }

  /** Tape that has come off rolls less what is accounted for, m: zero but for rounding. */
  imbalance(): number {
    return this.atStart + this.changes * this.tape.roll - this.remaining - this.laid - this.lost
  }

  measures(at: readonly string[], where: string): Measure[] {
    const path = [...at, 'heads', this.name]
    const of = `${where} ${this.name} head`
    return [
      {
        path: [...path, 'tape'],
        label: `Tape used a shift, ${of}`,
        unit: 'm',
        kind: 'mean',
        value: () => this.laid + this.lost,
      },
      {
        path: [...path, 'tape-per-case'],
        label: `Tape a strip, ${of}`,
        unit: 'm/case',
        kind: 'ratio',
        value: () => this.laid,
        over: () => this.strips,
      },
      {
        path: [...path, 'loss'],
        label: `of it lost with the rolls, ${of}`,
        unit: 'm',
        kind: 'mean',
        value: () => this.lost,
      },
      {
        path: [...path, 'rolls'],
        label: `Rolls used a shift, ${of}`,
        unit: 'rolls',
        kind: 'mean',
        value: () => (this.laid + this.lost) / this.tape.roll,
      },
      {
        path: [...path, 'changes'],
        label: `Roll changes a shift, ${of}`,
        unit: 'count',
        kind: 'mean',
        value: () => this.changes,
      },
    ]
  }
}
