/** What is chosen from and what must hold, as the options of a sizing ask it, or the scenario. */
import { Line } from '../line/line.js'
import type { Choice } from '../scenario/choices.js'
import { nearest } from '../scenario/issues.js'
import { shown } from '../scenario/problems.js'
import type { Scenario } from '../scenario/schema.js'
import type { Condition } from '../study/condition.js'
import { studyMeasures } from '../study/figures.js'
import { parsePromise } from '../study/promise.js'
import { RequirementError } from '../study/requirement.js'
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
  const paths = (option: string, given: readonly string[], own: readonly string[] = []) => {
    const all = [...(given.length > 0 ? given : own)]
    const odd = all.find((each) => !known.includes(each))
    if (odd !== undefined)
      throw new UsageError(`${option}: \`${shown(odd)}\` is not chosen; ${nearest(odd, known)}`)
    return all
  }
  const conditions = holds.map((text) => promiseOf(text, loaded.scenario))
  const rates = conditions.flatMap(({ measure, isLeast, bound }) =>
    isLeast && measure.path.at(-1) === 'throughput' ? [bound] : [],
  )
  return {
    choices,
    holds: [...holds],
    order: paths('--order', options.order, size?.order),
    rising: paths('--rising', options.rising, size?.rising),
    rate: rates.length > 0 ? Math.max(...rates) : null,
  }
}

/** A promise against the measures of a design. Throws `UsageError`. */
export function promiseOf(text: string, scenario: Scenario, line = new Line(scenario)): Condition {
  const measures = studyMeasures(line.columns, scenario.shift.campaign)
  try {
    return parsePromise(text, measures, (name) => unknown(name, measures))
  } catch (error) {
    if (!(error instanceof RequirementError)) throw error
    throw new UsageError(`--holds ${shown(text)}: ${error.message}`)
  }
}
