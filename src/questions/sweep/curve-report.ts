/** What a response curve says: where a level is crossed, what each step brings, where more stops helping, and what is cheapest. */
import type { DifferenceFigure } from '../../answers/difference-figure.js'
import { besideCost, costWords, isCostInPart } from '../../answers/warnings.js'
import { figures as ofFigures, words } from '../../report/cell.js'
import { grouped, listed, percent, percentText, rateText } from '../../report/format.js'
import type { Table } from '../../report/report.js'
import {
  type CostOf,
  type CurveOf,
  costName,
  type Factor,
  heldName,
  type SweepMeasure,
  type SweepResult,
} from './document.js'
import { heldLevels } from './kinds.js'
import {
  butThere,
  differenceCell,
  differenceSize,
  differenceWords,
  meanText,
  measureSubject,
  measureWords,
  placeText,
  pointCell,
  pointText,
  valueText,
} from './words.js'

/** The sentences at the head of the report. */
export const curveHeadline = (result: SweepResult): string[] => [
  ...result.measures.flatMap((measure) => crossingLines(result, measure)),
  ...result.measures.map((measure) => stepsLine(result, measure)),
  ...handLine(result),
  ...costLine(result),
]

/** Where each level is crossed; of a level that is not crossed on which side the curve lies. */
function crossingLines(result: SweepResult, measure: SweepMeasure): string[] {
  const { target, points, curve } = result
  const [factor] = result.factors as [Factor]
  const isHeld = measure.name === heldName
  if (target === null || (!isHeld && measure.name !== 'throughput')) return []
  const means = points.map(({ measures }) => measures[measure.name]?.mean ?? Number.NaN)
  const mean = (place: number) => (isHeld ? percent(means[place]!) : meanText(means[place]!, measure, result))
  const at = (place: number) => placeText(result, place)
  const where = (level: number): string => {
    const own = curve!.measures[measure.name]!.crossings.filter((each) => each.level === level)
    if (own.length > 0)
      return listed(
        own.map(
          ({ at: value, from, rises }) =>
            `${rises ? 'from' : 'up to'} about ${valueText(value, factor, 3)}, between ${at(from)} (${mean(from)}) and ${at(from + 1)} (${mean(from + 1)})`,
        ),
      )
    if (means.every((each) => each >= level)) return 'at every value tried'
    const most = means.reduce((best, each, place) => (each > means[best]! ? place : best), 0)
    return `at no value tried: at most ${mean(most)}, at ${at(most)}`
  }
  const words = isHeld
    ? `Over ${factor.path} the target of ${rateText(target)} is reached in ${levelsWords(where)}`
    : `On average it is reached ${where(target)}`
  return [`${words}${butSomeCannotWork(result)}.`]
}

/** Ranges of values that are named before their number is told. */
const mostRanges = 3

/** Values at which the line cannot work as described, in one breath with what it does there; empty where it can at all. */
function butSomeCannotWork(result: SweepResult): string {
  const { points } = result
  const places = points.flatMap(({ errors }, place) => (errors ? [place] : []))
  if (places.length === 0) return ''
  const where =
    places.length === points.length
      ? 'every value tried'
      : runsOf(places).length > mostRanges
        ? `${places.length} of the ${points.length} values tried`
        : rangesText(places, result)
  return `; but at ${where} the line cannot work as described`
}

/** `90 % of the shifts from …; in 95 % and 99 % of the shifts at no value tried …`: levels of which the same is said stand together. */
function levelsWords(where: (level: number) => string): string {
  const said = new Map<string, number[]>()
  for (const level of heldLevels) said.set(where(level), [...(said.get(where(level)) ?? []), level])
  return [...said]
    .map(([words, levels]) => `${listed(levels.map((level) => percentText(level)))} of the shifts ${words}`)
    .join('; in ')
}

/** What steps bring: the largest that is shown, where the slope changes most, and beyond which value nothing is shown. */
function stepsLine(result: SweepResult, measure: SweepMeasure): string {
  const of = result.curve!.measures[measure.name]!
  const isCost = measure.name === costName
  const subject = isCost ? costWords(measureSubject(measure), result) : measureSubject(measure)
  const at = (place: number) => placeText(result, place)
  const last = result.points.length - 1
  const shown = of.steps.filter(({ difference }) => difference.isShown)
  const parts: string[] = []
  if (of.knee !== null) {
    const [before, after] = [of.steps[of.knee - 1]!, of.steps[of.knee]!]
    parts.push(
      `from ${at(before.from)} to ${at(before.to)} ${differenceWords(before.difference, result)}, from there to ${at(after.to)} ${differenceWords(after.difference, result)}; at ${at(of.knee)} the slope changes most`,
    )
  } else if (shown.length > 0) {
    const most = shown.reduce((a, b) =>
      Math.abs(b.difference.mean ?? 0) > Math.abs(a.difference.mean ?? 0) ? b : a,
    )
    parts.push(
      `the largest step that is shown is from ${at(most.from)} to ${at(most.to)}, ${differenceWords(most.difference, result)}`,
    )
    if (of.steps.length > 1) parts.push('no change of slope is shown')
  }
  if (of.enough === 0) {
    const whole = of.onward[0] ?? of.steps[0]!
    return `${subject}: no difference is shown anywhere from ${at(0)} to ${at(last)} (over the whole range ${differenceSize(whole.difference, result)}).`
  }
  if (of.enough !== null) {
    const rest = of.onward.find(({ from }) => from === of.enough) ?? of.steps[of.enough]!
    parts.push(
      `beyond ${at(of.enough)} the rest up to ${at(last)} brings ${differenceWords(rest.difference, result)}`,
    )
  } else if (of.knee === null || of.steps.length > 0) parts.push(lastWords(result, of))
  return `${subject}: ${parts.join('; ')}.`
}

/** Where something is shown up to the end of what was tried. */
function lastWords(result: SweepResult, { steps, onward }: CurveOf): string {
  const end = steps.at(-1)!
  const { from, to, difference } = end.difference.isShown
    ? end
    : (onward.filter((each) => each.difference.isShown).at(-1) ?? end)
  return `even at the last value tried an effect is shown, from ${placeText(result, from)} to ${placeText(result, to)} ${differenceWords(difference, result)}`
}

function handLine({ display, factors, curve }: SweepResult): string[] {
  const { byHand } = curve!
  if (!byHand) return []
  const { machine, ceiling, littleGain } = byHand
  const speed = display === 'us' ? { size: 0.3048 / 60, word: 'ft/min' } : { size: 1 / 60, word: 'm/min' }
  const most =
    ceiling === null
      ? `no head of ${machine} needs time to swing back`
      : `at any belt speed ${machine} passes at most ${rateText(ceiling)}: one case per reset of its slowest head`
  // a speed far beyond all that was tried helps nobody
  const isNear = littleGain !== null && littleGain > 0 && littleGain < 1.25 * factors[0]!.si.values.at(-1)!
  const little = !isNear
    ? ''
    : `; from ${Number((littleGain / speed.size).toPrecision(3))} ${speed.word} on another m/min brings less than 0.25 cases/min`
  return [`By hand calculation, ${most}${little}.`]
}

function costLine(result: SweepResult): string[] {
  const { cost } = result.curve!
  const measure = result.measures.find(({ name }) => name === costName)
  if (measure && isCostInPart(result)) return [besideCost(result)]
  if (!cost || !measure) return []
  const figure = pointText(result.points[cost.least]!.measures[costName], costName, result)
  const others = cost.notDearer.filter((place) => place !== cost.least)
  const also =
    others.length === 0
      ? 'every other value tried is shown to cost more'
      : `${rangesText(others, result)} ${others.length === 1 ? 'is' : 'are'} not shown to cost more`
  const against = cost.base === null ? '' : `; ${breakEvenWords(result, measure, cost)}`
  return [
    `${costWords('1000 cases', result)} cost least at ${placeText(result, cost.least)}, ${figure}${butThere(result.points[cost.least]!)}; ${also}${against}.`,
  ]
}

/** Places that follow each other as one range: `5 m to 8 m and 10 m`. */
const rangesText = (places: readonly number[], result: SweepResult): string =>
  listed(
    runsOf(places).map((run) =>
      [...new Set([run[0]!, run.at(-1)!])].map((place) => placeText(result, place)).join(' to '),
    ),
  )

/** Places in runs of such that follow each other. */
function runsOf(places: readonly number[]): number[][] {
  const runs: number[][] = []
  for (const place of places) {
    const run = runs.at(-1)
    if (run && run.at(-1) === place - 1) run.push(place)
    else runs.push([place])
  }
  return runs
}

/** Points against the scenario as it stands, and where the curve of figures breaks even with it. */
function breakEvenWords(
  result: SweepResult,
  measure: SweepMeasure,
  { base, differences, breakEven }: CostOf,
): string {
  const [factor] = result.factors as [Factor]
  const own = factor.base === null ? '' : `${valueText(factor.base, factor)}, `
  const places = (is: (figure: DifferenceFigure) => boolean) =>
    differences.flatMap((figure, place) => (is(figure) ? [place] : []))
  const groups: [string, number[]][] = [
    ['is shown to cost less at', places(({ isShown, mean }) => isShown === true && mean! < 0)],
    ['breaks even, as far as is shown, at', places(({ isShown }) => isShown !== true)],
    ['is shown to cost more at', places(({ isShown, mean }) => isShown === true && mean! > 0)],
  ]
  const words = groups
    .filter(([, each]) => each.length > 0)
    .map(([what, each]) => `${what} ${rangesText(each, result)}`)
  const met =
    breakEven.length === 0
      ? ''
      : `; by the figures alone it breaks even at about ${listed(breakEven.map((each) => valueText(each.at, factor, 3)))}`
  return `against the scenario as it stands (${own}${meanText(base!, measure, result)}) it ${listed(words)}${met}`
}

/** The tables of a curve. */
export function curveTables(result: SweepResult): Table[] {
  const factor = result.factors[0]!
  const { measures, points } = result
  const minutesOf = (value: number) => factor.minutes?.[factor.values.indexOf(value)]
  return [
    {
      title: 'Each value by itself',
      columns: [
        ...words(factor.path),
        ...ofFigures(
          ...(factor.minutes ? ['buffer at the target, by hand calculation'] : []),
          ...measures.map(measureWords),
        ),
      ],
      behind: 'curve',
      rows: points.map(({ at, measures: figures, errors }, place) => [
        `${placeText(result, place)}${errors ? ' (cannot work)' : ''}`,
        ...(factor.minutes ? [`${grouped(minutesOf(at[0]!)!, 1)} min`] : []),
        ...measures.map(({ name }) => pointCell(figures[name], name)),
      ]),
    },
    {
      title: 'Effect of each step',
      note: 'In brackets: not shown.',
      columns: [...words('step'), ...ofFigures(...measures.map(measureWords))],
      behind: 'curve',
      rows: points
        .slice(1)
        .map((_, place) => [
          `${placeText(result, place)} to ${placeText(result, place + 1)}`,
          ...measures.map(({ name }) =>
            differenceCell(
              result.curve!.measures[name]!.steps.find(({ from }) => from === place)?.difference,
              result,
            ),
          ),
        ]),
    },
  ]
}
