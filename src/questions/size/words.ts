/** Designs, promises and margins of a sizing in words. */

import { changesText as setText } from '../../answers/flow.js'
import { isCostInPart } from '../../answers/warnings.js'
import { nothing, printedUnit } from '../../catalogue/printed-units.js'
import {
  counted,
  figureText,
  grouped,
  type Parts,
  percentText,
  figureParts as printedParts,
  sentences,
  sharePartsOfShifts,
  wholePercent,
} from '../../report/format.js'
import type { JudgedAfresh, PromiseResult, SizedDesign, SizeResult } from './document.js'
import type { Shown } from './promise-figure.js'

type Figure = SizedDesign['promises'][number]

export { setText }

export const promisesText = ({ promises }: SizeResult): string =>
  promises.map(({ promise }) => promise).join(' and ')

/** The same, with how near counts as either where fresh shifts of the pick lie short: it is that which was accepted. */
export const heldText = (result: SizeResult): string =>
  result.promises
    .map((promise, index) => {
      const mean = result.picked?.promises[index]?.mean ?? promise.value
      const isShort = promise.isLeast ? mean < promise.value : mean > promise.value
      return isShort ? `${promise.promise}, ± ${amountText(promise.near, promise, result)}` : promise.promise
    })
    .join(' and ')

export const moneyText = (cost: number, { currency }: SizeResult): string => `${grouped(cost, 2)} ${currency}`

/** What a shift of a design costs by hand; null where that is not known, or leaves out a price in which the designs differ. */
export const priceText = ({ cost }: SizedDesign, result: SizeResult): string | null =>
  cost === null || isCostInPart(result) ? null : moneyText(cost, result)

/** What was simulated: shifts, or campaigns of several. */
export const observed = (count: number, { shift }: SizeResult, kind = ''): string =>
  counted(count, `${kind}${shift.campaign > 1 ? 'campaign' : 'shift'}`)

/** The pick, or without one the nearest; undefined where there is neither. */
export const endDesign = ({ designs, pick, nearest }: SizeResult): SizedDesign | undefined =>
  designs[pick ?? nearest?.design ?? -1]

/** That design and what fresh shifts say of it. Null where there is none, or none was simulated. */
export function endOf(result: SizeResult): { design: SizedDesign; afresh: JudgedAfresh } | null {
  const design = endDesign(result)
  const afresh = result.pick === null ? result.nearest?.afresh : result.picked
  return design && afresh ? { design, afresh } : null
}

/** What that is called: `pick`, `nearest design`, or where none is sure enough `most certain design`. */
export const endWord = ({ pick, drawn }: Pick<SizeResult, 'pick' | 'drawn'>): string =>
  pick !== null ? 'pick' : drawn ? 'most certain design' : 'nearest design'

/** A number in a unit of the display, without an interval: `12.3 min`. */
export function amountIn(value: number, unit: string, { display }: SizeResult, digits = 4): string {
  const { factor, word } = printedUnit(unit, display)
  return `${Number((value * factor).toPrecision(digits))} ${word}`.trimEnd()
}

/** A promise's figure in its parts: `96 %`, `(94 to 98 %)`; `12.3 ± 0.4 min`; without an interval `96 %`, `12.3 min`. */
export function figureParts(figure: Figure | undefined, unit: string, result: SizeResult): Parts {
  if (figure === undefined || figure.mean === null) return [nothing]
  const { mean, low, high } = figure
  if (low !== null && high !== null)
    return unit === 'share'
      ? sharePartsOfShifts({ mean, low, high })
      : printedParts({ mean, low, high, unit }, result.display)
  return [unit === 'share' ? wholePercent(mean) : amountIn(mean, unit, result)]
}

/** The same in one line. */
export const figureWords = (figure: Figure | undefined, unit: string, result: SizeResult): string =>
  figureParts(figure, unit, result).join(' ')

/** What figures have to spare of each promise, or fall short by: `88 % (85 to 90 %), 3 points to spare`. */
export function marginsOf(figures: readonly Figure[], result: SizeResult): string {
  const { promises } = result
  return promises
    .map((promise, index) => {
      const figure = figureWords(figures[index], promise.unit, result)
      const name = promises.length > 1 ? `${promise.promise}: ` : ''
      const { mean } = figures[index] ?? { mean: null }
      return mean === null ? `${name}${figure}` : `${name}${figure}, ${spareText(mean, promise, result)}`
    })
    .join('; ')
}

/** What fresh shifts have to spare of each promise. */
export const freshMargins = ({ promises, shifts }: JudgedAfresh, result: SizeResult): string =>
  `${marginsOf(promises, result)}, in ${observed(shifts, result, 'fresh ')} that the search did not see`

/** What they put out, a minute and a shift. */
export const outputText = ({ measures }: JudgedAfresh, { display }: SizeResult): string =>
  `${figureText(measures.throughput, display)}, ${figureText(measures.output, display)} a shift`

function spareText(mean: number, promise: PromiseResult, result: SizeResult): string {
  const spare = promise.isLeast ? mean - promise.value : promise.value - mean
  const amount = amountText(Math.abs(spare), promise, result)
  const verdict = /^0(\.0+)? /.test(`${amount} `)
    ? 'exactly as promised'
    : `${amount} ${spare < 0 ? 'short' : 'to spare'}`
  return Math.abs(spare) < promise.near
    ? `${verdict}, within the ${amountText(promise.near, promise, result)} that may go either way`
    : verdict
}

/** A difference of a promise's figure: `3 points`, `0.12 cases/min`. */
function amountText(amount: number, { unit }: PromiseResult, result: SizeResult): string {
  if (unit !== 'share') return amountIn(amount, unit, result, 2)
  const points = Number((amount * 100).toPrecision(amount * 100 < 10 ? 1 : 2))
  return `${points} ${points === 1 ? 'point' : 'points'}`
}

/** A promise with another value: `9 cases/min in at least 89 % of shifts`. */
export function promiseAt(promise: PromiseResult, by: number, result: SizeResult): string {
  const { value, unit, isLeast, measure } = promise
  const at = isLeast ? value + by : value - by
  // where the test itself ends halfway to none or all
  const level = unit === 'share' ? Math.max(value / 2, Math.min((1 + value) / 2, at)) : at
  const text = `at ${isLeast ? 'least' : 'most'} ${amountIn(level, unit, result)}`
  const inShifts = /^(.*?)\s+in\s+.+?\s+(of\s+(?:the\s+)?shifts)$/.exec(promise.promise)
  return inShifts ? `${inShifts[1]} in ${text} of shifts` : `${measure} ${text}`
}

/** Whether fresh shifts bear out that the pick was accepted, where they do not; empty where they do. */
export function contradiction(result: SizeResult): string[] {
  const { picked, promises, made } = result
  if (picked === null) return []
  const of = (shown: Shown) => promises.filter((_, index) => picked.promises[index]?.shown === shown)
  const named = (of: readonly PromiseResult[]) => of.map(({ promise }) => promise).join(' and ')
  const [missed, near] = [of('missed'), of('near')]
  return sentences(
    missed.length > 0 &&
      `The fresh shifts contradict the search: they show that it does not hold ${named(missed)}, by more than "within". A search with ${percentText(made.confidence)} confidence is sometimes wrong, and this one was: do not buy this design because of it. Search again with a smaller "within" or with another --seed.`,
    near.length > 0 &&
      `The fresh shifts show that it misses ${named(near)}, but part of the interval is inside "within". If that is not good enough, give a smaller "within".`,
  )
}
