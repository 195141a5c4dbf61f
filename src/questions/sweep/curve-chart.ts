/** Chart of a response curve: each value tried with its interval, where the slope changes, where more stops helping. */

import type { ChartConfiguration, ChartDataset } from 'chart.js'
import { costName, heldName } from '../../answers/usual-measures.js'
import { costWords, isCostInPart } from '../../answers/warnings.js'
import { percentText } from '../../report/format.js'
import { spanAxis } from '../../report/marks/axes.js'
import {
  belowHeight,
  type Chart,
  chartWidth,
  foot,
  frame,
  headHeight,
  palette,
  roomAtRight,
} from '../../report/marks/chart.js'
import { type Level, levelLines, marks, ownValue, regionBeyond } from '../../report/marks/whiskers.js'
import { chartFile, factorAxis, measureAxis, spanOf } from './axis.js'
import type { CurveOf, Factor, SweepMeasure, SweepResult } from './document.js'
import { measureSubject, pointText, valueText } from './words.js'

/** Between the subtitle and the plot, px: two lines of text stand in it. */
const gap = 46
const plotHeight = 340
/** A ceiling is drawn up to so many times the highest figure. */
const nearCeiling = 1.5

/** The curve of a measure; null where no point has it. */
export function sweepCurveChart(result: SweepResult, measure: SweepMeasure): Chart | null {
  const factor = result.factors[0]!
  const curve = result.curve!
  const of = curve.measures[measure.name]!
  const axis = measureAxis(measure, result)
  const points = result.points.flatMap(({ at, measures }) => {
    const { mean, low, high } = measures[measure.name]!
    if (mean === null) return []
    const scaled = (value: number) => value * axis.factor
    return [{ x: at[0]!, mean: scaled(mean), low: scaled(low ?? mean), high: scaled(high ?? mean) }]
  })
  if (points.length === 0) return null
  const levels = levelsOf(result, measure, of, axis.factor)
  const span = spanOf(
    [...points.flatMap(({ low, high }) => [low, high]), ...levels.map(({ y }) => y)],
    7,
    measure.unit === 'share' ? { min: 0, max: 100 } : {},
  )
  const title = titleOf(result, measure, of, factor)
  const subtitle = `Line: the figure at each value tried, all on the same random numbers. Band: its ${percentText(result.made.confidence)} interval. What is shown goes by differences shift by shift, which tell more than the bands.`
  const options = frame(title, subtitle, gap)
  const at = (place: number) => points[place]!
  const config: ChartConfiguration<'scatter'> = {
    type: 'scatter',
    data: { datasets: datasetsOf(points) },
    options: {
      ...options,
      scales: {
        x: factorAxis(factor),
        y: spanAxis(span, axis.title),
        ...(levels.length > 0 ? { room: roomAtRight(132) } : {}),
      },
    },
    plugins: [
      ...(of.enough === null || of.enough === 0
        ? []
        : [
            regionBeyond(
              result.points[of.enough]!.at[0]!,
              `beyond ${valueText(result.points[of.enough]!.at[0]!, factor)} nothing more is shown`,
            ),
          ]),
      levelLines(levels),
      ...(factor.base === null
        ? []
        : [ownValue(factor.base, `as it stands: ${valueText(factor.base, factor)}`)]),
      ...(points.length === result.points.length
        ? [
            marks(
              marksOf(result, measure, of, at),
              points.map(({ x, mean }) => ({ x, y: mean })),
            ),
          ]
        : []),
      foot(result),
    ],
  }
  return {
    name: chartFile('curve', measure.name),
    title,
    alt: altOf(result, measure, factor),
    width: chartWidth,
    height: headHeight(title, subtitle, gap) + plotHeight + belowHeight,
    config: config as ChartConfiguration,
  }
}

interface CurvePoint {
  x: number
  mean: number
  low: number
  high: number
}

function datasetsOf(points: readonly CurvePoint[]): ChartDataset<'scatter', { x: number; y: number }[]>[] {
  const edge = { showLine: true, pointRadius: 0, borderWidth: 0, backgroundColor: palette.band }
  return [
    { ...edge, label: 'high', data: points.map(({ x, high }) => ({ x, y: high })), fill: '+1' },
    { ...edge, label: 'low', data: points.map(({ x, low }) => ({ x, y: low })) },
    {
      label: 'figure',
      data: points.map(({ x, mean }) => ({ x, y: mean })),
      showLine: true,
      borderColor: palette.main,
      borderWidth: 2.2,
      pointRadius: 4,
      pointBackgroundColor: palette.main,
      pointBorderColor: palette.paper,
      pointBorderWidth: 1.5,
    },
  ]
}

/** Levels across the picture: shares of the shifts, the target, what the scenario costs as it stands. */
function levelsOf(result: SweepResult, measure: SweepMeasure, of: CurveOf, scale: number): Level[] {
  const factor = result.factors[0]!
  if (measure.name === costName) {
    const cost = result.curve!.cost
    return cost?.base == null
      ? []
      : [{ y: cost.base * scale, text: 'as it stands', at: cost.breakEven.map(({ at }) => at) }]
  }
  const own = (level: number, words: string): Level => {
    const met = of.crossings.filter((each) => each.level === level).map(({ at }) => at)
    const where = met.length === 1 ? `: ${valueText(met[0]!, factor, 3)}` : ''
    return { y: level * scale, text: `${words}${where}`, at: met }
  }
  if (measure.name === heldName) return [0.99, 0.95, 0.9].map((level) => own(level, `${level * 100} %`))
  if (measure.name !== 'throughput') return []
  const ceiling = result.curve!.byHand?.ceiling ?? null
  const highest = Math.max(...result.points.map(({ measures }) => measures.throughput?.mean ?? 0))
  // a ceiling far above all that was tried would press the curve flat
  const isNear = ceiling !== null && ceiling < nearCeiling * highest
  return [
    ...(isNear ? [{ y: ceiling * scale, text: 'ceiling of heads', at: [] }] : []),
    ...(result.target === null ? [] : [own(result.target, 'target')]),
  ]
}

/** Points that are named: where the slope changes most, and the cheapest. */
function marksOf(result: SweepResult, measure: SweepMeasure, of: CurveOf, at: (place: number) => CurvePoint) {
  const factor = result.factors[0]!
  const named = new Map<number, { words: string[]; isBelow: boolean }>()
  const add = (place: number, words: string, isBelow: boolean) =>
    named.set(place, { words: [...(named.get(place)?.words ?? []), words], isBelow })
  const cost = result.curve!.cost
  if (measure.name === costName && cost)
    add(cost.least, `least: ${valueText(at(cost.least).x, factor)}`, true)
  if (of.knee !== null) {
    const change = of.changes.find(({ place }) => place === of.knee)!
    add(of.knee, `slope changes most at ${valueText(at(of.knee).x, factor)}`, (change.mean ?? 0) < 0)
  }
  return [...named].map(([place, { words, isBelow }]) => ({
    x: at(place).x,
    y: at(place).mean,
    words,
    isBelow,
  }))
}

function titleOf(result: SweepResult, measure: SweepMeasure, of: CurveOf, factor: Factor): string {
  const subject = measureSubject(measure)
  const at = (place: number) => valueText(result.points[place]!.at[0]!, factor)
  const cost = result.curve!.cost
  if (measure.name === costName && cost) return `${subject}: least at ${at(cost.least)} of ${factor.path}`
  if (measure.name === costName && isCostInPart(result))
    return `${costWords(subject, result)} over ${factor.path}`
  if (of.enough === 0) return `${subject}: no effect of ${factor.path} is shown from ${at(0)} on`
  if (of.enough !== null && of.knee !== null && of.knee !== of.enough)
    return `${subject}: most is gained up to ${at(of.knee)} of ${factor.path}, nothing more shown beyond ${at(of.enough)}`
  if (of.enough !== null) return `${subject}: nothing more is shown beyond ${at(of.enough)} of ${factor.path}`
  if (of.knee !== null) return `${subject}: the slope changes most at ${at(of.knee)} of ${factor.path}`
  return `${subject} over ${factor.path}`
}

function altOf(result: SweepResult, measure: SweepMeasure, factor: Factor): string {
  const words = result.points.map(
    ({ at, measures }) =>
      `${valueText(at[0]!, factor)}: ${pointText(measures[measure.name], measure.name, result)}`,
  )
  return `${measureSubject(measure)} over ${factor.path}: ${words.join('; ')}.`
}
