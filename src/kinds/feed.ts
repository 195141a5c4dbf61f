/** The sources of a row while nothing disturbs it: when cases come, and which of them the first piece takes when. */
import { never } from '../engine/clock.js'
import { unset } from '../engine/unset.js'
import type { Equipment } from '../line/equipment.js'
import type { Source } from '../line/source.js'
import type { Spell } from './spell.js'
import type { Stage } from './stage.js'

/** A source with what is known of it in the spell. */
class Packer {
  /** When it did something last, s. */
  at = unset
  /** Its first case was told no, and stands. */
  isWaiting = false

  constructor(readonly source: Source) {}
}

/**
 * As by events: who offers a case that can come at once has it taken; who is told no stands in a line of those who wait, behind whoever was told no
 * before, until there is room for its case. So the one that comes next is the one that can come first, and of two who could at one instant the
 * one who has waited longer; a shorter case of another may find room where a longer one waits.
 */
export class Feed {
  private readonly packers: readonly Packer[]
  /** Those who wait, who came first first: the first `waits` places. */
  private readonly line: Packer[] = []
  private waits = 0
  /** Who has just had a case taken and offers its next one at once. */
  private passing: Packer | null = null
  /** Of those who wait the one whose case can come first, and when, s; who was looked at last. */
  private best: Packer | null = null
  private bestAt = never
  private tried: Packer | null = null
  /** When that one's case could come, s: a number that a call gives may be allocated. */
  private entry = unset

  constructor(
    private readonly spell: Spell,
    readonly sources: readonly Source[],
    private readonly piece: Equipment,
    private readonly first: Stage,
  ) {
    this.packers = sources.map((source) => new Packer(source))
  }

  isCalm(): boolean {
    for (const { isPaused, hasEnded } of this.sources) if (isPaused || hasEnded) return false
    return true
  }

  /** Cases that stand before the line. */
  standing(): number {
    let sum = 0
    for (const { standing } of this.sources) sum += standing.length
    return sum
  }

  /** A spell begins: who stands waits, in the order in which the first piece told them no. */
  begin(): void {
    const { packers, piece, line } = this
    this.waits = 0
    this.passing = null
    for (const packer of packers) {
      packer.at = this.spell.from
      packer.isWaiting = packer.source.standing.length > 0
      if (!packer.isWaiting) continue
      const place = piece.placeOf(packer.source)
      let at = this.waits++
      for (; at > 0 && piece.placeOf(line[at - 1]!.source) > place; at--) line[at] = line[at - 1]!
      line[at] = packer
    }
  }

  /** Brings the next case onto the first piece, before the end of the spell: its number, or -1 where there is none. */
  next(): number {
    const { passing, spell } = this
    if (passing !== null) {
      this.passing = null
      if (passing.source.standing.length > 0 && this.offers(passing)) return this.take(passing)
    }
    this.findBest()
    for (;;) {
      const packer = this.nextToCome()
      const { source } = packer
      if (!(source.dueAt < this.bestAt) || !(source.dueAt < spell.until)) break
      this.arrive(packer)
      if (!packer.isWaiting && this.offers(packer)) return this.take(packer)
    }
    return this.best !== null && this.bestAt < spell.until ? this.take(this.best) : -1
  }

  /** Whose cases come next; of two at one instant those of the one that is named first. */
  private nextToCome(): Packer {
    const { packers } = this
    let first = packers[0]!
    for (let index = 1; index < packers.length; index++)
      if (packers[index]!.source.dueAt < first.source.dueAt) first = packers[index]!
    return first
  }

  /** Cases come, at once where they are late. */
  private arrive(packer: Packer): void {
    const { source } = packer
    const { clock, cases } = source.floor
    packer.at = Math.max(packer.at, source.dueAt)
    clock.now = packer.at
    source.dueAt = never
    for (let left = source.pace.batch; left > 0; left--) source.bring(cases.create(source.kind()))
    if (source.whenFull !== 'wait') source.findNext()
  }

  /** Whether the first case of a packer can come as it is offered; else it waits, or is turned away with all that came together with it. */
  private offers(packer: Packer): boolean {
    const { source } = packer
    this.findEntry(packer)
    if (this.entry === packer.at) return true
    source.floor.clock.now = packer.at
    if (source.whenFull === 'turn-away') {
      while (source.standing.length > 0) source.turnAway()
      return false
    }
    packer.isWaiting = true
    this.line[this.waits++] = packer
    source.noteBlocked()
    this.mayBeBest(packer)
    return false
  }

  private findBest(): void {
    this.best = null
    this.bestAt = never
    for (let place = 0; place < this.waits; place++) {
      this.findEntry(this.line[place]!)
      this.mayBeBest(this.line[place]!)
    }
  }

  /** The one that was looked at last, if its case could come before all others. */
  private mayBeBest(packer: Packer): void {
    if (!(this.entry < this.bestAt)) return
    this.best = packer
    this.bestAt = this.entry
  }

  /** Finds when the first case of a packer could come if it were the next: `entry`. */
  private findEntry(packer: Packer): void {
    const { spell, first } = this
    const { floor, standing } = packer.source
    const item = standing.at(0)
    const place = spell.next & spell.mask
    spell.items[place] = item
    spell.lengths[place] = floor.cases.length[item]!
    first.wanted[place] = Math.max(floor.cases.arrivedAt[item]!, spell.from)
    first.findEntry(spell.next)
    this.tried = packer
    this.entry = first.entered[place]!
  }

  /** The first case of a packer comes: its number. */
  private take(packer: Packer): number {
    const { spell, first } = this
    const { source } = packer
    if (this.tried !== packer) this.findEntry(packer)
    const number = spell.next++
    first.comes(number)
    packer.at = first.entered[number & spell.mask]!
    source.standing.shift()
    source.floor.clock.now = packer.at
    source.noteStack(-1)
    if (packer.isWaiting) this.leavesTheLine(packer)
    if (source.standing.length > 0) this.passing = packer
    else if (source.whenFull === 'wait') {
      source.noteBlocked()
      source.findNext()
    }
    return number
  }

  private leavesTheLine(packer: Packer): void {
    const { line } = this
    packer.isWaiting = false
    this.waits--
    let place = 0
    while (line[place] !== packer) place++
    for (; place < this.waits; place++) line[place] = line[place + 1]!
  }

  /** The spell is over: who stands is told no, in their order. */
  end(): void {
    for (const source of this.sources) source.tellClock()
    for (let place = 0; place < this.waits; place++) this.line[place]!.source.passOn()
  }
}
