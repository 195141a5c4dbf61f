/** What a sweep varies and looks at, as its options ask it. */

import { measureAsked } from '../../answers/asked.js'
import { variantPath } from '../../answers/designs.js'
import type { DrawsOptions } from '../../answers/draws.js'
import { measureName, measuresOf } from '../../answers/figures.js'
import type { MeasureKey } from '../../catalogue/of-line.js'
import { currencyOf, unitName } from '../../catalogue/unit-name.js'
import type { Line } from '../../line/line.js'
import { type Choice, choiceWritten } from '../../scenario/choices.js'
import { misuse, readAt } from '../../scenario/fault.js'
import { shown } from '../../scenario/printable.js'
import type { Scenario } from '../../scenario/schema.js'
import { costName, heldName, type SweepKind, type SweepMeasure } from './document.js'
import { amountOf } from './factor.js'

/** What is varied, and what is looked at. */
export interface SweepOptions extends DrawsOptions {
  /** `PATH=low..high/step` or `PATH=v1,v2,v3`; with `each` and `plan` `PATH=low..high`. */
  vary?: readonly string[] | undefined
  /** Measures to look at; the target, the rate and the cost where nobody says. */
  measure?: readonly string[] | undefined
  /** One input at a time, its two ends against the scenario as it stands; all of them where none is named. */
  each?: boolean | undefined
  /** So many designs that fill the space of three factors or more. */
  plan?: number | undefined
}

/** A factor with its values in one unit, ascending. */
export interface Varied {
  path: string
  unit: string
  values: number[]
}

/** Most values of a factor of a curve or a grid, and most points of a grid: more is a slip of the step. */
const mostOfCurve = 200
const mostOfGrid = 2500

/** What kind of sweep the options ask for. Throws `Fault` `asked`. */
export function kindOf({ vary = [], each, plan }: SweepOptions): SweepKind {
  if (each && plan !== undefined) throw misuse('use either --each or --plan, not both')
  if (each) return 'each'
  if (plan !== undefined) {
    if (vary.length < 3)
      throw misuse(
        `--plan takes three factors or more, not ${vary.length}: for fewer factors use a curve or a grid`,
      )
    if (plan < vary.length + 2)
      throw misuse(
        `--plan ${plan}: ${vary.length} factors need at least ${vary.length + 2} designs; ten per factor are usual`,
      )
    return 'plan'
  }
  if (vary.length === 0)
    throw misuse('nothing to vary: give --vary "PATH=low..high/step", or --each for every input')
  if (vary.length > 2)
    throw misuse(
      `${vary.length} factors are too many for a curve or a grid: give --plan N to vary all at once, or --each to vary one at a time`,
    )
  return vary.length === 1 ? 'curve' : 'grid'
}

/** The factors that were asked for. Throws `Fault` `asked`. */
export function variedOf({ vary = [] }: SweepOptions, kind: SweepKind): Varied[] {
  const isOfEnds = kind === 'each' || kind === 'plan'
  const varied = vary.map((text) => variedWritten(text, isOfEnds))
  const twice = varied.find(({ path }, index) => varied.findIndex((other) => other.path === path) < index)
  if (twice) throw misuse(`${shown(twice.path)} is varied twice: give all its values in one --vary`)
  const points = varied.reduce((product, { values }) => product * values.length, 1)
  if (!isOfEnds && varied.some(({ values }) => values.length > mostOfCurve))
    throw misuse(`a factor may have at most ${mostOfCurve} values here: take larger steps`)
  if (kind === 'grid' && points > mostOfGrid)
    throw misuse(`${points} points are too many: at most ${mostOfGrid}. Take larger steps`)
  return varied
}

function variedWritten(text: string, isOfEnds: boolean): Varied {
  const where = `--vary ${shown(text)}`
  const { path, values } = choiceOf(text, isOfEnds, where)
  if (path === variantPath)
    throw misuse(`${where}: a sweep varies numbers; for variants use tapeshift compare`)
  const amounts = values.map((value) => {
    const amount = amountOf(value)
    if (amount === null)
      throw misuse(
        `${where}: \`${shown(value)}\` is not a number with a known unit; for other values use tapeshift compare`,
      )
    return amount
  })
  const units = [...new Set(amounts.map(({ unit }) => unit))]
  if (units.length > 1)
    throw misuse(
      `${where}: its values must have one unit, not ${units.map((unit) => unit || 'none').join(' and ')}`,
    )
  const numbers = [...new Set(amounts.map(({ number }) => number))].sort((a, b) => a - b)
  if (numbers.length < 2) throw misuse(`${where}: give at least two different values`)
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
      throw misuse(`${where}: a range needs a step, such as ${low}..${numberOf(high)}/1${unitOf(high)}`)
    // the unit may be written once, at the end
    const [from, to] = [unitOf(low) === '' ? `${low}${unitOf(high)}` : low, high]
    return { path, values: [from, to].map(bare) }
  }
  return readAt(where, () => choiceWritten(text))
}

const numberOf = (text: string) => /^[\d.+-]*/.exec(text)![0]
const unitOf = (text: string) => text.slice(numberOf(text).length)
const bare = (text: string): string | number => (unitOf(text) === '' && text !== '' ? Number(text) : text)

/** What a line is bought for, as far as it is known: the target first, which a grid draws. */
const usual: readonly MeasureKey[] = [heldName, 'throughput', costName]

/** The measures that are looked at. Throws `Fault` `asked`. */
export function sweepMeasures(
  { measure = [] }: SweepOptions,
  scenario: Scenario,
  line: Line,
): SweepMeasure[] {
  const known = measuresOf({ line, scenario })
  const asked =
    measure.length > 0
      ? measure.map((name) => measureAsked('--measure', name, known))
      : usual.flatMap((name) => known.find((measure) => measureName(measure) === name) ?? [])
  const quantile = asked.find(({ kind }) => kind === 'quantile')
  if (quantile)
    throw misuse(
      `--measure: ${measureName(quantile)} is a quantile over shifts, and there is no interval for its difference; choose another measure, such as output`,
    )
  return [...new Map(asked.map((measure) => [measureName(measure), measure]))].map(
    ([name, { label, unit }]) => ({ name, label, unit: unitName(unit, currencyOf(scenario)) }),
  )
}
