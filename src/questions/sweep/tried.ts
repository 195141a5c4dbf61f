/** The inputs that a sweep moves one at a time, each end read as a scenario; what cannot be moved is told. */

import { flowText } from '../../answers/flow.js'
import { heldFixed } from '../../scenario/evidence.js'
import { valueAt } from '../../scenario/issues.js'
import { shown } from '../../scenario/printable.js'
import { unlessNoScenario } from '../../scenario/problems.js'
import type { ReadScenario } from '../../scenario/read.js'
import type { Varied } from './asked.js'
import type { EachInput } from './document.js'
import { writtenAmount } from './factor.js'
import { type Input, inputsOf, type LeftOut, lawText } from './inputs.js'
import { type Planned, plannedOf, takesWholeOnly } from './points.js'

/** An input with the designs of its ends; null where an end is no scenario. */
export interface TriedInput extends Pick<EachInput, 'path' | 'base'> {
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
        base: textOf(treeValue(heldFixed(loaded), path)),
        low: plannedOf({ [path]: writtenAmount({ number: low!, unit }) }, [low!], loaded),
        high: plannedOf({ [path]: writtenAmount({ number: high!, unit }) }, [high!], loaded),
      })),
      leftOut: [],
    }
  const { inputs, leftOut } = inputsOf(heldFixed(loaded))
  const tried = inputs.map((input) => triedInput(input, loaded))
  return {
    inputs: tried.flatMap(({ input }) => input ?? []),
    leftOut: [...leftOut, ...tried.flatMap((each) => each.leftOut)],
  }
}

/** The designs of the ends of an input; null where neither is a scenario. What is left out of it is told. */
function triedInput(input: Input, loaded: ReadScenario): { input: TriedInput | null; leftOut: LeftOut[] } {
  const { path, base, whole } = input
  const values = whole && takesWholeOnly(path, base as number, loaded) ? whole : input
  const [low, high] = [endOf(input, values.low, loaded), endOf(input, values.high, loaded)]
  const isNone = (end: Planned | string): end is string => typeof end === 'string'
  if (isNone(low) && isNone(high))
    return { input: null, leftOut: [{ path, reason: `a changed value breaks the scenario: ${low}` }] }
  const ends: [string, Planned | string][] = [
    ['lowered', low],
    ['raised', high],
  ]
  return {
    input: { path, base: textOf(base), low: isNone(low) ? null : low, high: isNone(high) ? null : high },
    leftOut: ends.flatMap(([words, end]) =>
      isNone(end)
        ? [{ path, reason: `${words} it breaks the scenario, so only the other end was tried: ${end}` }]
        : [],
    ),
  }
}

/** The design of an end; in words why there is none. */
function endOf({ path, base }: Input, value: unknown, loaded: ReadScenario): Planned | string {
  if (JSON.stringify(value) === JSON.stringify(base)) return 'it has its largest value already'
  const end = unlessNoScenario(() => plannedOf({ [path]: value }, [], loaded))
  return 'made' in end ? end.made : `${shown(end.problem.path)}: ${end.problem.rule}`
}

/** A value in one short line: of a law its scale. */
export const textOf = (value: unknown): string => shown(lawText(value) ?? flowText(value), 120)
