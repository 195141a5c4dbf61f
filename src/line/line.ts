/** A line assembled from a scenario: simulates one shift after another and reports the measures of each. */
import { StuckClock } from '../engine/clock.js'
import { makeEquipment } from '../kinds/models.js'
import type { Row } from '../kinds/row.js'
import { rowOf } from '../kinds/rows.js'
import { arrivalWays, exitName, lineWays } from '../scenario/routes.js'
import type { Scenario } from '../scenario/schema.js'
import { assertBalances } from './balance.js'
import { Calendar } from './calendar.js'
import { costMeasures } from './cost.js'
import { Crew } from './crew.js'
import type { Equipment } from './equipment.js'
import { equipmentMeasures } from './equipment-measures.js'
import { Exit } from './exit.js'
import { Floor, samplesPerShift } from './floor.js'
import { type Handover, handovers } from './handover.js'
import type { Outlet } from './handshake.js'
import { ShiftEnd } from './hidden-lock.js'
import { lineMeasures } from './line-measures.js'
import type { HeldSeries, Measure } from './measure.js'
import { Observer } from './observer.js'
import { PlannedWork, plannedMeasures } from './planned-work.js'
import { type Sensing, sensedMeasures, sensedPieces } from './sensing.js'
import type { ShiftEvent } from './shift-event.js'
import { slowStarts } from './slow-start.js'
import { Source } from './source.js'
import { speedSteps } from './speed-steps.js'
import { type Circle, DeadlockError, EndlessLoopError, findCircle, piecesOnACircle } from './standstill.js'
import { measuresTogether } from './together.js'
import { downstreamFirst, giveRightOfWay } from './who-first.js'

/** What is known of one shift: the numbers of `Line.columns`, and the cases held at even instants, place by place. */
export interface ShiftResult {
  values: Float64Array
  held: Float64Array
  /** Good cases out: of the shift (counted in part: a whole shift's worth), or of each counted shift of the campaign. */
  outputs: Float64Array
  /**
   * Two sums over the random numbers that arrivals drew in what is counted, whose mean is exactly 0 whatever the line
   * does: what came is luck in so far. First the number: cases by which intervals were shorter than their mean, so
   * positive when cases come faster; then the mix: outside length along the travel, m, by which the cases drawn were longer.
   * Exactly 0 where nothing is random. See `Controls` for why holding a source up does not move the mean.
   */
  controls: Float64Array
  /** Stops as the log of a plant would have them, where somebody asked for them: the sums of `shifts/seen-stops`. */
  stops?: Float64Array
}

/** A number of a shift result: a measure's value, or the denominator of its ratio. */
export interface Column {
  measure: Measure
  part: 'value' | 'over'
}

export class Line {
  /** In the order of the shift result. */
  readonly columns: readonly Column[]
  /** Elements of cost that the scenario does not price. */
  readonly costLeftOut: readonly string[]
  private readonly series: readonly HeldSeries[]
  private readonly floor: Floor
  private readonly sources: readonly Source[]
  private readonly equipment: readonly Equipment[]
  private readonly crew: Crew
  private readonly calendar: Calendar
  /** By piece, those that have any. */
  private readonly planned: readonly {
    piece: Equipment
    works: readonly PlannedWork[]
    needsPeople: boolean
  }[]
  private readonly exit: Exit
  private readonly handovers: readonly Handover[]
  private readonly sensed: readonly Sensing[]
  private readonly speeds: readonly { reset(): void }[]
  /** Cases that were inside as the simulation ended; null while one runs. */
  private insideAtEnd: number | null = null

  /** Makes what is worked ahead of the clock, with the first simulation; null where all is left to events. */
  private readonly makeRow: (() => Row) | null
  private row: Row | null = null
  constructor(scenario: Scenario, engine = scenario.study.engine) {
    const floor = new Floor(scenario)
    this.floor = floor
    const exit = new Exit(floor)
    this.exit = exit
    const entries = Object.entries(scenario.line)
    this.equipment = entries.map(([name, keys]) => makeEquipment(floor, name, keys))
    this.sources = Object.entries(scenario.arrivals).map(([name, keys]) => new Source(floor, name, keys))
    const named = new Map<string, Outlet>(this.equipment.map((piece) => [piece.name, piece]))
    named.set(exitName, exit)
    const ways = lineWays(scenario)
    for (const piece of this.equipment) {
      piece.ways = ways.get(piece.name)!.map(({ target }) => named.get(target)!)
      piece.next = piece.ways[0]!
    }
    const from = arrivalWays(scenario)
    for (const source of this.sources) source.next = named.get(from.get(source.name)![0]!.target)!
    for (const [index, [, keys]] of entries.entries())
      giveRightOfWay(this.equipment[index]!, keys['right-of-way'], this.equipment, this.sources)
    // before all else: what begins at the instant at which a slow start begins or ends is of what comes
    const slow = slowStarts(floor, this.equipment)
    for (const piece of [...downstreamFirst(this.equipment, exit), ...this.sources]) piece.join()
    const others = floor.clock.joined
    this.crew = new Crew(floor, (name) => this.equipment.find((piece) => piece.name === name)!)
    this.calendar = new Calendar(floor, this.sources, this.equipment, exit, () => this.countAnew())
    this.calendar.join()
    for (const piece of this.equipment) piece.joinLogged()
    this.crew.join()
    this.handovers = handovers(floor, this.equipment)
    // after the calendar: where a break begins or ends at that instant, it has
    this.planned = entries.flatMap(([, { planned }], index) => {
      const piece = this.equipment[index]!
      if (planned === undefined) return []
      const works = planned.map((keys, number) => new PlannedWork(floor, piece, keys, number))
      return [{ piece, works, needsPeople: planned.some(({ needs }) => needs !== undefined) }]
    })
    this.sensed = sensedPieces(floor, this.equipment)
    this.speeds = [...slow, ...speedSteps(floor, this.equipment)]
    this.makeRow = engine === 'events' ? null : rowOf(floor, this.sources, this.equipment, exit, others)
    const mechanisms = this.equipment.map((piece) => piece.mechanism)
    const sealers = mechanisms.flatMap((each) => each.taper() ?? [])
    const cost = costMeasures(scenario, sealers, floor.counted, () => exit.out)
    this.costLeftOut = cost.leftOut
    const measures = [
      ...lineMeasures(floor, this.calendar, exit, mechanisms),
      ...cost.measures,
      ...this.sources.flatMap((source) => source.measures()),
      ...this.equipment.flatMap((piece) => equipmentMeasures(piece, floor)),
      ...this.planned.flatMap(({ piece, ...of }) => plannedMeasures(piece.name, of.works, of.needsPeople)),
      ...this.sensed.flatMap(sensedMeasures),
      ...this.crew.measures(),
    ]
    const all = [...measures, ...measuresTogether(scenario.alike, measures)]
    // where nothing is random, one shift says what all are like
    const fixed = floor.isRandom ? {} : { isFixed: true }
    this.columns = all.flatMap((each): Column[] => {
      const measure = { ...each, ...fixed }
      const value: Column = { measure, part: 'value' }
      return measure.over ? [value, { measure, part: 'over' }] : [value]
    })
    this.series = [...this.sources, ...mechanisms].flatMap((place) => place.series())
  }

  /** Places of the held series, in their order. */
  get heldPlaces(): readonly string[] {
    return this.series.map((series) => series.name)
  }

  /** Who simulates: the events alone, or events with a row of pieces that is worked ahead of them. */
  get engine(): Scenario['study']['engine'] {
    return this.makeRow === null ? 'events' : 'ahead'
  }

  /** Events of the last shift so far, cases that came in it, and those of them that were worked ahead; for benches and tests. */
  get counts(): { events: number; arrived: number; ahead: number } {
    return {
      events: this.floor.clock.events,
      arrived: this.sources.reduce((sum, source) => sum + source.arrived, 0),
      ahead: this.row?.worked ?? 0,
    }
  }

  /**
   * Simulates shift `shift` (from 1) of the study `seed`: the same result whatever was simulated before. Throws
   * `Standstill` where the line locks or cases run in a circle; `BalanceError` or `StuckClock`, which are bugs.
   */
  simulate(seed: string, shift: number): ShiftResult {
    this.begin(seed, shift)
    this.runTo(this.floor.end, seed, shift)
    return this.finish(seed, shift)
  }

  /** As `simulate`, with a pause after each `step` seconds of the shift, so that others can act: the same, sums of a row to a rounding. */
  *simulateInSteps(seed: string, shift: number, step: number): Generator<undefined, ShiftResult> {
    this.begin(seed, shift)
    for (let until = step; until < this.floor.end; until += step) {
      this.runTo(until, seed, shift)
      yield
    }
    this.runTo(this.floor.end, seed, shift)
    return this.finish(seed, shift)
  }

  /** Tells every event of the shifts that follow, or all but those of cases; null ends that. */
  observe(tell: ((event: ShiftEvent) => void) | null, isOfCases = true): void {
    this.floor.observer = tell
      ? new Observer(this.floor.clock, this.floor.cases, this.floor.scenario, tell, isOfCases)
      : null
  }

  /** End of what one `simulate` covers, s from its start. */
  get end(): number {
    return this.floor.end
  }

  /** Cases in the line now, floor stacks before it included: between the steps of `simulateInSteps`, and after a simulation. */
  get casesInside(): number {
    return this.insideAtEnd ?? this.floor.cases.inUse
  }

  /**
   * Where counting begins, s since the start of the campaign; 0, as at first, counts everything. Set it between simulations. The line runs as
   * ever, but every figure is of what comes later, and the line as it stands then is what it begins with: a case that is inside counts where it
   * goes, with all of its time in the line. Figures "a shift" are per counted shift: whole ones; of one, its share of the working time.
   *
   * Of several shifts in a row it must be a whole number of them, run-outs included, less than all; of one shift not negative, with some
   * of the working time after it; else a RangeError.
   */
  get countFrom(): number {
    return this.floor.counted.from
  }

  set countFrom(from: number) {
    this.floor.counted.begin(from)
  }

  private begin(seed: string, shift: number): void {
    const { floor } = this
    this.insideAtEnd = null
    floor.begin(seed, shift)
    this.row ??= this.makeRow?.() ?? null
    this.row?.reset()
    this.exit.reset()
    for (const piece of this.equipment) piece.reset()
    for (const source of this.sources) source.reset()
    this.crew.reset() // after the pieces: whoever has a standing duty takes up the post
    this.calendar.reset()
    for (const handover of this.handovers) handover.reset()
    for (const { works } of this.planned) for (const work of works) work.reset()
    for (const each of [...this.sensed, ...this.speeds]) each.reset()
  }

  /** Counting begins: every tally anew, everything else as it is. */
  private countAnew(): void {
    this.floor.countAnew()
    this.exit.reset()
    for (const piece of this.equipment) piece.countAnew()
    for (const source of this.sources) source.countAnew()
    this.crew.countAnew()
    this.calendar.countAnew()
    for (const { works } of this.planned) for (const work of works) work.countAnew()
    for (const sensing of this.sensed) sensing.countAnew()
  }

  private runTo(until: number, seed: string, shift: number): void {
    const { floor, countFrom } = this
    try {
      // of several shifts in a row the calendar cuts, between what ends one and what begins the next
      if (floor.campaign === 1 && floor.clock.now < countFrom && countFrom <= until) {
        floor.clock.run(countFrom)
        this.countAnew()
      }
      floor.clock.run(until)
    } catch (error) {
      if (!(error instanceof StuckClock)) throw error
      // only where a way leads back can the scenario be the cause
      const acting = this.equipment.filter((piece) => error.labels.includes(piece.label))
      const circle = acting.map((piece) => piecesOnACircle(piece)).find((pieces) => pieces.length > 0)
      throw circle ? new EndlessLoopError(circle, error.now, seed, shift) : error
    }
  }

  private finish(seed: string, shift: number): ShiftResult {
    const { floor } = this
    const refuse = (locked: Circle | null) => {
      if (locked) throw new DeadlockError(locked.circle, locked.since, locked.bySensor, seed, shift)
    }
    refuse(findCircle(this.equipment))
    const end = new ShiftEnd(floor.clock, this.equipment)
    floor.observer?.close()
    for (const piece of this.equipment) piece.settle()
    for (const source of this.sources) source.settle()
    this.crew.settle()
    assertBalances(floor, this.sources, this.equipment, this.exit, seed, shift)
    const values = Float64Array.from(this.columns, ({ measure, part }) =>
      part === 'over'
        ? measure.over!()
        : measure.kind === 'total' || measure.kind === 'count'
          ? measure.value() / floor.counted.shifts
          : measure.value(),
    )
    const held = new Float64Array(this.series.length * samplesPerShift)
    for (const [index, { samples }] of this.series.entries()) held.set(samples, index * samplesPerShift)
    const outputs = this.calendar.outputs.slice(floor.counted.shiftsBefore)
    const controls = floor.controls.sums.slice()
    this.insideAtEnd = floor.cases.inUse
    // last of all, for cases may move
    refuse(end.find())
    return { values, held, outputs, controls }
  }
}
