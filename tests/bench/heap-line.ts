/** The line of reference.yaml written straight down for a heap of events: the yardstick of the bench, and its cross-check. */
import { Stream } from '../../src/engine/stream.js'
import { Simulation } from './heap.js'
import { Conveyor } from './heap-conveyor.js'
import { Operator, Sealer, type SealerFacts } from './heap-sealer.js'
import { type Case, Durations, type Giver, Level, type State, States, type Taker } from './heap-tallies.js'

/** What a line of this layout is made of; lengths in m, speeds in m/s, times in s. */
export interface LineFacts {
  /** Of the kinds of case, which come equally often. */
  lengths: readonly number[]
  timeBetween: number
  infeed: { length: number; speed: number }
  sealer: SealerFacts
  outfeed: { length: number; speed: number }
  palletising: number
}

/** The line of reference.yaml. */
export const referenceLine: LineFacts = {
  lengths: [0.3, 0.4, 0.5, 0.6],
  timeBetween: 10 / 3,
  infeed: { length: 6, speed: 0.5 },
  sealer: {
    bed: 1.8,
    speed: 0.4,
    heads: [0.9, 1.2],
    gap: 0.3,
    fold: 0,
    jamChance: 0.003,
    jamClearing: 60,
    roll: 914,
    rollChange: 90,
    leg: 0.07,
  },
  outfeed: { length: 8, speed: 0.5 },
  palletising: 2.2,
}

/** Simultaneous events: furthest downstream first, so that room is made before it is asked for. */
const turn = {
  palletiser: 0,
  outfeed: { end: 1, entrance: 2 },
  sealer: { heads: [4, 3], end: 5, entry: 6 },
  infeed: { end: 7, entrance: 8 },
  arrivals: 9,
  operator: 10,
}

/** What is known of a shift; times in s, lengths in m. */
export interface TwinResult {
  arrived: number
  out: number
  jams: number
  rollChanges: number
  meanTimeInSystem: number
  /** Time in system that 95 % of the cases do not pass, to 1 %. */
  timeInSystem95: number
  tapeLaid: number
  tapeLost: number
  tapeOnGoodCases: number
  /** Cases, averaged over time. */
  held: Record<'floor' | 'infeed' | 'sealer' | 'outfeed' | 'palletiser', number>
  /** Share of time in each state. */
  states: Record<'infeed' | 'sealer' | 'outfeed' | 'palletiser', Record<State, number>>
}

/** Where cases leave the line. */
class Exit {
  tape = 0
  readonly timeInSystem = new Durations()

  constructor(private readonly simulation: Simulation) {}

  take(item: Case): void {
    this.tape += item.tape
    this.timeInSystem.add(this.simulation.now - item.arrivedAt)
  }
}

/** One place that serves a case, without a waiting room. */
class Palletiser implements Taker {
  readonly level: Level
  readonly states: States
  private isServing = false
  private asking: Giver | null = null

  constructor(
    private readonly simulation: Simulation,
    private readonly exit: Exit,
    private readonly time: number,
  ) {
    this.level = new Level(simulation)
    this.states = new States(simulation)
  }

  offer(item: Case, from: Giver): boolean {
    if (this.isServing) {
      this.asking = from
      return false
    }
    this.isServing = true
    this.level.change(1)
    this.states.enter('working')
    this.simulation.schedule(this.simulation.now + this.time, turn.palletiser, () => this.done(item))
    return true
  }

  private done(item: Case): void {
    this.exit.take(item)
    this.isServing = false
    this.level.change(-1)
    this.states.enter('waiting')
    const { asking } = this
    this.asking = null
    asking?.roomAhead()
  }
}

/** Cases come, and stand on the floor until the line takes them. */
class Arrivals implements Giver {
  readonly level: Level
  arrived = 0
  private readonly floor: Case[] = []
  private readonly interval: (u: number) => number
  private readonly intervals = new Stream('arrivals.packing', 'time between')
  private readonly mix = new Stream('arrivals.packing', 'mix')

  constructor(
    private readonly simulation: Simulation,
    private readonly next: Taker,
    private readonly lengths: readonly number[],
    timeBetween: number,
    seed: string,
    shift: number,
  ) {
    this.level = new Level(simulation)
    this.interval = (u) => -timeBetween * Math.log(1 - u)
    this.intervals.begin(seed, shift)
    this.mix.begin(seed, shift)
  }

  expectNext(): void {
    const time = this.simulation.now + this.interval(this.intervals.next())
    this.simulation.schedule(time, turn.arrivals, () => this.arrive())
  }

  private arrive(): void {
    this.arrived++
    const length = this.lengths[Math.floor(this.mix.next() * this.lengths.length)]!
    this.floor.push({ length, arrivedAt: this.simulation.now, tape: 0 })
    this.level.change(1)
    this.roomAhead()
    this.expectNext()
  }

  roomAhead(): void {
    while (this.floor.length > 0 && this.next.offer(this.floor[0]!, this)) {
      this.floor.shift()
      this.level.change(-1)
    }
  }
}

/** Simulates one shift of `hours` of the study `seed`, with the random numbers that the model draws for it. */
export function simulateHeapLine(
  seed: string,
  shift: number,
  hours = 8,
  facts: LineFacts = referenceLine,
): TwinResult & { events: number } {
  const simulation = new Simulation()
  const exit = new Exit(simulation)
  const palletiser = new Palletiser(simulation, exit, facts.palletising)
  const outfeed = new Conveyor(simulation, facts.outfeed, palletiser, turn.outfeed)
  const operator = new Operator(simulation, turn.operator)
  const sealer = new Sealer(simulation, facts.sealer, operator, outfeed, turn.sealer, seed, shift)
  const infeed = new Conveyor(simulation, facts.infeed, sealer, turn.infeed)
  const arrivals = new Arrivals(simulation, infeed, facts.lengths, facts.timeBetween, seed, shift)
  arrivals.expectNext()
  simulation.run(hours * 3600)

  return {
    arrived: arrivals.arrived,
    out: exit.timeInSystem.count,
    jams: sealer.jams,
    rollChanges: sealer.rollChanges,
    events: simulation.events,
    meanTimeInSystem: exit.timeInSystem.mean(),
    timeInSystem95: exit.timeInSystem.quantile(0.95),
    tapeLaid: sealer.tapeLaid,
    tapeLost: sealer.tapeLost,
    tapeOnGoodCases: exit.tape,
    held: {
      floor: arrivals.level.mean(),
      infeed: infeed.level.mean(),
      sealer: sealer.level.mean(),
      outfeed: outfeed.level.mean(),
      palletiser: palletiser.level.mean(),
    },
    states: {
      infeed: infeed.states.shares(),
      sealer: sealer.states.shares(),
      outfeed: outfeed.states.shares(),
      palletiser: palletiser.states.shares(),
    },
  }
}
