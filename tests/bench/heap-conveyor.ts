/** An accumulating conveyor in the style of textbooks: an event for each case that comes to the end. */
import { hair, type Pending, type Simulation } from './heap.js'
import { type Case, type Giver, Level, States, type Taker } from './heap-tallies.js'

/** A case on the conveyor, or one that has left it and still says where those behind it are. */
interface Load {
  readonly item: Case
  enteredAt: number
  leftAt: number
  /** Lengths of all cases so far, this one included, m. */
  readonly total: number
  behind: Load | null
}

export class Conveyor implements Giver, Taker {
  readonly level: Level
  readonly states: States
  private readonly length: number
  readonly speed: number
  private readonly aboard: Load[] = []
  private last: Load | null = null
  /** The one that left last. */
  private goneLast: Load | null = null
  /** The foremost case that may still keep the entrance shut: a conveyor's length ahead of it. */
  private ahead: Load | null = null
  /** Lengths of the cases on it, m. */
  private occupied = 0
  private isBlocked = false
  private asking: Giver | null = null
  private telling: Pending | null = null
  /** Who passed on the last case, and holds its tail; and where that is, m from the entrance, while belts hold it. */
  private behind: Giver | null = null
  private heldAt: number | null = null
  private coming: Pending | null = null

  constructor(
    private readonly simulation: Simulation,
    facts: { length: number; speed: number },
    private readonly next: Taker,
    /** Whose turn it is among simultaneous events. */
    private readonly turn: { end: number; entrance: number },
  ) {
    this.length = facts.length
    this.speed = facts.speed
    this.level = new Level(simulation)
    this.states = new States(simulation)
  }

  /** While its end is shut it takes only what will lie wholly on it, or what belts may hold by the tail. */
  offer(item: Case, from: Giver): boolean {
    const { now } = this.simulation
    const fits = this.occupied + item.length <= this.length + hair || from.tailMoves !== undefined
    const clearAt = fits || !this.isBlocked ? this.entranceClear() : Infinity
    if (clearAt > now + hair) {
      this.asking = from
      if (this.telling === null || clearAt < this.telling.time - hair) this.tellAt(clearAt)
      return false
    }
    const total = (this.last?.total ?? 0) + item.length
    const load: Load = { item, enteredAt: now, leftAt: Infinity, total, behind: null }
    const leader = this.last
    if (leader) leader.behind = load
    this.ahead ??= load
    this.last = load
    this.occupied += item.length
    this.aboard.push(load)
    this.behind = from
    if (this.aboard.length === 1) this.comesToEnd(load, leader)
    this.level.change(1)
    this.noteState()
    return true
  }

  /** When the last case will have moved by its own length: by itself, and as those ahead let it. */
  private entranceClear(): number {
    const { last } = this
    if (last === null) return 0
    if (this.heldAt !== null) return Infinity
    const free = last.enteredAt + last.item.length / this.speed
    while (this.ahead !== last && last.total - this.ahead!.total >= this.length)
      this.ahead = this.ahead!.behind
    const ahead = this.ahead!
    const excess = last.total - (ahead.total - ahead.item.length) - this.length
    return excess < 0 ? free : Math.max(free, ahead.leftAt + excess / this.speed)
  }

  /** Where the last case is and where it will come to stand if no other leaves, m from the entrance. */
  lastPlace(): { gone: number; reach: number } {
    const { now } = this.simulation
    const last = this.last!
    const free = this.speed * (now - last.enteredAt)
    if (this.heldAt !== null) return { gone: this.heldAt, reach: this.heldAt }
    if (!this.aboard.includes(last)) return { gone: free, reach: free }
    const reach = this.length - (this.occupied - last.item.length)
    // behind the one that left last, which goes on at the same speed
    const room = this.goneLast
      ? reach - this.goneLast.item.length + this.speed * (now - this.goneLast.leftAt)
      : reach
    return { gone: Math.min(free, reach, room), reach }
  }

  /** Belts hold the last case by its tail, or let it go. */
  hold(isHeld: boolean): void {
    const last = this.last!
    if (isHeld) {
      this.heldAt = this.lastPlace().gone
      if (this.aboard[0] === last && this.coming) this.coming.isCancelled = true
      return
    }
    last.enteredAt = this.simulation.now - this.heldAt! / this.speed
    this.heldAt = null
    if (this.aboard[0] === last) this.comesToEnd(last, this.goneLast)
  }

  /** Tells whoever was told no; `Infinity` where only a case that leaves can make room. */
  private tellAt(time: number): void {
    if (this.telling) this.telling.isCancelled = true
    this.telling = null
    if (time === Infinity) return
    this.telling = this.simulation.schedule(time, this.turn.entrance, () => {
      this.telling = null
      const { asking } = this
      this.asking = null
      asking?.roomAhead()
    })
  }

  private comesToEnd(load: Load, leader: Load | null): void {
    if (load === this.last && this.heldAt !== null) return
    const free = load.enteredAt + this.length / this.speed
    const following = leader ? leader.leftAt + leader.item.length / this.speed : 0
    this.coming = this.simulation.schedule(Math.max(free, following), this.turn.end, () => this.passOn())
  }

  private passOn(): void {
    const load = this.aboard[0]!
    this.isBlocked = !this.next.offer(load.item, this)
    if (!this.isBlocked) {
      load.leftAt = this.simulation.now
      this.goneLast = load
      this.aboard.shift()
      this.occupied -= load.item.length
      this.level.change(-1)
      if (this.aboard.length > 0) this.comesToEnd(this.aboard[0]!, load)
      if (this.asking) this.tellAt(this.entranceClear())
      this.behind?.tailMoves?.()
    }
    this.noteState()
  }

  roomAhead(): void {
    if (this.isBlocked) this.passOn()
  }

  private noteState(): void {
    this.states.enter(this.isBlocked ? 'blocked' : this.aboard.length > 0 ? 'working' : 'waiting')
  }
}
