/** The first screen of a sweep: one recommendation or none, what the sweep says in a few sentences, and what to do next. */

import { checkParts, firstOf, nextPart, part, restsOnPart, safetyPart } from '../../answers/first-screen.js'
import { isCostInPart } from '../../answers/warnings.js'
import type { MeasureKey } from '../../catalogue/of-line.js'
import { briefly } from '../../catalogue/unit-name.js'
import { counted, figureText, grouped, percentText, rateText, sentences } from '../../report/format.js'
import type { Screen, Verdict } from '../../report/screen.js'
import { labelAndPath, labelOf } from '../../scenario/labels.js'
import {
  costName,
  type Factor,
  heldName,
  type SweepMeasure,
  type SweepPoint,
  type SweepResult,
} from './document.js'
import { rankedEffects, shownInputs } from './effects-report.js'
import { heldLevels } from './kinds.js'
import { nextOfSweep, sweepReport } from './report.js'
import { measureSubject, placeText, pointText, valueText } from './words.js'

/** Sentences of the report that are told; more stand with --full. */
const mostSaid = 2

/** The first screen of a sweep. */
export function sweepScreen(result: SweepResult): Screen {
  const { made, display, points } = result
  const { headline } = sweepReport(result)
  const failing = points.filter(({ errors }) => errors).length
  return {
    title: made.scenario.title,
    display,
    verdict: verdictOf(result),
    parts: [
      ...checkParts(result),
      ...part(
        'Points',
        [
          failing > 0 &&
            `At ${grouped(failing, 0)} of ${counted(points.length, 'point')} the line cannot work as described.`,
        ],
        'error',
      ),
      ...part('Found', saidOf(result, headline)),
      ...nextPart(nextOfSweep(result), result),
      ...restsOnPart(result, result.drawn !== undefined, { isEach: true }),
      ...safetyPart,
    ],
  }
}

/** What the sweep says: of inputs that move alone, and of a plan, the names of those that matter. */
function saidOf(result: SweepResult, headline: readonly string[]): string[] {
  const { kind, measures } = result
  if (kind === 'curve') return targetText(result)
  if (kind === 'grid') return headline.slice(0, mostSaid)
  return measures.map((measure) => {
    const shown = shownOf(result, measure)
    return `${measureSubject(measure)}: ${shown.length === 0 ? 'nothing is shown to change it' : `${firstOf(shown.map(labelOf), 2)} ${shown.length === 1 ? 'is' : 'are'} shown to change it`}.`
  })
}

/** Where no value reaches what is asked. */
const nowhere = 'at no value tried'

/** From which value on the target is reached how often, and on average; nothing without a target. */
function targetText({ target, factors, points, curve }: SweepResult): string[] {
  const [factor] = factors as [Factor]
  if (target === null) return []
  const where = (name: MeasureKey, level: number): string => {
    const crossings = curve!.measures[name]!.crossings.filter((each) => each.level === level)
    // of a curve that crosses more than once the first place where it comes to reach what is asked
    const [crossing] = crossings.toSorted((a, b) => Number(b.rises) - Number(a.rises))
    if (crossing) return `${crossing.rises ? 'from' : 'up to'} about ${valueText(crossing.at, factor, 3)}`
    const isMet = points.every(({ measures }) => (measures[name]?.mean ?? Number.NaN) >= level)
    return isMet ? 'at every value tried' : nowhere
  }
  return sentences(
    curve!.measures[heldName] &&
      `The target of ${rateText(target)} is reached ${oftenText((level) => where(heldName, level))}.`,
    curve!.measures.throughput && `The average output reaches the target ${where('throughput', target)}.`,
    (curve!.measures[heldName]?.crossings.length ?? 0) > 0 &&
      'Between the values tried this is interpolated.',
  )
}

/**
 * `in 90 % of the shifts at every value tried; in 95 % from about 5 m`: of levels that are reached at the same values the highest, of those that
 * are reached at none the lowest.
 */
function oftenText(where: (level: number) => string): string {
  const byPlace = new Map<string, number[]>()
  for (const level of heldLevels) byPlace.set(where(level), [...(byPlace.get(where(level)) ?? []), level])
  return [...byPlace]
    .map(([place, levels], index) => {
      const level = place === nowhere ? Math.min(...levels) : Math.max(...levels)
      return `in ${percentText(level)}${index === 0 ? ' of the shifts' : ''} ${place}`
    })
    .join('; ')
}

/** The recommendation, or that none is shown. */
function verdictOf(result: SweepResult): Verdict {
  if (result.kind === 'curve') return curveVerdict(result)
  if (result.kind === 'grid')
    return {
      word: 'NONE IS SHOWN',
      tone: 'plain',
      text: 'to be best: a grid compares figures, and judges no difference.',
    }
  const measure = judgedMeasure(result)
  return measure
    ? {
        word: 'MATTERS MOST',
        tone: 'plain',
        text: `: ${labelAndPath(shownOf(result, measure)[0]!)}, for ${measureSubject(measure).toLowerCase()}.`,
      }
    : { word: 'NONE IS SHOWN', tone: 'warning', text: 'to matter: no difference of any input is shown.' }
}

/** Paths that are shown to change a measure, the largest first: of inputs that move alone, or of the factors of a plan. */
function shownOf(result: SweepResult, measure: SweepMeasure): string[] {
  const shown = result.each
    ? shownInputs(result, measure)
    : rankedEffects(result.plan![measure.name]).filter(({ isShown }) => isShown)
  return shown.map(({ path }) => path)
}

/** The measure that the verdict is of: the cost of a curve, and of inputs that move alone or by a plan the first of which anything is shown. */
export function judgedMeasure(result: SweepResult): SweepMeasure | undefined {
  const { kind, measures, curve } = result
  if (kind === 'grid') return undefined
  if (kind === 'curve')
    return curve?.cost && !isCostInPart(result) ? measures.find(({ name }) => name === costName) : undefined
  return measures.find((measure) => shownOf(result, measure).length > 0)
}

/** A value of a curve: the one that is shown to cost less than the scenario, or beyond which nothing more is shown. */
function curveVerdict(result: SweepResult): Verdict {
  const { factors, points, measures } = result
  const { cost, measures: along } = result.curve!
  const [factor] = factors as [Factor]
  const named = (place: number) => `${labelOf(factor.path)} = ${placeText(result, place)}`
  if (cost && !isCostInPart(result)) {
    const least = points[cost.least]!
    const leastCost = least.measures[costName]
    const others = cost.notDearer
      .filter((place) => place !== cost.least)
      .map((place) => placeText(result, place))
    const less = cost.differences[cost.least]
    const figure = figureText(leastCost && briefly(leastCost), result.display)
    if (!less?.isShown || less.mean! > 0)
      return {
        word: 'NONE IS SHOWN',
        tone: 'warning',
        text: `to cost less than the scenario as it stands; the least is ${figure} per 1000 cases, at ${named(cost.least)}.`,
      }
    return recommended(
      least,
      `: ${named(cost.least)}, where 1000 cases cost ${figure}, shown less than the scenario as it stands.${heldText(result, least)}${others.length > 0 ? ` Not shown to cost more: ${firstOf(others)}.` : ''}`,
    )
  }
  const measure = measures.find(({ name }) => along[name]?.enough)
  if (measure) {
    const enough = along[measure.name]!.enough!
    return recommended(
      points[enough]!,
      `: ${named(enough)}; beyond it no more is shown for ${measureSubject(measure).toLowerCase()}.`,
    )
  }
  const isFlat = measures.every(({ name }) => along[name]?.enough === 0)
  const last = valueText(factor.values.at(-1)!, factor)
  return {
    word: 'NONE IS SHOWN',
    tone: 'warning',
    text: `to be enough: ${isFlat ? `${labelOf(factor.path)} makes no difference that is shown, from ${valueText(factor.values[0]!, factor)} to ${last}` : `the figures still change at the last value tried, ${labelOf(factor.path)} = ${last}`}.`,
  }
}

/** Never a value at which `check` says that the line cannot work. */
const recommended = ({ errors }: SweepPoint, text: string): Verdict =>
  errors
    ? {
        word: 'NOT SHOWN',
        tone: 'error',
        text: `${text.replace(/\.$/, '')}, but there the line cannot work as described.`,
      }
    : { word: 'RECOMMENDED', tone: 'good', text }

/** How often the target is reached there; empty where that was not asked for. */
function heldText(result: SweepResult, point: SweepPoint): string {
  const figure = point.measures[heldName]
  return figure ? ` There the target is reached in ${pointText(figure, heldName, result)} of the shifts.` : ''
}
