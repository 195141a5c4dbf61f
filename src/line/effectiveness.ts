/** A machine in the words of ISO 22400-2: time elements, availability, effectiveness, quality, OEE index. */
import { unset } from '../engine/unset.js'
import type { Floor } from './floor.js'
import { isoMeasures, type Measure } from './measure.js'
import { State } from './states.js'
import type { Tallies } from './unit.js'

/** What a machine has made in the shift. */
export class Production {
  /** Cases that it has finished, good or not (PQ). */
  all = 0
  /** Good ones of them (GQ). */
  good = 0
  /** Sum of their planned run times per item (PRI x PQ), s. */
  plannedTime = unset

  /** Told before `add`: length of the case that is finished, m. */
  length = unset

  /** The planned run time of a case (PRI) is its headway: its length and the gap, m, at the speed of the belts, m/s. */
  constructor(
    private readonly gap: number,
    private readonly speed: number,
  ) {}

  reset(): void {
    this.all = 0
    this.good = 0
    this.plannedTime = 0
  }

  /** A case is finished. */
  add(isGood: boolean): void {
    this.all++
    if (isGood) this.good++
    this.plannedTime += (this.length + this.gap) / this.speed
  }
}

/** Stops that are the machine's own fault. */
const ownStops = [
  State.jamWaiting,
  State.jamClearing,
  State.tapeWaiting,
  State.tapeChanging,
  State.breakdownWaiting,
  State.breakdownRepair,
] as const

/** States by time element: each is in exactly one of these, or planned downtime, which is no part of the planned busy time. */
export const elements = {
  APT: [State.working],
  AUST: [State.sizeWaiting, State.sizeSetting],
  ADET: [State.waiting, State.blocked, ...ownStops],
  plannedDowntime: [State.onBreak, State.blade, State.plannedStop],
} as const

/** The mapping in words, printed beside the figures. */
export const mapping =
  'Time elements after ISO 22400-2:2014 (definitions from secondary sources): APT working; AUST size settings; ADET waiting, blocked, jams, tape, breakdowns; ADOT none, because orders run all shift; PBT = APT + AUST + ADET; breaks, planned stops and blade service are planned downtime and not part of PBT. Availability = APT / PBT. Effectiveness = planned run time of the cases / APT; it may exceed 100 %. Quality = good / all. OEE index = the product of the three. Technical availability: share of PBT without jams, tape stops and breakdowns of this machine; being starved or blocked does not lower it.'

/** Measures of one machine; `made` is read when a shift has ended. `mayFail`: not all that it makes need be good. */
export function effectivenessMeasures(
  unit: Tallies,
  made: Readonly<Production>,
  floor: Floor,
  mayFail: boolean,
): Measure[] {
  const time = (states: readonly State[]) =>
    states.reduce<number>((sum, state) => sum + unit.stateTimes[state]!, 0)
  const planned = () => floor.counted.time - time(elements.plannedDowntime)
  const working = () => time(elements.APT)
  const quality = () => (made.all > 0 ? made.good / made.all : 0)
  const measure = isoMeasures(unit.name)
  return [
    measure('PBT', planned),
    measure('APT', working),
    measure('AUST', () => time(elements.AUST)),
    measure('ADET', () => time(elements.ADET)),
    measure('availability', working, { over: planned }),
    measure('effectiveness', () => made.plannedTime, { over: working }),
    measure('quality', () => made.good, { over: () => made.all, isFixed: !mayFail }),
    measure('oee', () => made.plannedTime * quality(), { over: planned }),
    measure('technical-availability', () => planned() - time(ownStops), { over: planned }),
  ]
}
