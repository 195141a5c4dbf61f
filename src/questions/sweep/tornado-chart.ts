/** Charts of what inputs do, the most important first: one at a time with both ends, or as effects of a plan. Bars from nothing to a difference with its interval, in rows. */
import { differenceUnit, printDifference, type Shown, signed } from '../../answers/difference.js'
import type { DifferenceFigure } from '../../answers/difference-figure.js'
import { wholeOf } from '../../catalogue/figure.js'
import { nothing } from '../../catalogue/printed-units.js'
import { counted, grouped, percentText } from '../../report/format.js'
import { roomAtRight, rowAxis, spanAxis } from '../../report/marks/axis.js'
import { beside } from '../../report/marks/beside.js'
import { pathLabel, shortened } from '../../report/marks/breaking.js'
import { type Chart, type ChartAsked, chartOf, fileStem } from '../../report/marks/chart.js'
import { effectBars } from '../../report/marks/effect-bars.js'
import { palette } from '../../report/marks/inks.js'
import { farOff, roomySpan } from '../../report/marks/reach.js'
import type { SweepMeasure, SweepResult } from './document.js'
import { effectFigure, mostInputs, rankedEffects, rankedInputs, shownInputs } from './effects-report.js'
import { measureSubject, rangeWords } from './words.js'

/** A difference in words. */
const wordsOf = (figure: Shown, result: SweepResult): string => {
  const { value, interval } = printDifference(figure, result.display)
  return value === nothing ? 'no interval' : `${value} ${interval}`
}

/** What the interval holds beside luck. */
const unknown = ({ drawn }: SweepResult) => (drawn ? ', with the uncertainty of the inputs' : '')

const sureness = ({ made }: SweepResult) => percentText(made.confidence)

/** Inputs moved alone; null where there are none. */
export function tornadoChart(result: SweepResult, measure: SweepMeasure): Chart | null {
  const ranked = rankedInputs(result, measure)
  const drawn = ranked.slice(0, mostInputs)
  const rows = drawn.map(({ path, low, high, differences }): BarRow => {
    const own = differences[measure.name]!
    const bar = (figure: DifferenceFigure | null, text: string | null, colour: string) =>
      figure ? [{ figure, colour, value: text ?? '' }] : []
    return { name: path, bars: [...bar(own.low, low, palette.short), ...bar(own.high, high, palette.main)] }
  })
  const shown = shownInputs(result, measure)
  const family = Object.values(ranked[0]?.differences ?? {}).flatMap(({ low, high }) => low ?? high ?? [])[0]
    ?.family
  const few = drawn.length < ranked.length ? ` The first ${drawn.length} of ${ranked.length} inputs.` : ''
  return barsChart(result, {
    name: fileStem('each', measure.name),
    section: 'differences',
    title:
      shown.length === 0
        ? `${measureSubject(measure)}: no input is shown to change it`
        : `${measureSubject(measure)}: changed most by ${shown[0]!.path}; ${shown.length} of ${counted(ranked.length, 'input')} shown`,
    subtitle: `Upper bar: with the lower value of the input; lower bar: with the higher one. Filled: shown to differ from the scenario as it stands; hollow: not shown. Thin line: ${sureness(result)} interval for all ${family ?? 0} differences together${unknown(result)}.${few}`,
    axis: 'difference to the scenario as it stands',
    measure,
    rows,
  })
}

/** Effects of the factors of a plan; null where no straight line was fitted. */
export function planChart(result: SweepResult, measure: SweepMeasure): Chart | null {
  const of = result.plan![measure.name]
  if (!of || of.explained === null) return null
  const rows = rankedEffects(of).map((effect): BarRow => {
    const factor = result.factors.find(({ path }) => path === effect.path)!
    const figure = effectFigure(effect, measure)
    return { name: effect.path, bars: [{ figure, colour: palette.main, value: rangeWords(factor) }] }
  })
  return barsChart(result, {
    name: fileStem('plan', measure.name),
    section: 'figures',
    title: `${measureSubject(measure)}: a linear regression explains ${Math.round(of.explained * 100)} % of the differences`,
    subtitle: `Bar: effect of each factor from its lowest to its highest value, the others unchanged. Filled: shown; hollow: not shown. Thin line: ${sureness(result)} interval for all ${of.family} effects together${unknown(result)}.`,
    axis: 'effect over the range',
    measure,
    rows,
  })
}

/** Bars of one name, each with the value that makes it. */
interface BarRow {
  name: string
  bars: { figure: Shown; colour: string; value: string }[]
}

interface BarsAsked extends Pick<ChartAsked, 'name' | 'section' | 'title' | 'subtitle'> {
  axis: string
  measure: SweepMeasure
  rows: readonly BarRow[]
}

/** Room beside the rows for values and figures, px. */
const room = 280
const valuesAt = 14
const figuresAt = 150
/** A row that reaches so many times as far as the next shorter one is not drawn to scale. */
const farBeyond = 6

/** The rows as a picture; null without any bar that can be drawn. */
function barsChart(result: SweepResult, asked: BarsAsked): Chart | null {
  const { rows, measure, axis, ...said } = asked
  const { factor, word } = differenceUnit(measure.unit, result.display)
  const placed = rows.map(({ bars }, index) =>
    bars.map((bar, place) => ({
      ...bar,
      row: index + (bars.length === 1 ? 0 : place === 0 ? -0.2 : 0.2),
      text: wordsOf(bar.figure, result),
      mean: (bar.figure.mean ?? Number.NaN) * factor,
      low: (wholeOf(bar.figure).low ?? bar.figure.mean ?? Number.NaN) * factor,
      high: (wholeOf(bar.figure).high ?? bar.figure.mean ?? Number.NaN) * factor,
      isShown: bar.figure.isShown === true,
    })),
  )
  const bars = placed.flat()
  if (bars.length === 0) return null
  const reach = (row: (typeof placed)[number]) =>
    Math.max(0, ...row.flatMap(({ low, high }) => [Math.abs(low), Math.abs(high)]))
  const far = farOff(placed, reach, farBeyond)
  const inside = placed.filter((row) => !far.has(row)).flat()
  const span = roomySpan([0, ...inside.flatMap(({ mean, low, high }) => [mean, low, high])], 6)
  return chartOf(result, {
    ...said,
    subtitle: far.size > 0 ? `${said.subtitle} A bar with an arrow goes far beyond the axis.` : said.subtitle,
    alt: altOf(asked, word, result),
    gap: 12,
    height: rows.length * 38 + 8,
    axes: {
      x: spanAxis(span, `${axis}${word === '' ? '' : `, ${word}`}`, {
        textOf: (value) => signed(grouped(value, span.decimals)),
      }),
      y: rowAxis(rows.map(({ name }) => pathLabel(name))),
      room: roomAtRight(room),
    },
    marks: [
      ...effectBars(placed.flatMap((row) => row.map((bar) => ({ ...bar, isFar: far.has(row) })))),
      beside(
        bars
          .filter(({ mean }) => Number.isFinite(mean))
          .map(({ row, value, text, isShown }) => {
            const words = { size: 11, isQuiet: !isShown }
            return {
              row,
              words: [
                { ...words, text: shortened(value, 20), right: valuesAt },
                { ...words, text, right: figuresAt, isBold: isShown },
              ],
            }
          }),
      ),
    ],
  })
}

function altOf({ rows, title, axis }: BarsAsked, unit: string, result: SweepResult): string {
  const words = rows.map(
    ({ name, bars }) =>
      `${name}: ${bars.map(({ value, figure }) => `${value} ${wordsOf(figure, result)}${figure.isShown ? '' : ' (not shown)'}`).join(', ')}`,
  )
  return `${title}. ${axis.charAt(0).toUpperCase()}${axis.slice(1)}${unit === '' ? '' : `, ${unit}`}: ${words.join('; ')}.`
}
