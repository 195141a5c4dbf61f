/** What is chosen from and what must hold, as the options of a sizing ask it, or the scenario. */

import type { Condition } from '../answers/condition.js'
import { measureName, studyMeasures } from '../answers/figures.js'
import { RequirementError } from '../answers/requirement.js'
import { Line } from '../line/line.js'
import { parsePromise } from '../questions/size/promise.js'
import { type Choice, isRising } from '../scenario/choices.js'
import { nearest } from '../scenario/nearest.js'
import { printable, shown } from '../scenario/problems.js'
import type { Scenario } from '../scenario/schema.js'
import { unknown } from './asked.js'
import { UsageError } from './io.js'
import type { CommandScenario } from './scenario.js'
import type { SizeOptions } from './size.js'
import { choicesOf } from './size-choices.js'

export interface SizeAsked {
  choices: Choice[]
  holds: string[]
  order: string[]
  rising: string[]
  /** Rate of good cases that is promised, cases a second; null where none is. */
  rate: number | null
  /** What pencil and paper may hold a design against: that rate, and whether the target of the scenario. */
  needs: { rate: number | null; target: boolean }
}

/** Reads the options. Throws `UsageError`. */
export function sizeAsked(options: SizeOptions, loaded: CommandScenario): SizeAsked {
  const { size } = loaded.scenario
  const choices = choicesOf(options.choose, loaded)
  const holds = options.holds.length > 0 ? options.holds : (size?.holds ?? [])
  if (holds.length === 0)
    throw new UsageError(
      'nothing to hold: give --holds "9 cases/min in 95 % of shifts", or `size: holds:` in the scenario',
    )
  const known = choices.map((choice) => choice.path)
  const paths = (key: 'order' | 'rising') => {
    const given = options[key]
    const own = size?.[key] ?? []
    // what the scenario says of choices that the command line has put aside does not count
    if (given.length === 0 && options.choose.length > 0) return own.filter((each) => known.includes(each))
    const all = given.length > 0 ? given : own
    const odd = all.find((each) => !known.includes(each))
    if (odd !== undefined)
      throw new UsageError(
        `${given.length > 0 ? `--${key}` : `size.${key}`}: \`${shown(odd)}\` is not chosen; ${nearest(odd, known)}`,
      )
    return [...all]
  }
  const conditions = holds.map((text) => promiseOf(text, loaded.scenario))
  const least = (name: string) =>
    conditions.filter(({ measure, isLeast }) => isLeast && measureName(measure) === name)
  const promised = least('throughput').filter(({ sign }) => sign.startsWith('>'))
  const highest = (of: readonly Condition[]) =>
    of.length > 0 ? Math.max(...of.map(({ bound }) => bound)) : null
  // a single shift may well pass what the line does on average: only most of them, or their mean, may not
  const isOften = ({ isShare, value }: Condition) => !isShare || value >= 0.5
  const rising = paths('rising')
  const falls = choices.find((choice) => rising.includes(choice.path) && !isRising(choice.values))
  if (falls)
    throw new UsageError(
      `--rising: the values of \`${shown(falls.path)}\` do not rise: give them from the least to the most`,
    )
  return {
    choices,
    holds: [...holds],
    order: paths('order'),
    rising,
    rate: highest(promised),
    needs: { rate: highest(promised.filter(isOften)), target: least('target-held').some(isOften) },
  }
}

/** A promise against the measures of a design. Throws `UsageError`. */
export function promiseOf(text: string, scenario: Scenario, line = new Line(scenario)): Condition {
  const measures = studyMeasures(line.columns, scenario.shift.campaign)
  try {
    return parsePromise(text, measures, (name) => unknown(name, measures))
  } catch (error) {
    if (!(error instanceof RequirementError)) throw error
    throw new UsageError(`--holds ${shown(text)}: ${printable(error.message)}`)
  }
}
