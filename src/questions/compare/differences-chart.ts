/** Charts of the differences: one per compared measure, each variant less the base with its interval. */
import { differenceUnit, printDifference, signed, withoutUnit } from '../../answers/difference.js'
import type { DifferenceFigure } from '../../answers/difference-figure.js'
import { figureAt } from '../../answers/figure-at.js'
import { wholeOf } from '../../catalogue/figure.js'
import { figureText, grouped, percentText } from '../../report/format.js'
import { roomAtRight, rowAxis, type Span, spanAxis } from '../../report/marks/axis.js'
import { beside } from '../../report/marks/beside.js'
import { rowLabel, shortened } from '../../report/marks/breaking.js'
import { type Chart, chartOf, fileStem } from '../../report/marks/chart.js'
import { dots } from '../../report/marks/dots.js'
import { palette } from '../../report/marks/inks.js'
import { letterWidth } from '../../report/marks/letters.js'
import type { Points } from '../../report/marks/mark.js'
import { farOff, roomySpan } from '../../report/marks/reach.js'
import { nameAbove, ruleUp } from '../../report/marks/rule.js'
import { whiskers } from '../../report/marks/whiskers.js'
import type { CompareResult } from './document.js'
import { drawnWords, undrawn } from './on-page.js'

const mostTicks = 8
/** Between the axis and the figures beside the rows, px. */
const figuresGap = 20
/** An interval that reaches this many times as far as the next shorter one is not drawn to scale. */
const farBeyond = 12

/** A variant on its row, all numbers in the unit of the chart. */
interface Row {
  name: string
  figure: DifferenceFigure | undefined
  /** Null where there is no interval to draw. */
  ends: { mean: number; low: number; high: number } | null
  alone: { low: number; high: number } | null
  isShown: boolean
}

/** A chart for each compared measure of which any variant has a difference with an interval. */
export function differenceCharts(result: CompareResult): Chart[] {
  const taken = new Set<string>()
  const left = undrawn(result)
  return result.compared.flatMap((measure) => differenceChart(result, measure, left, taken) ?? [])
}

function differenceChart(
  result: CompareResult,
  measure: string,
  left: ReadonlySet<string>,
  taken: Set<string>,
): Chart | null {
  const { display, made } = result
  const figures = Object.entries(result.differences).map(
    ([name, differences]) => [name, differences[measure]] as const,
  )
  const known = figures.flatMap(([, figure]) => figure ?? [])[0]
  if (!known) return null
  const { factor, word } = differenceUnit(known.unit, display)
  const all = figures.map(([name, figure]) => rowOf(name, figure, factor))
  const rows = all.filter(({ name }) => !left.has(name))
  const drawn = rows.filter((row) => row.ends !== null)
  if (drawn.length === 0) return null
  const beyond = farOff(drawn, reachOf, farBeyond)
  const ends = drawn.filter((row) => !beyond.has(row)).flatMap((row) => [row.ends!.low, row.ends!.high])
  const axis = roomySpan([0, ...ends], mostTicks)
  const texts = rows.map(({ figure }) =>
    figure ? (withoutUnit(printDifference(figure, display)) ?? 'no interval') : 'not compared',
  )
  return chartOf(result, {
    name: fileName(measure, taken),
    section: 'differences',
    title: titleOf(known.label, all),
    subtitle: `${subtitleOf(drawn, beyond.size > 0, made.confidence)}${result.drawn ? ' With the uncertainty of the inputs.' : ''}${drawnWords(rows.length, all.length)}`,
    alt: altOf(known.label, word, rows, texts, made.confidence),
    // the figure of the base stands between subtitle and rows
    gap: 26,
    height: rows.length * 36,
    axes: {
      x: spanAxis(axis, `difference to the base${word === '' ? '' : `, ${word}`}`, {
        textOf: (value) => signed(grouped(value, axis.decimals)),
      }),
      y: rowAxis(rows.map(({ name }) => rowLabel(name))),
      figures: roomAtRight(figuresGap + Math.max(...texts.map((text) => text.length)) * letterWidth.figures),
    },
    marks: [
      ...datasetsOf(rows, beyond, axis),
      ruleUp(0, { colour: palette.ink, dash: [], beyond: 5 }),
      nameAbove(0, baseWords(result, measure), { up: 9, margin: 14 }),
      beside(
        rows.map(({ isShown }, row) => ({
          row,
          words: [{ text: texts[row]!, right: figuresGap, isQuiet: !isShown, isBold: isShown }],
        })),
      ),
    ],
  })
}

function rowOf(name: string, figure: DifferenceFigure | undefined, factor: number): Row {
  const scaled = (value: number | null | undefined) => (value ?? Number.NaN) * factor
  const [all, own] = [figure && wholeOf(figure), figure && wholeOf(figure.alone)]
  const [mean, low, high] = [scaled(figure?.mean), scaled(all?.low), scaled(all?.high)]
  const alone = { low: scaled(own?.low), high: scaled(own?.high) }
  const isDrawn = Number.isFinite(mean + low + high)
  return {
    name,
    figure,
    ends: isDrawn ? { mean, low, high } : null,
    alone: isDrawn && Number.isFinite(alone.low + alone.high) ? alone : null,
    isShown: isDrawn && figure?.isShown === true,
  }
}

const reachOf = ({ ends }: Row) => Math.max(Math.abs(ends!.low), Math.abs(ends!.high))

/** Of the interval that a difference has alone, over that of all together. */
const thick = { yAxisID: 'y', borderWidth: 4.5, order: 2 }

/** The intervals as lines, the differences as dots, arrows to what is beyond the axis. */
function datasetsOf(rows: readonly Row[], beyond: ReadonlySet<Row>, axis: Span): Points[] {
  const inside = [...rows.entries()].filter(([, row]) => row.ends !== null && !beyond.has(row))
  const outside = [...rows.entries()].filter(([, row]) => beyond.has(row))
  const intervals = (of: 'ends' | 'alone') =>
    inside.flatMap(([at, row]) => (row[of] ? { at, low: row[of].low, high: row[of].high } : []))
  const signs = (of: typeof inside) => ({
    colour: palette.main,
    fill: of.map(([, { isShown }]) => (isShown ? palette.main : palette.paper)),
    edge: 2,
    yAxisID: 'y',
    order: 1,
  })
  const points = (of: typeof inside, xOf: (ends: NonNullable<Row['ends']>) => number) =>
    of.map(([y, { ends }]) => ({ x: xOf(ends!), y }))
  const isFamily = inside.some(([, { figure }]) => (figure?.family ?? 1) > 1)
  return [
    whiskers('interval', 'x', intervals('ends'), {
      ...{ yAxisID: 'y', borderWidth: 1.5, order: 3 },
      ...{ pointStyle: 'line', pointRotation: 90, pointRadius: 8 },
      ...{ pointBorderWidth: 1.5, pointBorderColor: palette.main },
    }),
    whiskers('interval alone', 'x', isFamily ? intervals('alone') : [], thick),
    dots(
      'difference',
      points(inside, ({ mean }) => mean),
      { ...signs(inside), style: 'circle', radius: 5.5 },
    ),
    dots(
      'beyond the axis',
      points(outside, ({ mean }) => (mean < 0 ? axis.min : axis.max)),
      {
        ...signs(outside),
        ...{ style: 'triangle', radius: 8, clip: false },
        pointRotation: outside.map(([, { ends }]) => (ends!.mean < 0 ? -90 : 90)),
      },
    ),
  ]
}

/** `Output: higher with a and b, lower with 3 of 6 variants`. */
function titleOf(label: string, rows: readonly Row[]): string {
  const shown = rows.filter(({ isShown }) => isShown)
  const sides = [
    ['higher', shown.filter(({ ends }) => ends!.mean > 0)],
    ['lower', shown.filter(({ ends }) => ends!.mean < 0)],
  ] as const
  const found = sides.flatMap(([word, side]) =>
    side.length > 0 ? `${word} with ${inWords(side, rows.length)}` : [],
  )
  if (found.length > 0) return `${label}: ${found.join(', ')}`
  const who = rows.length === 1 ? shortened(rows[0]!.name, 40) : 'no variant'
  return `${label}: ${who} is ${rows.length === 1 ? 'not ' : ''}shown to differ from the base`
}

function inWords(side: readonly Row[], all: number): string {
  if (side.length <= 2) return side.map(({ name }) => shortened(name, 40)).join(' and ')
  return side.length === all ? `all ${all} variants` : `${side.length} of ${all} variants`
}

function subtitleOf(drawn: readonly Row[], hasBeyond: boolean, confidence: number): string {
  const family = drawn.map(({ figure }) => figure?.family ?? 1).reduce((a, b) => Math.max(a, b))
  const lines =
    family > 1
      ? `Thin line: ${percentText(confidence)} interval for all ${family} comparisons together; thick: for each alone.`
      : `Line: ${percentText(confidence)} interval.`
  const arrow = hasBeyond ? ' Triangle: lies far beyond the axis.' : ''
  return `● shown to differ from the base, ○ not shown. ${lines}${arrow}`
}

function altOf(
  label: string,
  unit: string,
  rows: readonly Row[],
  texts: readonly string[],
  confidence: number,
): string {
  const words = rows.map(({ name, ends, isShown }, index) => {
    const text = texts[index]!
    return `${name}: ${ends === null ? text : `${text}, ${isShown ? 'shown' : 'not shown'}`}`
  })
  const of = unit === '' ? '' : `, ${unit}`
  return `${label}, difference to the base${of}, at ${percentText(confidence)} confidence: ${words.join('; ')}.`
}

/** What the base itself comes to, for above the line at 0. */
function baseWords({ variants, display }: CompareResult, measure: string): string {
  const [base] = Object.values(variants)
  const figure = base && figureAt(base, measure)
  return figure ? `base: ${figureText(figure, display)}` : 'base'
}

/** A stem of a file that no other chart has: names of equipment may differ in what a file cannot hold. */
function fileName(measure: string, taken: Set<string>): string {
  const stem = fileStem('difference', measure)
  let name = stem
  // some file systems do not tell capitals from small letters
  for (let count = 2; taken.has(name.toLowerCase()); count++) name = `${stem}-${count}`
  taken.add(name.toLowerCase())
  return name
}
