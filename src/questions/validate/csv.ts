/** The days as CSV: what the plant put out, and its runs. */
import { csvText } from '../../report/csv.js'
import type { DayResult, ValidateResult } from './document.js'

/** A row a day, unrounded; where days were simulated by laws and with the stops of the plant, two. */
export const daysCsv = ({ days, drivenBy, beside }: ValidateResult): string =>
  csvText([
    [
      ...[
        'day',
        'shifts',
        'arrivals',
        'stops',
        'good cases of the plant',
        'mean of the runs',
        'median of the runs',
      ],
      ...['low', 'high', 'runs below', 'within'],
    ],
    ...rowsOf(days, drivenBy === 'stops' ? 'recorded' : 'law'),
    ...rowsOf(beside?.days ?? [], 'recorded'),
  ])

const rowsOf = (days: readonly DayResult[], stops: 'recorded' | 'law') =>
  days.map(({ day, shifts, drivenBy, plant, model, below, isInside }) => [
    ...[day, shifts, drivenBy === 'cases' ? 'recorded' : 'law', stops, plant, model.mean, model.median],
    ...[model.low, model.high, below, isInside ? 'yes' : 'no'],
  ])
