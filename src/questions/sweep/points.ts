/** The designs of a sweep before they are simulated: points of a curve, a grid or a plan, each read as a scenario. */

import { combine } from '../../answers/designs.js'
import { unlessNoScenario } from '../../scenario/problems.js'
import type { ReadScenario } from '../../scenario/read.js'
import type { Scenario } from '../../scenario/schema.js'
import type { Varied } from './asked.js'
import { writtenAmount } from './factor.js'
import { latinHypercube } from './plan.js'

/** A design to be simulated. `at`: its numbers along the factors. */
export interface Planned {
  set: Record<string, unknown>
  at: number[]
  scenario: Scenario
  key: string
  /** Of a draw of the inputs: the number of the design that it is of, and its shifts. */
  drawOf?: number
  shifts?: number
}

/** The scenario with these changes. Throws `ScenarioError`. */
export function plannedOf(set: Record<string, unknown>, at: number[], loaded: ReadScenario): Planned {
  const changes = Object.entries(set).map(([path, value]) => ({ path, value, source: `--vary ${path}` }))
  const resolved = loaded.vary(null, changes)
  return { set, at, scenario: resolved.scenario, key: loaded.shiftsHash(resolved) }
}

/** Points of a sweep, and what is not simulated of it, in words. */
export interface Points {
  points: Planned[]
  notes: string[]
}

/** Every combination of the values, the last factor changing fastest. Throws `ScenarioError` where none is a scenario. */
export function gridPoints(varied: readonly Varied[], loaded: ReadScenario): Points {
  const choices = varied.map(({ path, unit, values }) => ({
    path,
    values: values.map((number) => writtenAmount({ number, unit })),
  }))
  const { designs, refused, all } = combine(choices, loaded, () => 0)
  const points = designs.map(({ places, set, scenario, key }) => ({
    ...{ set, scenario, key },
    at: places.map((place, index) => varied[index]!.values[place]!),
  }))
  // with too few of them the first fault is told as that of a scenario
  if (points.length < 2)
    for (const { path, values } of choices)
      for (const value of values) plannedOf({ [path]: value }, [], loaded)
  return { points, notes: notesOf(refused, `${all} points`) }
}

/** A plan that fills the space between the ends of the factors; numbers that must be whole are rounded. */
export function planPoints(
  varied: readonly Varied[],
  size: number,
  seed: string,
  loaded: ReadScenario,
): Points {
  const isWhole = varied.map(
    ({ path, unit, values }) =>
      unit === '' && values.every(Number.isInteger) && takesWholeOnly(path, values[0]!, loaded),
  )
  const points: Planned[] = []
  const refused = new Map<string, number>()
  for (const row of latinHypercube(seed, size, varied.length)) {
    const at = varied.map(({ values: [low, high] }, index) => {
      const value = low! + row[index]! * (high! - low!)
      return isWhole[index] ? wholeAt(low!, high!, row[index]!) : Number(value.toPrecision(6))
    })
    const set = Object.fromEntries(
      varied.map(({ path, unit }, index) => [path, writtenAmount({ number: at[index]!, unit })]),
    )
    const point = unlessNoScenario(() => plannedOf(set, at, loaded))
    if ('made' in point) points.push(point.made)
    else {
      const { reason } = point
      refused.set(reason, (refused.get(reason) ?? 0) + 1)
      // told as that of a scenario
      if (refused.get(reason) === size) throw point.error
    }
  }
  return { points, notes: notesOf(refused, `${size} designs`) }
}

/** `3 of the 12 points are no scenario: ...`, by the reason. */
const notesOf = (refused: ReadonlyMap<string, number>, all: string): string[] =>
  [...refused].map(([reason, count]) => `${count} of the ${all} cannot be simulated: ${reason}.`)

/** A whole number from `low` to `high`, each for an equal part of [0, 1). */
const wholeAt = (low: number, high: number, part: number) =>
  Math.min(high, low + Math.floor(part * (high - low + 1)))

/** Only whole numbers may stand there: half of one more than this one is refused. */
export const takesWholeOnly = (path: string, whole: number, loaded: ReadScenario): boolean =>
  'problem' in unlessNoScenario(() => plannedOf({ [path]: whole + 0.5 }, [], loaded))
