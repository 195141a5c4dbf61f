/** Simulates each day of the plant so many times, and keeps the good cases of each run and what its stops come to. */
import type { CleanRecord } from '../../record/record.js'
import type { ReadScenario } from '../../scenario/read.js'
import { type Context, type Simulation, simulating } from '../../shifts/simulation.js'
import { type Causes, meanStopped, type Stopped } from './causes.js'
import type { PlantDay } from './days.js'
import type { DrivenBy, DrivenShift } from './driven.js'

/** A day of the plant with the scenarios of its shifts. */
export interface DayToRun extends PlantDay {
  driven: readonly DrivenShift[]
  /** Number of a run that is wanted as a report of its own, from 0. */
  picked: number | null
}

export interface SimulatedDay extends PlantDay {
  drivenBy: DrivenBy
  /** Good cases, run by run. */
  runs: number[]
  /** Means over the runs, cause by cause. */
  stops: Stopped[]
  picked: { good: number; stops: Stopped[] } | null
}

/** What the runs depend on besides the days. */
export interface Running {
  loaded: ReadScenario
  record: CleanRecord
  causes: Causes
  /** How often each day is simulated. */
  runs: number
  /** Hash of all that a run depends on: the scenario, the record, the days and how they are driven. */
  course: string
}

/**
 * Simulates the days of each set; the same day has the same luck in all of them. Every shift of a day has numbers of its own: days that had
 * the same luck would not be independent. Throws what `simulating` does.
 */
export async function simulated(
  sets: readonly (readonly DayToRun[])[],
  running: Running,
  context: Context,
): Promise<SimulatedDay[][]> {
  const { loaded, record, runs, course } = running
  const designs = sets.flatMap((days, set) =>
    days
      .flatMap(({ driven }) => driven)
      .map(({ scenario }, index) => ({
        ...{ scenario, first: index * runs + 1 },
        key: `${set + 1}.${index + 1}`,
      })),
  )
  const plan = {
    ...{ designs, seed: loaded.scenario.study.seed, total: designs.length * runs },
    ...{ isOpen: false, isLean: true, counts: 'shifts' as const, course },
    // a length that was timed has no clock: it is right in the mean
    eyes: { seenFrom: record.seenFrom, grain: record.lengths === 'clocked' ? record.roundedTo : 0 },
  }
  return simulating(plan, context, async (simulation) => {
    const found: SimulatedDay[][] = []
    let first = 0
    for (const days of sets) {
      const ofSet: SimulatedDay[] = []
      for (const day of days) {
        ofSet.push(await ofDay(day, first, simulation, running))
        first += day.driven.length
      }
      found.push(ofSet)
    }
    return found
  })
}

/** `first`: number of the design that its first shift is. */
async function ofDay(
  { driven, picked, ...day }: DayToRun,
  first: number,
  simulation: Simulation,
  { runs, causes }: Running,
): Promise<SimulatedDay> {
  const good: number[] = Array(runs).fill(0)
  const stops = causes.none()
  const ofPicked = causes.none()
  for (const index of driven.keys()) {
    for (const [run, shift] of (await simulation.first(first + index, runs)).entries()) {
      good[run]! += shift.outputs[0]!
      causes.addSimulated(stops, shift.stops!)
      if (run === picked) causes.addSimulated(ofPicked, shift.stops!)
    }
    simulation.forget(first + index)
  }
  return {
    ...day,
    drivenBy: driven.every(({ drivenBy }) => drivenBy === 'cases') ? 'cases' : 'law',
    runs: good,
    stops: stops.map((each) => meanStopped(each, runs)),
    picked: picked === null ? null : { good: good[picked]!, stops: ofPicked },
  }
}
