/** A comparison in sentences: what each design does better or worse than the base, how sure that is, and what it is worth. */

import { fewDiffer, isSame, rangeText, sizeText, unitText } from '../../answers/difference.js'
import type { DifferenceFigure } from '../../answers/difference-figure.js'
import { besideCost, cannotWork, withVerdict } from '../../answers/warnings.js'
import { lineRow, type MeasureKey } from '../../catalogue/of-line.js'
import { grouped, listed, percentText, sentences, wholePercent } from '../../report/format.js'
import { baseName, type CompareResult, type DesignResult } from './document.js'
import { breakEvenText, worthText } from './worth-table.js'

/** What is told first. */
const order: readonly string[] = [
  'target-held',
  'throughput',
  'cost-per-1000',
  'time-in-system',
] satisfies MeasureKey[]

/** How often a design holds the target, and the base. */
export const heldWords = (...designs: [design: DesignResult | undefined, base: DesignResult | undefined]) =>
  `in ${designs.map((each) => wholePercent(each?.measures['target-held']?.mean)).join(' of the shifts instead of ')}`

/** One paragraph a variant, in their order. */
export function designSentences(result: CompareResult): string[] {
  const beside = result.compared.includes('cost-per-1000') ? besideCost(result) : ''
  return sentences(...Object.keys(result.differences).map((name) => sentence(name, result)), beside)
}

function sentence(name: string, result: CompareResult): string {
  const { variants, differences, compared, display, made } = result
  const [base, design] = [Object.values(variants)[0]!, variants[name]!]
  const figures = differences[name]!
  const who = withVerdict(name, result)
  const ofBase = cannotWork(result, baseName) ? ' of the base, which cannot work as described' : ''
  const told = [
    ...order.filter((each) => compared.includes(each)),
    ...compared.filter((each) => !order.includes(each)),
  ]
  const known = told.flatMap((measure) => (figures[measure] ? [[measure, figures[measure]] as const] : []))
  const shown = known.filter(([, figure]) => figure.isShown)
  const claim = ([measure, figure]: readonly [string, DifferenceFigure]) => {
    const isMore = (figure.mean ?? 0) > 0
    const size = sizeText(figure, display)
    if (measure === 'target-held') return `holds the target ${heldWords(design, base)}${ofBase}`
    return (
      lineRow(measure)?.claim?.(size, isMore) ?? `has ${size} ${isMore ? 'more' : 'less'}: ${figure.label}`
    )
  }
  const sureness = `${percentText(made.confidence)}`
  const certain =
    shown.length === 0
      ? ''
      : ` ${shown.length === 1 ? 'This difference is' : shown.length === 2 ? 'Both differences are' : `All ${shown.length} differences are`} shown at ${sureness}.`
  return sentences(
    shown.length > 0
      ? `${who} ${listed(shown.map(claim))}.${certain}`
      : `${who}: no difference shown from the base.`,
    ...unshown(
      known.filter(([, figure]) => !figure.isShown),
      result,
      shown.length > 0,
    ),
    worthText(design, result),
    breakEvenText(design),
  ).join(' ')
}

/** What the shifts do not show, with how large it may be, and how many shifts would show what matters. */
function unshown(
  figures: readonly (readonly [string, DifferenceFigure])[],
  { display, made }: CompareResult,
  isElse: boolean,
): string[] {
  const words = figures.flatMap(([measure, figure]) => {
    const what = lineRow(measure)?.topic ?? figure.label
    if (figure.few) return [`${what} (${fewDiffer(figure.few.events)}: too few to tell)`]
    if (figure.low === null || figure.high === null) return []
    if (isSame(figure)) return [`${what} (the same in every shift)`]
    const unit = unitText(figure, display)
    const more = figure.matters?.shifts ? figure.matters.shifts - made.shifts : 0
    const hint =
      more > 0 ? `; ${grouped(more, 0)} more shifts would show the difference that matters to you` : ''
    return [`${what} (${rangeText(figure, display)} ${unit}${hint})`]
  })
  return words.length > 0 ? [`No difference ${isElse ? 'is ' : ''}shown in ${listed(words)}.`] : []
}

/** By how much common random numbers shrank the variance of the differences. */
export function pairingLine({ differences, compared }: CompareResult): string[] {
  const parts = compared.flatMap((measure) => {
    const ratios = Object.values(differences)
      .map((each) => each[measure]?.varianceRatio)
      .filter((ratio): ratio is number => ratio !== null && ratio !== undefined)
    if (ratios.length === 0) return []
    const [low, high] = [Math.min(...ratios), Math.max(...ratios)].map((ratio) =>
      String(Number(ratio.toPrecision(2))),
    )
    return [`${lineRow(measure)?.topic ?? measure} ${low === high ? low : `${low} to ${high}`}`]
  })
  return sentences(
    parts.length > 0 &&
      `All designs used the same random numbers. This makes the variance of the differences smaller than separate numbers would, by these factors: ${parts.join(', ')}.`,
  )
}
