/** Charts of what inputs do, the most important first: one at a time with both ends, or as effects of a plan. */
import { printDifference, type Shown } from '../../answers/difference.js'
import type { DifferenceFigure } from '../../answers/difference-figure.js'
import { nothing } from '../../catalogue/printed-units.js'
import { counted, percentText } from '../../report/format.js'
import { type Chart, fileStem } from '../../report/marks/chart.js'
import { palette } from '../../report/marks/inks.js'
import { type BarRow, barsChart } from './bars-chart.js'
import type { SweepMeasure, SweepResult } from './document.js'
import { isInputShown, mostInputs, rankedInputs } from './each-report.js'
import { effectFigure, rankedEffects } from './plan-report.js'
import { measureSubject, rangeWords } from './words.js'

const words = (figure: Shown, result: SweepResult): string => {
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
      figure ? [{ figure, colour, text: words(figure, result), value: text ?? '' }] : []
    return { name: path, bars: [...bar(own.low, low, palette.short), ...bar(own.high, high, palette.main)] }
  })
  const shown = ranked.filter((input) => isInputShown(input, measure))
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
    const bar = { figure, colour: palette.main, text: words(figure, result), value: rangeWords(factor) }
    return { name: effect.path, bars: [bar] }
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
