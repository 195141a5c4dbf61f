/** The first screen of a comparison: one recommendation or none, the designs in order, and what differs from the base. */

import { differenceParts, isSame } from '../../answers/difference.js'
import type { DifferenceFigure } from '../../answers/difference-figure.js'
import {
  checkParts,
  firstOf,
  limitsText,
  nextPart,
  part,
  restsOnPart,
  safetyPart,
} from '../../answers/first-screen.js'
import { cannotWork, isCostInPart, withVerdict } from '../../answers/warnings.js'
import { wholeOf } from '../../catalogue/figure.js'
import { lineRow, type MeasureKey, ofLine } from '../../catalogue/of-line.js'
import { printedUnit } from '../../catalogue/printed-units.js'
import { briefly } from '../../catalogue/unit-name.js'
import { figures, words } from '../../report/cell.js'
import { grouped, listed, numberText, rateText, sentences } from '../../report/format.js'
import type { Table } from '../../report/report.js'
import type { Said, Screen, Verdict } from '../../report/screen.js'
import { bestSentences } from './best-table.js'
import { baseName, type CompareResult } from './document.js'

/** The first screen of a comparison. */
export function compareScreen(result: CompareResult): Screen {
  const { made, display, variants } = result
  const best = bestSentences(result)
  const [base] = Object.values(variants)
  return {
    title: made.scenario.title,
    display,
    verdict: verdictOf(result, best),
    parts: [
      ...checkParts(result),
      rankedTable(result),
      ...differencesPart(result),
      ...part('Limit', [base && inBase(limitsText({ ...base, arrivals: {} }, null))]),
      ...nextPart(nextOf(result), result),
      ...restsOnPart(result, result.drawn !== undefined, { isEach: result.best !== null }),
      ...safetyPart,
    ],
  }
}

const inBase = (text: string): string =>
  text === '' ? '' : `In the base ${text.charAt(0).toLowerCase()}${text.slice(1)}`

/** Measures by which a design is recommended; a cost that leaves out what the designs differ in is none. */
const wishedOf = (result: CompareResult): readonly MeasureKey[] =>
  wished.filter((measure) => measure !== 'cost-per-1000' || !isCostInPart(result))

/** Whether a measure is shown to be better (1) or worse (-1) than that of the base; 0 where neither is shown. */
function shownWay(figure: DifferenceFigure | undefined, measure: MeasureKey): number {
  if (!figure?.isShown) return 0
  return (figure.mean ?? 0) > 0 === (ofLine[measure].better === 'up') ? 1 : -1
}

/** Variants that are shown better than the base in something, by whether they are shown worse in something else. */
function betterOnes(result: CompareResult): { free: string[]; atPrice: string[] } {
  const found = { free: [] as string[], atPrice: [] as string[] }
  for (const name of ranked(result).filter((each) => each !== baseName && !cannotWork(result, each))) {
    const ways = wishedOf(result).map((measure) => shownWay(result.differences[name]?.[measure], measure))
    if (ways.includes(1)) found[ways.includes(-1) ? 'atPrice' : 'free'].push(name)
  }
  return found
}

function verdictOf(result: CompareResult, best: readonly string[]): Verdict {
  if (result.best) return chosenOf(result, result.best.pick, best.join(' '))
  const { free, atPrice } = betterOnes(result)
  const [first, ...others] = free
  if (first !== undefined)
    return {
      word: 'RECOMMENDED',
      tone: 'good',
      text: `: ${first}, shown ${listed(shownIn(first, 1, result, 'wish'))} than the base.${others.length > 0 ? ` Also better than the base: ${firstOf(others)}. Which of them is best is not shown: --best finds out.` : ''}`,
    }
  const [dear] = atPrice
  if (dear !== undefined)
    return {
      word: 'NONE IS SHOWN',
      tone: 'warning',
      text: `to be better in all. ${dear} is shown ${listed(shownIn(dear, 1, result, 'wish'))} than the base, but also shown worse in ${listed(shownIn(dear, -1, result, 'topic'))}: that is for you to weigh.`,
    }
  return { word: 'NONE IS SHOWN', tone: 'warning', text: 'to be better than the base.' }
}

/** The verdict where the best was asked for: what selection says. */
function chosenOf(result: CompareResult, pick: string | null, text: string): Verdict {
  if (pick === null) return { word: 'NONE IS SHOWN', tone: 'warning', text: `to be best. ${text}` }
  return cannotWork(result, pick)
    ? { word: 'NOT SHOWN', tone: 'error', text: `: ${text}` }
    : { word: 'RECOMMENDED', tone: 'good', text: `: ${text.replace(/^Choose /, '')}` }
}

/** What a variant is shown to do better (`way` 1) or worse (-1) than the base: as a wish, such as `to put out more`, or by its topic. */
const shownIn = (name: string, way: number, result: CompareResult, word: 'wish' | 'topic'): string[] =>
  wishedOf(result).flatMap((measure) =>
    shownWay(result.differences[name]?.[measure], measure) === way ? [ofLine[measure][word]!] : [],
  )

/** What the interval of the rate says of the target. */
const targetWords = { holds: 'holds', open: 'not shown', short: 'does not hold' } as const

function onTarget({ variants, target }: CompareResult, name: string): keyof typeof targetWords | null {
  const figure = variants[name]?.measures.throughput
  if (target === null || !figure) return null
  const { low, high } = wholeOf(figure)
  if (low === null || high === null) return 'open'
  return low >= target ? 'holds' : high < target ? 'short' : 'open'
}

/** Measures in which a design may be better. */
export const wished: readonly MeasureKey[] = ['target-held', 'throughput', 'cost-per-1000']

/** Those that can work first, then those that hold the target; among these the cheapest, without prices that of most output. */
export function ranked(result: CompareResult): string[] {
  const { variants } = result
  const order = Object.keys(targetWords)
  const costs = Object.values(variants).map(({ measures }) => measures['cost-per-1000']?.mean ?? null)
  const isPriced = costs.every((cost) => cost !== null) && !isCostInPart(result)
  const keys = (name: string): number[] => {
    const { measures } = variants[name]!
    const held = onTarget(result, name)
    return [
      result.best?.pick === name ? 0 : 1,
      cannotWork(result, name) ? 1 : 0,
      held === null ? 0 : order.indexOf(held),
      isPriced ? measures['cost-per-1000']!.mean! : -(measures.throughput?.mean ?? 0),
    ]
  }
  return Object.keys(variants).sort((a, b) => {
    const [one, other] = [keys(a), keys(b)]
    const at = one.findIndex((value, index) => value !== other[index])
    return at < 0 ? 0 : one[at]! - other[at]!
  })
}

/** Designs that are told beside the base; all stand with --full. */
const mostDesigns = 3

function rankedTable(result: CompareResult): Table {
  const { variants, target, display } = result
  const names = ranked(result)
  const keys = (['throughput', 'cost-per-1000'] as const).filter((key) =>
    names.some((name) => (variants[name]!.measures[key]?.mean ?? 0) !== 0),
  )
  const head = (key: MeasureKey) => {
    const unit = names.map((name) => variants[name]!.measures[key]).find((figure) => figure)
    const word = unit ? printedUnit(briefly(unit).unit, display).word : ''
    return key === 'cost-per-1000' ? `${word} per 1000` : word
  }
  const told = names.filter((name, place) => place < mostDesigns || name === baseName)
  const more = names.length - told.length
  return {
    title: `Designs, best first${target === null ? '' : `; target ${rateText(target)}`}`,
    more,
    columns: [...words('design', ...(target === null ? [] : ['target'])), ...figures(...keys.map(head))],
    rows: told.map((name) => {
      const { measures } = variants[name]!
      const held = onTarget(result, name)
      return [
        name,
        ...(held === null ? [] : [cannotWork(result, name) ? 'cannot work' : targetWords[held]]),
        ...keys.map((key) => numberText(measures[key], display)),
      ]
    }),
  }
}

/** Variants whose differences are told: of two both, else of the first; all stand with --full. */
const toldOf = (variants: number): number => (variants > 2 ? 1 : variants)

/** A measure in a few words. */
const nameOf = (measure: string, { label }: DifferenceFigure): string =>
  measure === 'target-held' ? 'shifts that reach the target' : (lineRow(measure)?.column ?? label)

/** Differences from the base of the first variants, as far as they are shown, and what is not. */
function differencesPart(result: CompareResult): Said[] {
  const { differences, compared, display } = result
  const told = ranked(result).filter((name) => differences[name])
  return part(
    'Changes',
    told.slice(0, toldOf(told.length)).map((name) => {
      const all = compared.flatMap((measure) => {
        const figure = differences[name]![measure]
        return figure ? [{ what: nameOf(measure, figure), figure }] : []
      })
      const sizes = all
        .filter(({ figure }) => figure.isShown)
        .map(({ what, figure }) => `${what} ${differenceParts(figure, display).join(' ')}`)
      const open = all.filter(({ figure }) => !figure.isShown && !isSame(figure)).map(({ what }) => what)
      const none = `no difference is shown${open.length > 0 ? ` in ${listed(open)}` : ''}`
      return `${withVerdict(name, result)} against the base: ${sizes.join('; ') || none}.`
    }),
  )
}

/** What to do next, short: the reasons stand with --full. Open differences matter where nothing is recommended. */
function nextOf(result: CompareResult): string[] {
  const { differences, compared, best, made } = result
  const isRecommended = best ? best.pick !== null : betterOnes(result).free.length > 0
  const isOpen = Object.values(differences).some((figures) =>
    compared.some((measure) => figures[measure]?.isShown === false && !isSame(figures[measure])),
  )
  return sentences(
    isOpen &&
      !isRecommended &&
      `If a difference that is not shown matters to you, simulate more than ${grouped(made.shifts, 0)} shifts: --matters says how many.`,
    best === null && Object.keys(differences).length > 1 && 'Try what you would buy together as one variant.',
  )
}
