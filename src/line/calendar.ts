/** The shift calendar: breaks begin and end, and arrivals end with the shift. */
import { type Actor, never } from '../engine/clock.js'
import type { Equipment } from './equipment.js'
import type { Floor } from './floor.js'
import type { Source } from './source.js'

interface Entry {
  at: number
  what: 'break begins' | 'break ends' | 'arrivals end'
}

export class Calendar implements Actor {
  readonly label = 'shift'
  /** Shift less breaks, s. */
  readonly workingTime: number
  /** Shift and run-out less breaks, s: the time in which people are there. */
  readonly attendedTime: number
  private readonly entries: readonly Entry[]
  private readonly stopsAll: boolean
  private slot = -1
  private next = 0

  constructor(
    private readonly floor: Floor,
    private readonly sources: readonly Source[],
    private readonly equipment: readonly Equipment[],
  ) {
    const { shift } = floor.scenario
    const entries = shift.breaks.flatMap((pause): Entry[] => [
      { at: pause.at, what: 'break begins' },
      { at: pause.at + pause.for, what: 'break ends' },
    ])
    this.entries = [...entries, { at: shift.length, what: 'arrivals end' }]
    const breaks = shift.breaks.reduce((sum, pause) => sum + pause.for, 0)
    this.workingTime = shift.length - breaks
    this.attendedTime = floor.end - breaks
    this.stopsAll = shift['breaks-stop'] === 'everything'
  }

  join(): void {
    this.slot = this.floor.clock.add(this)
  }

  reset(): void {
    this.next = 0
    this.schedule()
  }

  private schedule(): void {
    this.floor.clock.set(this.slot, this.entries[this.next]?.at ?? never)
  }

  act(now: number): void {
    const { what } = this.entries[this.next++]!
    this.schedule()
    if (what === 'arrivals end') {
      for (const source of this.sources) source.end()
      return
    }
    const begins = what === 'break begins'
    for (const piece of this.equipment) if (this.stopsAll || piece.isManual) piece.halt(now, begins)
    if (begins) {
      for (const source of this.sources) source.pause(now)
      this.floor.crew.breakBegins()
    } else {
      for (const source of this.sources) source.resume(now)
      this.floor.crew.breakEnds(now)
    }
  }
}
