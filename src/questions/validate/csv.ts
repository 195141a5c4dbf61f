/** The days as CSV: what the plant put out, and its runs. */
import { csvText } from '../../report/csv.js'
import type { ValidateResult } from './document.js'

/** A row a day, unrounded. */
export const daysCsv = ({ days }: ValidateResult): string =>
  csvText([
    [
      ...['day', 'shifts', 'arrivals', 'good cases of the plant', 'mean of the runs', 'median of the runs'],
      ...['low', 'high', 'runs below', 'within'],
    ],
    ...days.map(({ day, shifts, drivenBy, plant, model, below, isInside }) => [
      ...[day, shifts, drivenBy === 'cases' ? 'recorded' : 'law', plant, model.mean, model.median],
      ...[model.low, model.high, below, isInside ? 'yes' : 'no'],
    ]),
  ])
