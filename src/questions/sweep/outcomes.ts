/** What comes of the designs of a sweep when they are simulated. */
import { exposureOf, measureName, measuresOf } from '../../answers/figures.js'
import { Line } from '../../line/line.js'
import { Standstill } from '../../line/standstill.js'
import { isFault } from '../../scenario/fault.js'
import type { Scenario } from '../../scenario/schema.js'
import type { Simulation } from '../../shifts/simulation.js'
import type { SweepMeasure } from './document.js'
import type { Planned } from './points.js'
import { type Sample, sampleOf } from './sample.js'

/** What came of a design: the numbers of its measures over shifts, or why there are none. */
export type Outcome = { samples: Record<string, Sample> } | { failed: string }

/**
 * Simulates every design, the scenario itself first; what came of each by its key. A design that locks up or never settles is told with
 * its fault; of the scenario itself that is thrown.
 */
export async function outcomesOf(
  designs: readonly Planned[],
  measures: readonly SweepMeasure[],
  count: number,
  simulation: Simulation,
): Promise<Map<string, Outcome>> {
  const outcomeOf = async ({ scenario, shifts = count }: Planned, index: number): Promise<Outcome> => {
    try {
      await simulation.first(index, shifts)
    } catch (error) {
      if (index === 0 || !isFault(error, 'standstill', 'unsettled')) throw error
      const failed =
        error instanceof Standstill ? `line.${error.piece}: ${error.rule}` : error.message.split('\n')[0]!
      return { failed }
    }
    return { samples: samplesOf(scenario, measures, simulation, index) }
  }
  const outcomes = new Map<string, Outcome>()
  for (const [index, design] of designs.entries()) {
    const { key } = design
    const known = simulation.keeper?.outcomeOf(key) as Outcome | undefined
    const outcome = known ?? (await outcomeOf(design, index))
    if (!known) simulation.keeper?.keepOutcome(key, outcome)
    simulation.forget(index)
    outcomes.set(key, read(outcome))
    simulation.tell(!known)
  }
  return outcomes
}

/** The numbers of the measures that this design has. */
function samplesOf(
  scenario: Scenario,
  measures: readonly SweepMeasure[],
  simulation: Simulation,
  index: number,
): Record<string, Sample> {
  const exposure = exposureOf(scenario, simulation.countFrom(index))
  const known = measuresOf({ line: new Line(scenario), scenario })
  return Object.fromEntries(
    measures.flatMap(({ name }) => {
      const measure = known.find((each) => measureName(each) === name)
      const sample = measure ? sampleOf(measure, simulation.of[index]!, exposure) : null
      return sample === null ? [] : [[name, sample]]
    }),
  )
}

/** An outcome as it comes from where it was kept, where a number that is not known is null. */
function read(outcome: Outcome): Outcome {
  if ('failed' in outcome) return outcome
  // one that is not finite says nothing either, and comes back from a file as null
  const numbers = (values: readonly (number | null)[]) =>
    values.map((value) => (value !== null && Number.isFinite(value) ? value : Number.NaN))
  return {
    samples: Object.fromEntries(
      Object.entries(outcome.samples).map(([name, { values, overs, ...rest }]) => [
        name,
        { ...rest, values: numbers(values), overs: overs === null ? null : numbers(overs) },
      ]),
    ),
  }
}
