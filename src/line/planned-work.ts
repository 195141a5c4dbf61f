/** Planned work of a piece in each shift: when it is due, who does it, and what of it is under way. */
import { type Actor, never } from '../engine/clock.js'
import type { Draw } from '../engine/draw.js'
import { unset } from '../engine/unset.js'
import { dueOf, duesPerShift, type PlannedKeys } from '../scenario/planned.js'
import type { Floor } from './floor.js'
import { type Measure, pieceMeasures } from './measure.js'
import type { Task } from './task.js'

/** The piece that stands for it. */
interface Place {
  readonly name: string
  workedOn(begins: boolean): void
}

/** One kind of planned work. What is due while it is under way follows when that is done. */
export class PlannedWork implements Actor {
  readonly label: string
  /** Times begun in what is counted, and how long they waited for somebody, s. */
  begun = 0
  waits = unset
  private readonly slot: number
  private readonly takes: Draw
  /** Shift, run-out included, and how often it is due in one; how often it was due so far in this campaign. */
  private readonly span: number
  private readonly perShift: number
  private number = 0
  /** Pieces that are due and not begun, and since when somebody is called for the one that comes first, s. */
  private waiting = 0
  private calledAt = unset
  private isUnderWay = false
  private dueAt = never
  private doneAt = never
  /** Where people do it. */
  private readonly task: Task | null

  constructor(
    private readonly floor: Floor,
    private readonly place: Place,
    private readonly keys: PlannedKeys,
    index: number,
  ) {
    const { shift } = floor.scenario
    this.label = `line.${place.name}`
    this.span = shift.length + shift['run-out']
    this.perShift = duesPerShift(keys, shift.length)
    this.takes = floor.draws(this.label, `planned work ${index + 1}`, keys.takes)
    this.slot = floor.clock.add(this)
    this.task =
      keys.needs === undefined
        ? null
        : {
            place: place.name,
            skill: 'jams',
            planned: { does: keys.does, crew: keys.needs },
            duration: 0,
            begin: () => this.begins(),
            done: () => this.ends(),
            waitsOutBreak: () => {},
          }
  }

  reset(): void {
    this.number = 0
    this.waiting = 0
    this.isUnderWay = false
    this.doneAt = never
    this.countAnew()
    this.plan()
  }

  /** Counts anew from now; who is waited for stays. */
  countAnew(): void {
    this.begun = 0
    this.waits = 0
  }

  act(): void {
    const { now } = this.floor.clock
    if (this.doneAt <= now) {
      this.doneAt = never
      this.floor.observer?.plannedWorkDone(this.place.name, this.keys.does)
      this.ends()
    }
    if (this.dueAt <= now) {
      this.number++
      this.waiting++
      this.start()
    }
    this.plan()
  }

  /** Finds when it is due next, and acts then or when it is done. */
  private plan(): void {
    const shift = Math.floor(this.number / this.perShift)
    this.dueAt = shift * this.span + dueOf(this.keys, this.number % this.perShift)
    this.floor.clock.set(this.slot, Math.min(this.dueAt, this.doneAt))
  }

  /** Begins with what is due, or calls for somebody, if nothing is under way. */
  private start(): void {
    if (this.isUnderWay || this.waiting === 0) return
    this.waiting--
    this.isUnderWay = true
    const { now } = this.floor.clock
    const takes = this.takes.draw()
    this.calledAt = now
    if (this.task) {
      this.task.duration = takes
      this.floor.crew.call(this.task)
      return
    }
    this.floor.observer?.plannedWork(this.place.name, this.keys.does, takes)
    this.doneAt = now + takes
    this.begins()
  }

  private begins(): void {
    this.begun++
    this.waits += this.floor.clock.now - this.calledAt
    this.place.workedOn(true)
  }

  private ends(): void {
    this.isUnderWay = false
    this.place.workedOn(false)
    this.start()
    this.plan()
  }
}

/** Number of the planned works of a piece, and how long they waited for somebody, where people do any. */
export function plannedMeasures(
  name: string,
  works: readonly PlannedWork[],
  needsPeople: boolean,
): Measure[] {
  const measure = pieceMeasures(name)
  const begun = () => works.reduce((sum, work) => sum + work.begun, 0)
  const measures = [measure('planned-work', begun)]
  if (needsPeople)
    measures.push(
      measure('planned-work-wait', () => works.reduce((sum, work) => sum + work.waits, 0), {
        over: begun,
        restsOn: [['equipment', name, 'measures', 'planned-work']],
      }),
    )
  return measures
}
