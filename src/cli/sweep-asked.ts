/** What a sweep varies and looks at, as its options ask it. */

import { measureName, studyMeasures } from '../answers/figures.js'
import { costName, heldName } from '../answers/usual-measures.js'
import { currencyOf, unitName } from '../catalogue/unit-name.js'
import type { Line } from '../line/line.js'
import type { SweepKind, SweepMeasure } from '../questions/sweep/document.js'
import { amountOf } from '../questions/sweep/factor.js'
import { type Choice, ChoiceError, choiceWritten } from '../scenario/choices.js'
import { shown } from '../scenario/problems.js'
import type { Scenario } from '../scenario/schema.js'
import { measureAsked } from './asked.js'
import { UsageError } from './io.js'
import { variantPath } from './size-choices.js'
import type { SweepOptions } from './sweep.js'

/** A factor with its values in one unit, ascending. */
export interface Varied {
  path: string
  unit: string
  values: number[]
}

/** Most values of a factor of a curve or a grid, and most points of a grid: more is a slip of the step. */
const mostOfCurve = 200
const mostOfGrid = 2500

/** What kind of sweep the options ask for. Throws `UsageError`. */
export function kindOf({ vary, each, plan }: SweepOptions): SweepKind {
  if (each && plan !== undefined) throw new UsageError('--each and --plan exclude each other: choose one')
  if (each) return 'each'
  if (plan !== undefined) {
    if (vary.length < 3)
      throw new UsageError(
        `--plan takes three factors or more, not ${vary.length}: with fewer a curve or a grid shows more`,
      )
    if (plan < vary.length + 2)
      throw new UsageError(
        `--plan ${plan}: ${vary.length} factors need at least ${vary.length + 2} designs, and ten for each are usual`,
      )
    return 'plan'
  }
  if (vary.length === 0)
    throw new UsageError('nothing to vary: give --vary "PATH=low..high/step", or --each for every input')
  if (vary.length > 2)
    throw new UsageError(
      `${vary.length} factors cannot be drawn at once: give --plan N for many designs among them, or --each for one at a time`,
    )
  return vary.length === 1 ? 'curve' : 'grid'
}

/** The factors that were asked for. Throws `UsageError`. */
export function variedOf({ vary }: SweepOptions, kind: SweepKind): Varied[] {
  const isOfEnds = kind === 'each' || kind === 'plan'
  const varied = vary.map((text) => variedWritten(text, isOfEnds))
  const twice = varied.find(({ path }, index) => varied.findIndex((other) => other.path === path) < index)
  if (twice) throw new UsageError(`${shown(twice.path)} is varied twice: give all its values at once`)
  const points = varied.reduce((product, { values }) => product * values.length, 1)
  if (!isOfEnds && varied.some(({ values }) => values.length > mostOfCurve))
    throw new UsageError(`a factor has at most ${mostOfCurve} values here: take larger steps`)
  if (kind === 'grid' && points > mostOfGrid)
    throw new UsageError(`${points} points are more than ${mostOfGrid}: take larger steps`)
  return varied
}

function variedWritten(text: string, isOfEnds: boolean): Varied {
  const where = `--vary ${shown(text)}`
  const { path, values } = choiceOf(text, isOfEnds, where)
  if (path === variantPath)
    throw new UsageError(`${where}: a sweep goes along numbers; tapeshift compare takes variants`)
  const amounts = values.map((value) => {
    const amount = amountOf(value)
    if (amount === null)
      throw new UsageError(
        `${where}: \`${shown(value)}\` is no number with a unit of the format; tapeshift compare takes other values`,
      )
    return amount
  })
  const units = [...new Set(amounts.map(({ unit }) => unit))]
  if (units.length > 1)
    throw new UsageError(
      `${where}: its values have one unit, not ${units.map((unit) => unit || 'none').join(' and ')}`,
    )
  const numbers = [...new Set(amounts.map(({ number }) => number))].sort((a, b) => a - b)
  if (numbers.length < 2) throw new UsageError(`${where}: two values at least, and not the same`)
  return {
    path,
    unit: units[0]!,
    values: isOfEnds ? [numbers[0]!, numbers.at(-1)!] : numbers,
  }
}

/** `PATH=low..high` has no step; all else is a choice as elsewhere. */
function choiceOf(text: string, isOfEnds: boolean, where: string): Choice {
  const ends = /^\s*([^=]+?)\s*=\s*(.+?)\s*\.\.\s*(.+?)\s*$/.exec(text)
  const hasStep = /\/\s*[\d.+-]/.test(text)
  if (ends && !hasStep) {
    const [, path, low, high] = ends as unknown as [string, string, string, string]
    if (!isOfEnds)
      throw new UsageError(
        `${where}: a range needs a step, such as ${low}..${numberOf(high)}/1${unitOf(high)}`,
      )
    // the unit may be written once, at the end
    const [from, to] = [unitOf(low) === '' ? `${low}${unitOf(high)}` : low, high]
    return { path, values: [from, to].map(bare) }
  }
  try {
    return choiceWritten(text)
  } catch (error) {
    if (!(error instanceof ChoiceError)) throw error
    throw new UsageError(`${where}: ${error.message}`)
  }
}

const numberOf = (text: string) => /^[\d.+-]*/.exec(text)![0]
const unitOf = (text: string) => text.slice(numberOf(text).length)
const bare = (text: string): string | number => (unitOf(text) === '' && text !== '' ? Number(text) : text)

/** What a line is bought for, as far as it is known: the target first, which a grid draws. */
const usual = [heldName, 'throughput', costName]

/** The measures that are looked at. Throws `UsageError`. */
export function sweepMeasures(options: SweepOptions, scenario: Scenario, line: Line): SweepMeasure[] {
  const known = studyMeasures(line.columns, scenario.shift.campaign)
  const asked =
    options.measure.length > 0
      ? options.measure.map((name) => measureAsked('--measure', name, known))
      : usual.flatMap((name) => known.find((measure) => measureName(measure) === name) ?? [])
  const quantile = asked.find(({ kind }) => kind === 'quantile')
  if (quantile)
    throw new UsageError(
      `--measure: ${measureName(quantile)} is a quantile over shifts, of which no difference is known; take another measure, such as output`,
    )
  return [...new Map(asked.map((measure) => [measureName(measure), measure]))].map(
    ([name, { label, unit }]) => ({ name, label, unit: unitName(unit, currencyOf(scenario)) }),
  )
}
