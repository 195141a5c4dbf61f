/** The calendar: shifts begin and end, breaks begin and end, and arrivals end before the run-out. */
import { type Actor, never } from '../engine/clock.js'
import type { Equipment } from './equipment.js'
import type { Exit } from './exit.js'
import type { Floor } from './floor.js'
import type { Source } from './source.js'

interface Entry {
  at: number
  what: 'break begins' | 'break ends' | 'arrivals end' | 'start-up ends' | 'shift ends'
  /** Whose break it is; null for the break of the shift. */
  crew: string | null
}

export class Calendar implements Actor {
  readonly label = 'shift'
  /** Shifts that reached the target, of those that are counted. */
  reached = 0
  /** Good cases out, shift by shift of the campaign; of a shift that is counted in part, made up to a whole one. */
  readonly outputs: Float64Array
  private readonly entries: readonly Entry[]
  private readonly stopsAll: boolean
  private readonly target: number
  private slot = -1
  private next = 0
  private outBefore = 0
  private shiftsEnded = 0

  constructor(
    private readonly floor: Floor,
    private readonly sources: readonly Source[],
    private readonly equipment: readonly Equipment[],
    private readonly exit: Exit,
    /** Whole shifts are to be cut away, and the last of them has ended; the next has not begun. */
    private readonly cut: () => void,
  ) {
    const { shift, target } = floor.scenario
    this.target = target ?? Infinity
    this.outputs = new Float64Array(floor.campaign)
    this.stopsAll = shift['breaks-stop'] === 'everything'
    const one = this.entriesOfOne()
    const length = floor.end / floor.campaign
    this.entries = Array.from({ length: floor.campaign }, (_, index) =>
      one.map((entry) => ({ ...entry, at: entry.at + index * length })),
    ).flat()
  }

  /** One shift in the order of time; at one instant in the order of this list. */
  private entriesOfOne(): Entry[] {
    const { shift, crew } = this.floor.scenario
    const pauses = (breaks: readonly { at: number; for: number }[], name: string | null): Entry[] =>
      breaks.flatMap((pause) => [
        { at: pause.at, what: 'break begins', crew: name },
        { at: pause.at + pause.for, what: 'break ends', crew: name },
      ])
    const own = Object.entries(crew).flatMap(([name, { breaks }]) => (breaks ? pauses(breaks, name) : []))
    const startUp: Entry[] =
      shift['start-up'] > 0 ? [{ at: shift['start-up'], what: 'start-up ends', crew: null }] : []
    const entries: Entry[] = [
      ...startUp,
      ...pauses(shift.breaks, null),
      ...own,
      { at: shift.length, what: 'arrivals end', crew: null },
      { at: shift.length + shift['run-out'], what: 'shift ends', crew: null },
    ]
    return entries.sort((a, b) => a.at - b.at)
  }

  join(): void {
    this.slot = this.floor.clock.add(this)
  }

  reset(): void {
    this.next = 0
    this.shiftsEnded = 0
    this.countAnew()
    this.schedule()
    this.startUp()
  }

  /** Counts anew, when the exit does. */
  countAnew(): void {
    this.reached = 0
    this.outBefore = 0
  }

  private schedule(): void {
    this.floor.clock.set(this.slot, this.entries[this.next]?.at ?? never)
  }

  /** Nothing comes until the line has been started up. */
  private startUp(): void {
    if (this.floor.scenario.shift['start-up'] > 0) for (const source of this.sources) source.pause()
  }

  act(): void {
    const { what, crew } = this.entries[this.next++]!
    this.schedule()
    if (what !== 'shift ends') this.floor.observer?.calendar(what, crew)
    switch (what) {
      case 'arrivals end':
        for (const source of this.sources) source.end()
        return
      case 'start-up ends':
        for (const source of this.sources) source.resume()
        return
      case 'shift ends':
        this.endShift()
        return
      default:
        this.turnBreak(what === 'break begins', crew)
    }
  }

  private turnBreak(begins: boolean, crew: string | null): void {
    if (crew !== null) {
      this.floor.crew.turnBreak(begins, crew)
      return
    }
    if (begins) for (const piece of this.equipment) piece.mechanism.breakBegins()
    for (const piece of this.equipment) if (this.stopsAll || piece.isManual) piece.halt(begins)
    for (const source of this.sources) begins ? source.pause() : source.resume()
    this.floor.crew.turnBreak(begins, null)
  }

  private endShift(): void {
    const { counted, campaign } = this.floor
    const output = this.exit.out - this.outBefore
    this.outputs[this.shiftsEnded++] = campaign > 1 ? output : output / counted.shifts
    if (output / counted.workingTimeOfEach >= this.target) this.reached++
    this.outBefore = this.exit.out
    if (this.shiftsEnded === counted.shiftsBefore) this.cut()
    if (this.next === this.entries.length) return
    for (const source of this.sources) source.beginShift()
    this.startUp()
  }
}
