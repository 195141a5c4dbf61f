/** A sealer and its operator in the style of textbooks: an event for each case at each head and at the end of the belts. */

import { Stream } from '../../src/engine/stream.js'
import { hair, type Pending, type Simulation } from './heap.js'
import type { Conveyor } from './heap-conveyor.js'
import { type Case, type Giver, Level, States, type Taker } from './heap-tallies.js'

/** A stop that somebody puts right. */
interface Task {
  duration: number
  done: () => void
}

/** One person, who serves one stop after the other; walking takes no time. */
export class Operator {
  private readonly tasks: Task[] = []
  private isBusy = false

  constructor(
    private readonly simulation: Simulation,
    private readonly turn: number,
  ) {}

  call(task: Task): void {
    this.tasks.push(task)
    this.lookForWork()
  }

  private lookForWork(): void {
    if (this.isBusy || this.tasks.length === 0) return
    const task = this.tasks.shift()!
    this.isBusy = true
    this.simulation.schedule(this.simulation.now + task.duration, this.turn, () => {
      this.isBusy = false
      task.done()
      this.lookForWork()
    })
  }
}

/** Lengths in m, times in s, speed in m/s, chance a case. */
export interface SealerFacts {
  bed: number
  speed: number
  /** Places of the heads, the first first. */
  heads: readonly number[]
  gap: number
  fold: number
  jamChance: number
  jamClearing: number
  roll: number
  rollChange: number
  leg: number
}

/** A case on the belts: the belt travel at which it came onto them, and the event of the mark that it comes to next. */
interface Placed {
  readonly item: Case
  readonly entry: number
  mark: number
  hasMetJam: boolean
  event: Pending | null
}

export class Sealer implements Giver, Taker {
  readonly level: Level
  readonly states: States
  jams = 0
  rollChanges = 0
  /** Tape laid on cases and tape left on rolls that were changed, m. */
  tapeLaid = 0
  tapeLost = 0

  private flap: Case | null = null
  private foldedAt = 0
  private entering: Pending | null = null
  private readonly belts: Placed[] = []
  private readonly rolls: number[]
  /** Belt travel, m, at the instant since which the belts run or stand, s. */
  private travelled = 0
  private since = 0
  private isRunning = true
  /** Belt travel from which the next case may enter, m. */
  private clearFrom = 0
  private isBlocked = false
  private stopped: 'jam' | 'tape' | null = null
  /** Length of the case that left last, m, and what it does to the belts as long as its tail is between them. */
  private across = 0
  private standsForTail = false
  private isHolding = false
  private looking: Pending | null = null
  private asking: Giver | null = null
  private readonly jamDraws = new Stream('line.sealer', 'jam')
  private readonly clearingDraws = new Stream('line.sealer', 'jam clearing')
  private readonly clearing: (u: number) => number

  constructor(
    private readonly simulation: Simulation,
    private readonly facts: SealerFacts,
    private readonly operator: Operator,
    private readonly next: Conveyor,
    /** Whose turn it is among simultaneous events. */
    private readonly turn: { heads: readonly number[]; end: number; entry: number },
    seed: string,
    shift: number,
  ) {
    this.level = new Level(simulation)
    this.states = new States(simulation)
    this.rolls = facts.heads.map(() => facts.roll)
    this.clearing = (u) => -facts.jamClearing * Math.log(1 - u)
    this.jamDraws.begin(seed, shift)
    this.clearingDraws.begin(seed, shift)
  }

  // --- flap place ---

  offer(item: Case, from: Giver): boolean {
    if (this.stopped !== null || this.flap !== null) {
      this.asking = from
      return false
    }
    this.flap = item
    this.foldedAt = this.simulation.now + this.facts.fold
    this.level.change(1)
    if (this.isRunning) this.expectEntry()
    this.noteState()
    return true
  }

  private expectEntry(): void {
    const time = Math.max(this.foldedAt, this.timeOf(this.clearFrom))
    this.entering = this.simulation.schedule(time, this.turn.entry, () => this.enter())
  }

  private enter(): void {
    const item = this.flap!
    const entry = Math.max(this.travel(), this.clearFrom)
    const placed: Placed = { item, entry, mark: 0, hasMetJam: false, event: null }
    this.belts.push(placed)
    this.expectMark(placed)
    this.clearFrom = entry + item.length + this.facts.gap
    this.flap = null
    this.entering = null
    this.tellOfRoom()
    this.noteState()
  }

  private tellOfRoom(): void {
    const { asking } = this
    this.asking = null
    asking?.roomAhead()
  }

  // --- belts ---

  private travel(): number {
    return this.isRunning
      ? this.travelled + this.facts.speed * (this.simulation.now - this.since)
      : this.travelled
  }

  /** When the belts, which run, will have travelled so far. */
  private timeOf(travel: number): number {
    return this.since + (travel - this.travelled) / this.facts.speed
  }

  private expectMark(placed: Placed): void {
    const { heads, bed } = this.facts
    const { mark } = placed
    const isHead = mark < heads.length
    const time = this.timeOf(placed.entry + (isHead ? heads[mark]! : bed))
    placed.event = isHead
      ? this.simulation.schedule(time, this.turn.heads[mark]!, () => this.meetsHead(placed))
      : this.simulation.schedule(time, this.turn.end, () => this.comesToEnd(placed))
  }

  /** What was to happen on the belts waits until they run again. */
  private standStill(): void {
    this.travelled = this.travel()
    this.since = this.simulation.now
    this.isRunning = false
    if (this.entering) this.entering.isCancelled = true
    this.entering = null
    for (const placed of this.belts) if (placed.event) placed.event.isCancelled = true
  }

  private runOn(): void {
    this.since = this.simulation.now
    this.isRunning = true
    for (const placed of this.belts) this.expectMark(placed)
    if (this.flap) this.expectEntry()
  }

  private meetsHead(placed: Placed): void {
    const { facts, rolls } = this
    const head = placed.mark
    if (head === 0 && !placed.hasMetJam) {
      placed.hasMetJam = true
      if (this.jamDraws.next() < facts.jamChance) {
        this.jams++
        this.stop('jam', this.clearing(this.clearingDraws.next()), () => {})
        return
      }
    }
    const strip = placed.item.length + 2 * facts.leg
    if (rolls[head]! < strip - hair) {
      this.rollChanges++
      this.stop('tape', facts.rollChange, () => {
        this.tapeLost += rolls[head]!
        rolls[head] = facts.roll
      })
      return
    }
    rolls[head]! -= strip
    placed.item.tape += strip
    this.tapeLaid += strip
    placed.mark++
    this.expectMark(placed)
  }

  private stop(cause: 'jam' | 'tape', duration: number, putRight: () => void): void {
    this.stopped = cause
    this.standStill()
    this.isHolding = this.across > 0 && this.next.lastPlace().gone < this.across - hair
    if (this.isHolding) this.next.hold(true)
    this.noteState()
    const done = () => {
      putRight()
      this.stopped = null
      if (this.isHolding) this.next.hold(false)
      this.isHolding = false
      this.runOn()
      this.tailMoves()
      this.noteState()
      this.tellOfRoom()
    }
    this.operator.call({ duration, done })
  }

  private comesToEnd(placed: Placed): void {
    if (this.next.offer(placed.item, this)) {
      this.leaves()
      this.tailMoves()
    } else {
      this.isBlocked = true
      this.standStill()
    }
    this.noteState()
  }

  private leaves(): void {
    this.across = this.belts.shift()!.item.length
    this.level.change(-1)
  }

  /** The belts stand while the case ahead stands whose tail is between them. */
  tailMoves(): void {
    if (this.looking) this.looking.isCancelled = true
    this.looking = null
    if (this.stopped !== null || this.across === 0) return
    const { gone, reach } = this.next.lastPlace()
    const stands = gone < this.across - hair && reach <= gone + hair
    if (!stands && gone < this.across - hair && reach < this.across - hair)
      this.looking = this.simulation.schedule(
        this.simulation.now + (reach - gone) / this.next.speed,
        this.turn.end,
        () => this.tailMoves(),
      )
    if (stands === this.standsForTail) return
    this.standsForTail = stands
    if (stands) this.standStill()
    else this.runOn()
    this.noteState()
  }

  roomAhead(): void {
    if (!this.isBlocked || !this.next.offer(this.belts[0]!.item, this)) return
    this.isBlocked = false
    this.leaves()
    this.runOn()
    this.tailMoves()
    this.noteState()
  }

  private noteState(): void {
    if (this.stopped !== null || this.isBlocked || this.standsForTail)
      this.states.enter(this.stopped ?? 'blocked')
    else if (this.flap !== null) this.states.enter('working')
    else this.states.enter('working', this.timeOf(this.clearFrom))
  }
}
