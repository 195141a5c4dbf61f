/** Chart of a response curve: each value tried with its interval, where the slope changes, where more stops helping. */

import { costWords, isCostInPart } from '../../answers/warnings.js'
import { wholeOf } from '../../catalogue/figure.js'
import { percentText } from '../../report/format.js'
import { roomAtRight, spanAxis } from '../../report/marks/axis.js'
import { type Chart, chartOf, fileStem } from '../../report/marks/chart.js'
import { palette } from '../../report/marks/inks.js'
import { type Level, levels, namedPoints } from '../../report/marks/labels.js'
import { bandEdge, line } from '../../report/marks/line.js'
import type { Points } from '../../report/marks/mark.js'
import { roomySpan } from '../../report/marks/reach.js'
import { nameAbove, regionBeyond, ruleUp } from '../../report/marks/rule.js'
import { factorAxis, measureAxis } from './axis.js'
import {
  type CurveOf,
  costName,
  type Factor,
  heldName,
  type SweepMeasure,
  type SweepResult,
} from './document.js'
import { measureSubject, placeText, pointText, valueText } from './words.js'

/** A ceiling is drawn up to so many times the highest figure. */
const nearCeiling = 1.5

/** The curve of a measure; null where no point has it. */
export function sweepCurveChart(result: SweepResult, measure: SweepMeasure): Chart | null {
  const factor = result.factors[0]!
  const curve = result.curve!
  const of = curve.measures[measure.name]!
  const axis = measureAxis(measure, result)
  const points = result.points.flatMap(({ at, measures }) => {
    const { mean } = measures[measure.name]!
    const { low, high } = wholeOf(measures[measure.name]!)
    if (mean === null) return []
    const scaled = (value: number) => value * axis.factor
    return [{ x: at[0]!, mean: scaled(mean), low: scaled(low ?? mean), high: scaled(high ?? mean) }]
  })
  if (points.length === 0) return null
  const across = levelsOf(result, measure, of, axis.factor)
  const span = roomySpan(
    [...points.flatMap(({ low, high }) => [low, high]), ...across.map(({ y }) => y)],
    7,
    measure.unit === 'share' ? { min: 0, max: 100 } : {},
  )
  const enough = of.enough === null || of.enough === 0 ? null : result.points[of.enough]!.at[0]!
  const own = factor.base
  return chartOf(result, {
    name: fileStem('curve', measure.name),
    section: 'figures',
    title: titleOf(result, measure, of),
    subtitle: `Line: the figure at each value tried, all with the same random numbers. Band: its ${percentText(result.made.confidence)} interval${result.drawn ? ', with the uncertainty of the inputs' : ''}. "Shown" is judged by differences shift by shift, which are more precise than the bands.`,
    alt: altOf(result, measure),
    // two lines of text stand between subtitle and plot
    gap: 46,
    height: 340,
    axes: {
      x: factorAxis(factor),
      y: spanAxis(span, axis.title),
      ...(across.length > 0 ? { room: roomAtRight(132) } : {}),
    },
    marks: [
      ...datasetsOf(points),
      enough !== null && regionBeyond(enough, `beyond ${valueText(enough, factor)} nothing more is shown`),
      levels(across),
      own !== null && [
        ruleUp(own, { colour: palette.frame, width: 1.2, dash: [], beyond: 4 }),
        nameAbove(own, `as it stands: ${valueText(own, factor)}`, { up: 8, isBold: false }),
      ],
      points.length === result.points.length &&
        namedPoints(
          namesOf(result, measure, of, (place) => points[place]!),
          points.map(({ x, mean }) => ({ x, y: mean })),
        ),
    ],
  })
}

interface CurvePoint {
  x: number
  mean: number
  low: number
  high: number
}

function datasetsOf(points: readonly CurvePoint[]): Points[] {
  const of = (key: 'mean' | 'low' | 'high') => points.map((point) => ({ x: point.x, y: point[key] }))
  return [
    bandEdge('high', of('high'), { showLine: true, fill: '+1' }),
    bandEdge('low', of('low'), { showLine: true }),
    line('figure', of('mean'), {
      showLine: true,
      borderWidth: 2.2,
      pointRadius: 4,
      pointBackgroundColor: palette.main,
      pointBorderColor: palette.paper,
      pointBorderWidth: 1.5,
    }),
  ]
}

/** Levels across the picture: shares of the shifts, the target, what the scenario costs as it stands. */
function levelsOf(result: SweepResult, measure: SweepMeasure, of: CurveOf, scale: number): Level[] {
  const factor = result.factors[0]!
  if (measure.name === costName) {
    const cost = result.curve!.cost
    return cost?.base == null
      ? []
      : [{ y: cost.base * scale, text: 'as it stands', met: cost.breakEven.map(({ at }) => at) }]
  }
  const own = (level: number, words: string): Level => {
    const met = of.crossings.filter((each) => each.level === level).map(({ at }) => at)
    const where = met.length === 1 ? `: ${valueText(met[0]!, factor, 3)}` : ''
    return { y: level * scale, text: `${words}${where}`, met }
  }
  if (measure.name === heldName) return [0.99, 0.95, 0.9].map((level) => own(level, `${level * 100} %`))
  if (measure.name !== 'throughput') return []
  const ceiling = result.curve!.byHand?.ceiling ?? null
  const highest = Math.max(...result.points.map(({ measures }) => measures.throughput?.mean ?? 0))
  // a ceiling far above all that was tried would press the curve flat
  const isNear = ceiling !== null && ceiling < nearCeiling * highest
  return [
    ...(isNear ? [{ y: ceiling * scale, text: 'ceiling of heads', met: [] }] : []),
    ...(result.target === null ? [] : [own(result.target, 'target')]),
  ]
}

/** Points that are named: where the slope changes most, and the cheapest. */
function namesOf(result: SweepResult, measure: SweepMeasure, of: CurveOf, at: (place: number) => CurvePoint) {
  const named = new Map<number, { words: string[]; isBelow: boolean }>()
  const add = (place: number, words: string, isBelow: boolean) =>
    named.set(place, { words: [...(named.get(place)?.words ?? []), words], isBelow })
  const cost = result.curve!.cost
  if (measure.name === costName && cost) add(cost.least, `least: ${placeText(result, cost.least)}`, true)
  if (of.knee !== null) {
    const change = of.changes.find(({ place }) => place === of.knee)!
    add(of.knee, `slope changes most at ${placeText(result, of.knee)}`, (change.mean ?? 0) < 0)
  }
  return [...named].map(([place, said]) => ({ x: at(place).x, y: at(place).mean, ...said }))
}

function titleOf(result: SweepResult, measure: SweepMeasure, of: CurveOf): string {
  const subject = measureSubject(measure)
  const [{ path }] = result.factors as [Factor]
  const at = (place: number) => placeText(result, place)
  const cost = result.curve!.cost
  if (measure.name === costName && cost) return `${subject}: least at ${at(cost.least)} of ${path}`
  if (measure.name === costName && isCostInPart(result)) return `${costWords(subject, result)} over ${path}`
  if (of.enough === 0) return `${subject}: no effect of ${path} is shown from ${at(0)} on`
  if (of.enough !== null && of.knee !== null && of.knee !== of.enough)
    return `${subject}: most is gained up to ${at(of.knee)} of ${path}, nothing more shown beyond ${at(of.enough)}`
  if (of.enough !== null) return `${subject}: nothing more is shown beyond ${at(of.enough)} of ${path}`
  if (of.knee !== null) return `${subject}: the slope changes most at ${at(of.knee)} of ${path}`
  return `${subject} over ${path}`
}

function altOf(result: SweepResult, measure: SweepMeasure): string {
  const words = result.points.map(
    ({ measures }, place) =>
      `${placeText(result, place)}: ${pointText(measures[measure.name], measure.name, result)}`,
  )
  return `${measureSubject(measure)} over ${result.factors[0]!.path}: ${words.join('; ')}.`
}
