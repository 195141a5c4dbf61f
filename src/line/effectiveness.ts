/** A machine in the words of ISO 22400-2: time elements, availability, effectiveness, quality, OEE index. */
import { unset } from '../engine/unset.js'
import type { Floor } from './floor.js'
import type { Measure } from './measure.js'
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

  /** `runTimes`: planned run time of a case (PRI), s, by kind. */
  constructor(private readonly runTimes: Float64Array) {}

  reset(): void {
    this.all = 0
    this.good = 0
    this.plannedTime = 0
  }

  /** A case of `kind` is finished. */
  add(kind: number, isGood: boolean): void {
    this.all++
    if (isGood) this.good++
    this.plannedTime += this.runTimes[kind]!
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
  'Time elements after ISO 22400-2:2014 (definitions from secondary sources): APT working; AUST size settings; ADET waiting, blocked, jams, tape, breakdowns; ADOT none, for orders run all shift; PBT = APT + AUST + ADET; breaks, planned stops and blade service are planned downtime and lie outside it. Availability APT / PBT, effectiveness planned run time of the cases / APT, quality good / all, OEE index their product. Effectiveness above 100 % is reported, not clamped. Technical availability: share of PBT without jams, tape and breakdowns of this machine; what others do to it does not lower it.'

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
  const at = (key: string) => ['equipment', unit.name, 'effectiveness', key]
  const element = (key: string, words: string, value: () => number): Measure => ({
    path: at(key),
    label: `${key}, ${words}, ${unit.name}`,
    unit: 's',
    kind: 'total',
    value,
  })
  const share = (key: string, words: string, value: () => number, over: () => number): Measure => ({
    path: at(key),
    label: `${words}, ${unit.name}`,
    unit: 'share',
    kind: 'ratio',
    value,
    over,
  })
  const quality = () => (made.all > 0 ? made.good / made.all : 0)
  return [
    element('PBT', 'planned busy time a shift', planned),
    element('APT', 'actual production time a shift', () => time(elements.APT)),
    element('AUST', 'actual unit set-up time a shift', () => time(elements.AUST)),
    element('ADET', 'actual unit delay time a shift', () => time(elements.ADET)),
    share('availability', 'Availability', () => time(elements.APT), planned),
    share(
      'effectiveness',
      'Effectiveness',
      () => made.plannedTime,
      () => time(elements.APT),
    ),
    {
      ...share(
        'quality',
        'Quality ratio',
        () => made.good,
        () => made.all,
      ),
      isPart: true,
      isFixed: !mayFail,
    },
    share('oee', 'OEE index', () => made.plannedTime * quality(), planned),
    share('technical-availability', 'Technical availability', () => planned() - time(ownStops), planned),
  ]
}
