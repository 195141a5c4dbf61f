/** The figures that are looked at while a line is changed: each as it is now, as it was before, and the difference between them. */
import {
  differenceParts,
  isSame,
  printDifference,
  rangeText,
  withoutUnit,
} from '../../../answers/difference.js'
import type { DifferenceFigure } from '../../../answers/difference-figure.js'
import { type MeasureKey, ofLine } from '../../../catalogue/of-line.js'
import type { Display } from '../../../catalogue/printed-units.js'
import { briefly } from '../../../catalogue/unit-name.js'
import { type PrintedFigure, printFigure, rateText } from '../../../report/format.js'
import type { Tone } from '../../../report/screen.js'
import { changedName, type Figures } from '../../study/messages.js'

/** Measures by name with short words, the most asked for first; those that a line has not are left out. */
export const looked: readonly (readonly [MeasureKey, string])[] = [
  ['throughput', 'Good cases out'],
  ['target-held', 'Shifts on target'],
  ['cost-per-1000', '1000 cases cost'],
  ['cost-per-year', 'A month costs'],
  ['tape', 'Tape a shift'],
  ['time-in-system', 'Time in the line'],
  ['output', 'Good cases a shift'],
]

/** A month is a twelfth of a year, and costs have no season. */
const months = 12

interface Span {
  mean: number | null
  low: number | null
  high: number | null
  unit: string
  inputs?: { low: number | null; high: number | null }
}

/** The figure as the page tells it: of a yearly cost what a month has of it; of 1000 cases without saying so again. */
function asTold<F extends Span>(measure: MeasureKey, figure: F): F {
  if (measure !== 'cost-per-year') return briefly(figure)
  const part = (value: number | null) => (value === null ? null : value / months)
  const ends = <E extends { low: number | null; high: number | null }>(of: E): E => ({
    ...of,
    ...{ low: part(of.low), high: part(of.high) },
  })
  const { inputs } = figure
  return {
    ...{ ...ends(figure), mean: part(figure.mean), unit: figure.unit.replace(/\/yr$/, '') },
    ...(inputs ? { inputs: ends(inputs) } : {}),
  }
}

/** A figure of the line as it is now beside that of the line as it came. */
export interface Told {
  measure: MeasureKey
  label: string
  now: PrintedFigure
  /** Of the line as it came, in one line without the unit; null where nothing is changed. */
  before: string | null
  difference: Difference | null
  /** What it is held against. */
  note: string
}

export interface Difference {
  text: string
  /** Whether it is shown, and which way. */
  word: string
  tone: Tone
}

export function figuresTold({ before, after, compared }: Figures): Told[] {
  const differences = compared?.differences[changedName] ?? {}
  return looked.flatMap(([measure, label]) => {
    const now = after.measures[measure]
    if (!now) return []
    const came = before.measures[measure]
    const printed = came ? printFigure(asTold(measure, came), before.display) : null
    const figure = differences[measure]
    return [
      {
        ...{ measure, label, now: printFigure(asTold(measure, now), after.display) },
        before: before !== after && printed ? `${printed.value} ${printed.interval}`.trimEnd() : null,
        difference: figure ? differenceTold(measure, figure, after.display) : null,
        note: measure === 'throughput' && after.target !== null ? `target ${rateText(after.target)}` : '',
      },
    ]
  })
}

/** A difference in short, and whether it is shown. */
export function differenceTold(measure: MeasureKey, figure: DifferenceFigure, display: Display): Difference {
  const plain = (text: string): Difference => ({ text, word: '', tone: 'plain' })
  const told = asTold(measure, figure)
  if (figure.few || figure.mean === null) return plain(differenceParts(told, display).join(' '))
  if (isSame(figure)) return plain('the same')
  const points = figure.unit === 'share' ? ' points' : ''
  if (figure.isShown === false) return plain(`none shown (${rangeText(told, display)}${points})`)
  const text = `${withoutUnit(printDifference(told, display)) ?? ''}${points}`
  const { better } = ofLine[measure]
  if (figure.isShown === null || better === 'neither') return plain(text)
  const isBetter = figure.mean > 0 === (better === 'up')
  return { text, word: isBetter ? 'better, shown' : 'worse, shown', tone: isBetter ? 'good' : 'error' }
}
