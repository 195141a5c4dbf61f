/** The inputs that a sweep moves one at a time, each end read as a scenario; what cannot be moved is told. */

import { flowText } from '../../answers/flow.js'
import { valueAt } from '../../scenario/issues.js'
import { shown } from '../../scenario/printable.js'
import { ScenarioError } from '../../scenario/problems.js'
import type { ReadScenario } from '../../scenario/read.js'
import type { Varied } from './asked.js'
import { writtenAmount } from './factor.js'
import { type Input, inputsOf, type LeftOut, lawText } from './inputs.js'
import { type Planned, plannedOf } from './points.js'

/** An input with the designs of its ends; null where an end is no scenario. */
export interface TriedInput {
  path: string
  base: string
  low: Planned | null
  high: Planned | null
}

/** The steps of a dotted path in a tree whose keys may have dots. */
export function treeValue(tree: unknown, path: string): unknown {
  const steps = path.split('.')
  let at: unknown = tree
  for (let index = 0; index < steps.length; index++) {
    const rest = steps.slice(index).join('.')
    if (typeof at === 'object' && at !== null && Object.hasOwn(at, rest))
      return (at as Record<string, unknown>)[rest]
    at = valueAt(at, [steps[index]!])
  }
  return at
}

/** All inputs that move, and those that do not. Throws `ScenarioError` of a path that the user gave and that leads nowhere. */
export function triedInputs(
  varied: readonly Varied[],
  loaded: ReadScenario,
): { inputs: TriedInput[]; leftOut: LeftOut[] } {
  if (varied.length > 0)
    return {
      inputs: varied.map(({ path, unit, values: [low, high] }) => ({
        path,
        base: textOf(treeValue(loaded.resolved, path)),
        low: plannedOf({ [path]: writtenAmount({ number: low!, unit }) }, [low!], loaded),
        high: plannedOf({ [path]: writtenAmount({ number: high!, unit }) }, [high!], loaded),
      })),
      leftOut: [],
    }
  const { inputs, leftOut } = inputsOf(loaded.resolved)
  const all = [...leftOut]
  const tried: TriedInput[] = []
  for (const input of inputs) {
    const { low: lowValue, high: highValue } = isWhole(input, loaded) ? input.whole! : input
    const [low, high] = [endOf(input, lowValue, loaded), endOf(input, highValue, loaded)]
    if (typeof low === 'string' && typeof high === 'string')
      all.push({ path: input.path, reason: `moved it breaks the scenario: ${low}` })
    else {
      for (const [words, end] of [
        ['lowered', low],
        ['raised', high],
      ] as const)
        if (typeof end === 'string')
          all.push({
            path: input.path,
            reason: `${words} it breaks the scenario, so the other end alone: ${end}`,
          })
      tried.push({
        path: input.path,
        base: textOf(input.base),
        low: typeof low === 'string' ? null : low,
        high: typeof high === 'string' ? null : high,
      })
    }
  }
  return { inputs: tried, leftOut: all }
}

/** The design of an end; in words why there is none. */
function endOf({ path, base }: Input, value: unknown, loaded: ReadScenario): Planned | string {
  if (JSON.stringify(value) === JSON.stringify(base)) return 'it is as large as it may be'
  try {
    return plannedOf({ [path]: value }, [], loaded)
  } catch (error) {
    if (!(error instanceof ScenarioError)) throw error
    const [problem] = error.problems
    return `${shown(problem!.path)}: ${problem!.rule}`
  }
}

/** Only whole numbers may stand there: half of one more is refused. */
function isWhole({ path, base, whole }: Input, loaded: ReadScenario): boolean {
  if (whole === null) return false
  try {
    loaded.vary(null, [{ path, value: (base as number) + 0.5, source: path }])
    return false
  } catch (error) {
    if (!(error instanceof ScenarioError)) throw error
    return true
  }
}

/** A value in one short line: of a law its scale. */
export const textOf = (value: unknown): string => shown(lawText(value) ?? flowText(value), 120)
