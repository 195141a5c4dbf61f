/** What is chosen from and what must hold, as the options of a sizing ask it, or the scenario. */

import { unknown } from '../../answers/asked.js'
import type { Condition } from '../../answers/condition.js'
import { choicesOf } from '../../answers/designs.js'
import { type DrawsOptions, drawsAsked, touches } from '../../answers/draws.js'
import { measureName, measuresOf } from '../../answers/figures.js'
import { quantityWritten } from '../../answers/requirement.js'
import type { DrawsAsked } from '../../answers/with-inputs.js'
import type { MeasureKey } from '../../catalogue/of-line.js'
import { Line } from '../../line/line.js'
import { type Choice, isRising } from '../../scenario/choices.js'
import { misuse, readAt } from '../../scenario/fault.js'
import type { Evidence } from '../../scenario/known.js'
import { leastDraws, usualShifts } from '../../scenario/limits.js'
import { nearest } from '../../scenario/nearest.js'
import { shown } from '../../scenario/printable.js'
import type { ReadScenario } from '../../scenario/read.js'
import type { Scenario } from '../../scenario/schema.js'
import { parsePromise } from './promise.js'

/** What is to be found: the cheapest of which designs, and what it must hold. What is left out is taken from the scenario. */
export interface SizeOptions extends DrawsOptions {
  /** `PATH=v1,v2,v3` or `PATH=low..high/step`; the path `variant` takes names of variants. */
  choose?: readonly string[] | undefined
  /** Promises, such as `9 cases/min in 95 % of shifts`. */
  holds?: readonly string[] | undefined
  /** Paths whose first values come first of designs that cost the same. */
  order?: readonly string[] | undefined
  /** Paths of which more never hurts, as the user knows. */
  rising?: readonly string[] | undefined
  /** Share of the draws of the inputs in which the pick is to keep its promises, such as `90 %`; left out, their number is told and nothing asked of it. */
  sure?: string | undefined
  /** Every design is simulated for all shifts and judged by its figures alone: to check the search. */
  full?: boolean | undefined
  /** Most shifts of each design; 2000 where nobody says. */
  most?: number | undefined
}

export interface SizeAsked {
  choices: Choice[]
  holds: string[]
  order: string[]
  rising: string[]
  /** Rate of good cases that is promised, cases a second; null where none is. */
  rate: number | null
  /** What pencil and paper may hold a design against: that rate, and whether the target of the scenario. */
  needs: { rate: number | null; target: boolean }
  /** Null: inputs are held fixed, or nothing is known of any that is not chosen. */
  draws: DrawsAsked | null
  /** Share of the draws that the pick keeps at least; null where nobody asks. */
  sure: number | null
}

/** Reads the options. Throws `Fault` `asked`. */
export function sizeAsked(options: SizeOptions, loaded: ReadScenario): SizeAsked {
  const { size } = loaded.scenario
  const { choose = [], holds: held = [] } = options
  const choices = choicesOf(choose, loaded)
  const holds = held.length > 0 ? held : (size?.holds ?? [])
  if (holds.length === 0)
    throw misuse(
      'there is no promise: give --holds "9 cases/min in 95 % of shifts", or `size: holds:` in the scenario',
    )
  const known = choices.map((choice) => choice.path)
  const paths = (key: 'order' | 'rising') => {
    const given = options[key] ?? []
    const own = size?.[key] ?? []
    // what the scenario says of choices that the command line has put aside does not count
    if (given.length === 0 && choose.length > 0) return own.filter((each) => known.includes(each))
    const all = given.length > 0 ? given : own
    const odd = all.find((each) => !known.includes(each))
    if (odd !== undefined)
      throw misuse(
        `${given.length > 0 ? `--${key}` : `size.${key}`}: \`${shown(odd)}\` is not one of the choices; ${nearest(odd, known)}`,
      )
    return [...all]
  }
  const conditions = holds.map((text) => promiseOf(text, loaded.scenario))
  const least = (name: MeasureKey) =>
    conditions.filter(({ measure, isLeast }) => isLeast && measureName(measure) === name)
  const promised = least('throughput').filter(({ sign }) => sign.startsWith('>'))
  const highest = (of: readonly Condition[]) =>
    of.length > 0 ? Math.max(...of.map(({ bound }) => bound)) : null
  // a single shift may well pass what the line does on average: only most of them, or their mean, may not
  const isOften = ({ isShare, value }: Condition) => !isShare || value >= 0.5
  const rising = paths('rising')
  const falls = choices.find((choice) => rising.includes(choice.path) && !isRising(choice.values))
  if (falls)
    throw misuse(
      `--rising: the values of \`${shown(falls.path)}\` do not rise: give them from smallest to largest`,
    )
  return {
    choices,
    holds: [...holds],
    order: paths('order'),
    rising,
    rate: highest(promised),
    needs: { rate: highest(promised.filter(isOften)), target: least('target-held').some(isOften) },
    ...drawsOfSize(options, choices, loaded),
  }
}

/** The inputs that may be drawn: what is not chosen, nor a part of it, nor holds it. */
export const inputsBeside = (
  evidence: readonly Evidence[],
  choices: readonly { path: string }[],
): readonly Evidence[] => evidence.filter(({ path }) => !choices.some((each) => touches(path, each.path)))

/** Shifts of each draw that figures are of: what luck is left in them is taken off by the layout of draws and shifts. */
const shiftsOfDraw = 50

/** The draws and what is asked of them. */
function drawsOfSize(
  options: SizeOptions,
  choices: readonly Choice[],
  loaded: ReadScenario,
): Pick<SizeAsked, 'draws' | 'sure'> {
  const { most = usualShifts.toSize, draws: number, inputs, sure: written } = options
  if (number !== undefined && number < leastDraws)
    throw misuse(`--draws ${number}: at least ${leastDraws} draws are needed to know their spread`)
  const evidence = inputsBeside(loaded.evidence, choices)
  const draws = drawsAsked(options, { evidence }, most, shiftsOfDraw)
  if (written === undefined) return { draws, sure: null }
  const sure = readAt(`--sure ${shown(written)}`, () => {
    const share = quantityWritten(written, 'share')
    if (share > 0 && share < 1) return share
    throw misuse('it must be above 0 % and below 100 %, such as "90 %": draws cannot prove certainty')
  })
  if (inputs === 'fixed')
    throw misuse('--sure needs draws of the inputs, but --inputs fixed keeps them fixed: choose one')
  if (draws === null)
    throw misuse(
      '--sure: no value outside the choices says how well it is known, so there is nothing to draw. Write a value such as `36 in 40000 cases` or `{guess: 90 s, between: [60 s, 150 s]}`',
    )
  return { draws, sure }
}

/** A promise against the measures of a design. Throws `Fault` `asked`. */
export function promiseOf(text: string, scenario: Scenario, line = new Line(scenario)): Condition {
  const measures = measuresOf({ line, scenario })
  return readAt(`--holds ${shown(text)}`, () =>
    parsePromise(text, measures, (name) => unknown(name, measures)),
  )
}
