/** A line assembled from a scenario: simulates one shift after another and reports the measures of each. */
import type { Scenario } from '../scenario/schema.js'
import { massPerMetre } from '../trade/tape.js'
import { assertBalances } from './balance.js'
import { Calendar } from './calendar.js'
import { costMeasures } from './cost.js'
import type { Equipment } from './equipment.js'
import { Exit } from './exit.js'
import { Floor } from './floor.js'
import type { Measure } from './measure.js'
import { makeEquipment } from './registry.js'
import { Sealer } from './sealer.js'
import { Source } from './source.js'

/** What is known of one shift: the numbers of `Line.columns`, and the cases held at even instants, place by place. */
export interface ShiftResult {
  values: Float64Array
  held: Float64Array
}

/** A number of a shift result: a measure's value, or the denominator of its ratio. */
export interface Column {
  measure: Measure
  part: 'value' | 'over'
}

export class Line {
  /** In the order of the shift result. */
  readonly columns: readonly Column[]
  /** Places of the held series, in their order. */
  readonly heldPlaces: readonly string[]
  /** Elements of cost that the scenario does not price. */
  readonly costLeftOut: readonly string[]
  private readonly floor: Floor
  private readonly sources: readonly Source[]
  private readonly equipment: readonly Equipment[]
  private readonly calendar: Calendar
  private readonly exit: Exit

  constructor(scenario: Scenario) {
    const floor = new Floor(scenario)
    this.floor = floor
    const exit = new Exit(floor)
    this.exit = exit
    const entries = Object.entries(scenario.line)
    this.equipment = entries.map(([name, keys]) => makeEquipment(floor, name, keys))
    this.sources = Object.entries(scenario.arrivals).map(([name, keys]) => new Source(floor, name, keys))
    const named = (name: string) => this.equipment[entries.findIndex(([each]) => each === name)]!
    for (const [index, piece] of this.equipment.entries()) {
      const { to } = entries[index]![1]
      piece.next = to === undefined ? (this.equipment[index + 1] ?? exit) : named(to)
    }
    for (const source of this.sources) {
      const { to } = scenario.arrivals[source.name]!
      source.next = to === undefined ? this.equipment[0]! : named(to)
    }
    this.join()
    floor.crew.assemble()
    this.calendar = new Calendar(floor, this.sources, this.equipment)
    this.calendar.join()
    const { measures, costLeftOut } = this.allMeasures()
    this.costLeftOut = costLeftOut
    this.columns = measures.flatMap((measure): Column[] =>
      measure.over
        ? [
            { measure, part: 'value' },
            { measure, part: 'over' },
          ]
        : [{ measure, part: 'value' }],
    )
    this.heldPlaces = this.series().map((series) => series.name)
  }

  /** Simultaneous events: furthest downstream first, so that room is made before it is asked for; then the order of the file. */
  private join(): void {
    const stepsToExit = new Map<unknown, number>([[this.exit, 0]])
    // cases go forward, so one pass from the back knows every distance
    for (const piece of [...this.equipment].reverse())
      stepsToExit.set(piece, stepsToExit.get(piece.next)! + 1)
    const order = [...this.equipment].sort((a, b) => stepsToExit.get(a)! - stepsToExit.get(b)!)
    for (const piece of [...order, ...this.sources]) piece.join()
  }

  private series() {
    return [
      ...this.sources.flatMap((source) => source.series()),
      ...this.equipment.flatMap((piece) => piece.mechanism.series()),
    ]
  }

  /** Cases that events took so far in the last shift; for benches. */
  get counts(): { events: number; arrived: number } {
    return {
      events: this.floor.clock.events,
      arrived: this.sources.reduce((sum, source) => sum + source.arrived, 0),
    }
  }

  /**
   * Simulates shift `shift` (from 1) of the study `seed`: the same result whatever was simulated before. Throws
   * `BalanceError` or `StuckClock`, which are bugs.
   */
  simulate(seed: string, shift: number): ShiftResult {
    const { floor } = this
    floor.begin(seed, shift)
    this.exit.reset()
    floor.crew.reset()
    for (const piece of this.equipment) piece.reset()
    for (const source of this.sources) source.reset()
    this.calendar.reset()
    floor.clock.run(floor.end)
    for (const piece of this.equipment) piece.settle(floor.end)
    for (const source of this.sources) source.settle(floor.end)
    floor.crew.settle(floor.end)
    assertBalances(floor, this.sources, this.equipment, this.exit, seed, shift)
    const values = Float64Array.from(this.columns, ({ measure, part }) =>
      part === 'value' ? measure.value() : measure.over!(),
    )
    return { values, held: Float64Array.from(this.series().flatMap((series) => [...series.samples])) }
  }

  private allMeasures(): { measures: Measure[]; costLeftOut: string[] } {
    const { exit, floor } = this
    const { scenario } = floor
    const { workingTime, attendedTime } = this.calendar
    const sealers = this.equipment.map((piece) => piece.mechanism).filter((each) => each instanceof Sealer)
    const heads = sealers.flatMap((sealer) => sealer.heads)
    const tapeUsed = () => heads.reduce((sum, head) => sum + head.laid + head.lost, 0)
    const lost = () => heads.reduce((sum, head) => sum + head.lost, 0)
    const throughput = () => exit.out / workingTime
    const cost = costMeasures(scenario, sealers, () => exit.out)
    const at = (key: string): string[] => ['measures', key]
    const whole: Measure[] = [
      {
        path: at('throughput'),
        label: 'Good cases out over working time',
        unit: 'cases/s',
        kind: 'mean',
        value: throughput,
      },
      {
        path: at('output'),
        label: 'Good cases out a shift',
        unit: 'cases',
        kind: 'mean',
        value: () => exit.out,
      },
      {
        path: at('time-in-system'),
        label: 'Time from arrival to exit, mean',
        unit: 's',
        kind: 'mean',
        value: () => exit.timeInSystem.mean(),
      },
      {
        path: at('time-in-system-p95'),
        label: 'Time from arrival to exit, not passed by 95 % of the cases',
        unit: 's',
        kind: 'mean',
        value: () => exit.timeInSystem.quantile(0.95),
      },
    ]
    const { target } = scenario
    if (target !== undefined)
      whole.push({
        path: at('target-held'),
        label: 'Share of shifts that reach the target',
        unit: 'share',
        kind: 'share',
        value: () => (throughput() >= target ? 1 : 0),
      })
    if (sealers.length > 0) {
      const mass = massPerMetre(scenario.tape.width, scenario.tape.thickness)
      whole.push(
        {
          path: at('tape-per-case'),
          label: 'Tape on a good case',
          unit: 'm/case',
          kind: 'ratio',
          value: () => exit.tape,
          over: () => exit.out,
        },
        {
          path: at('tape-lost-per-case'),
          label: 'Tape lost with the rolls, a good case',
          unit: 'm/case',
          kind: 'ratio',
          value: lost,
          over: () => exit.out,
        },
        {
          path: at('tape'),
          label: 'Tape used a shift, all heads, loss included',
          unit: 'm',
          kind: 'mean',
          value: tapeUsed,
        },
        {
          path: at('tape-mass'),
          label: 'Mass of that tape, without cores',
          unit: 'kg',
          kind: 'mean',
          value: () => tapeUsed() * mass,
        },
      )
    }
    const measures = [
      ...whole,
      ...cost.measures,
      ...this.sources.flatMap((source) => source.measures(workingTime)),
      ...this.equipment.flatMap((piece) => piece.measures()),
      ...floor.crew.measures(attendedTime),
    ]
    return { measures, costLeftOut: cost.leftOut }
  }
}
