/** A taping head with its own roll and blade: what it draws, lays, loses, spoils and cuts, and what it cannot do. */

import type { HeadKey } from '../../catalogue/of-equipment.js'
import type { Stream } from '../../engine/stream.js'
import { unset } from '../../engine/unset.js'
import type { CaseIndex, Cases } from '../../line/cases.js'
import { headMeasures, type Measure } from '../../line/measure.js'

/** What the heads of a sealer share. Lengths in m off the roll. */
export interface HeadFacts {
  roll: number
  /** They say what tape a strip takes. */
  cases: Cases
  lostPerRoll: number
  /** Tape left at which the head gives its warning; null where it gives none and runs out unnoticed. */
  warning: number | null
  /** Cases that go unsealed until somebody notices. */
  noticedAfter: number
  /** Cuts until the blade is serviced. */
  bladeAfter: number
  /** Chance that the tape breaks, a strip. */
  breakChance: number
}

/** What came of a case that met the head. */
export const Met = { taped: 0, unsealed: 1, needsRoll: 2, needsBlade: 3, tapeBroke: 4 } as const
export type Met = (typeof Met)[keyof typeof Met]

/** Rounding of many strips that must not cost one, m. */
const hair = 1e-6

/** Whether the next strip breaks has not been drawn. */
const undrawn = -1

export class Head {
  /** Tape laid on cases, m off the roll. */
  laid = unset
  /** Tape lost in threading and stubs, m. */
  lost = unset
  /** Tape of strips that broke, m. */
  spoilt = unset
  strips = 0
  changes = 0
  breaks = 0
  /** Cases that passed without a strip because nobody had noticed that the roll was empty. */
  missed = 0
  /** Cuts since the blade was serviced. */
  private cuts = 0
  private missedNow = 0
  private remaining = unset
  private atStart = unset
  /** Tape, m, and cuts of the cases that were foreseen and have not met it yet. */
  private promised = unset
  private cutsPromised = 0
  /** Whether the next strip breaks, 1 or 0; or `undrawn`. */
  private breaksNext = undrawn

  constructor(
    readonly name: string,
    /** From the start of the driven belts, m. */
    readonly position: number,
    private readonly facts: HeadFacts,
    /** Draws how much of the first roll is left; null where it starts full. */
    private readonly firstRoll: Stream | null,
    private readonly tapeBreak: Stream,
  ) {}

  /** A fresh blade, and a first roll that is full or used up by a random part; `countAnew` follows. */
  reset(): void {
    const { roll, lostPerRoll } = this.facts
    this.cuts = 0
    this.missedNow = 0
    this.promised = 0
    this.cutsPromised = 0
    this.breaksNext = undrawn
    this.remaining = this.firstRoll ? lostPerRoll + this.firstRoll.next() * (roll - lostPerRoll) : roll
  }

  /** Counts anew from what is left on the roll; cuts of the blade, and cases that nobody has noticed yet, stay. */
  countAnew(): void {
    this.atStart = this.remaining
    this.laid = 0
    this.lost = 0
    this.spoilt = 0
    this.strips = 0
    this.changes = 0
    this.breaks = 0
    this.missed = 0
  }

  /** Whether the case will get its strip for sure, whatever happens meanwhile: asked once of each, in the order in which they come. */
  foresees(item: CaseIndex): boolean {
    const { facts } = this
    const drawn = facts.cases.strip[item]!
    if (this.cuts + this.cutsPromised >= facts.bladeAfter) return false
    if (this.left - this.promised < drawn) return false
    if (facts.breakChance > 0 && this.tapeBreaks()) return false
    this.breaksNext = undrawn
    this.promised += drawn
    this.cutsPromised++
    return true
  }

  /** A case comes that was foreseen. */
  keepPromise(item: CaseIndex): void {
    const drawn = this.facts.cases.strip[item]!
    this.cutsPromised--
    this.promised = this.cutsPromised === 0 ? 0 : this.promised - drawn
    this.remaining -= drawn
    this.cuts++
    this.laid += drawn
    this.strips++
  }

  /** A case comes. */
  meet(item: CaseIndex): Met {
    const { facts } = this
    const drawn = facts.cases.strip[item]!
    if (this.cuts >= facts.bladeAfter) return Met.needsBlade
    if (this.left < drawn - hair) {
      if (facts.warning !== null || this.missedNow >= facts.noticedAfter) return Met.needsRoll
      this.missedNow++
      this.missed++
      return Met.unsealed
    }
    if (facts.breakChance > 0 && this.tapeBreaks()) {
      this.breaksNext = undrawn
      this.remaining -= drawn
      this.cuts++
      this.spoilt += drawn
      this.breaks++
      return Met.tapeBroke
    }
    this.breaksNext = undrawn
    this.remaining -= drawn
    this.cuts++
    this.laid += drawn
    this.strips++
    return Met.taped
  }

  /** Drawn once a strip. */
  private tapeBreaks(): boolean {
    if (this.breaksNext === undrawn) {
      this.tapeBreak.advance()
      this.breaksNext = this.tapeBreak.value < this.facts.breakChance ? 1 : 0
    }
    return this.breaksNext === 1
  }

  /** The head warns that its roll is nearly empty. */
  get isLow(): boolean {
    return this.facts.warning !== null && this.left < this.facts.warning
  }

  /** Tape that the roll gives yet, m. */
  get left(): number {
    return this.remaining - this.facts.lostPerRoll
  }

  /** Takes the stub off and threads a full roll. */
  changeRoll(): void {
    this.lost += this.remaining
    this.remaining = this.facts.roll
    this.missedNow = 0
    this.changes++
  }

  serviceBlade(): void {
    this.cuts = 0
  }

  /** Tape used up in any way, m. */
  get used(): number {
    return this.laid + this.lost + this.spoilt
  }

  /** Tape that has come off rolls less what is accounted for, m: zero but for rounding. */
  imbalance(): number {
    return this.atStart + this.changes * this.facts.roll - this.remaining - this.used
  }

  /** Cases may pass an empty roll: nothing warns before it is. */
  get mayMiss(): boolean {
    return this.facts.warning === null
  }

  measures(machine: string): Measure[] {
    const measure = headMeasures(machine, this.name)
    const path = (key: HeadKey) => ['equipment', machine, 'heads', this.name, key]
    const { roll, breakChance } = this.facts
    const measures = [
      measure('tape', () => this.used),
      measure('tape-per-case', () => this.laid, { over: () => this.strips }),
      measure('loss', () => this.lost, { restsOn: [path('changes')] }),
      measure('rolls', () => this.used / roll),
      measure('changes', () => this.changes),
    ]
    if (breakChance > 0)
      measures.push(
        measure('tape-breaks', () => this.breaks),
        measure('spoilt', () => this.spoilt, { restsOn: [path('tape-breaks')] }),
      )
    if (this.mayMiss) measures.push(measure('missed', () => this.missed))
    return measures
  }
}
