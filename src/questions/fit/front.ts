/** What the page of a fit shows first: what was read, and how many values came of it. */
import { counted, grouped } from '../../report/format.js'
import type { Shown } from '../../report/front.js'
import { fitCharts } from './charts.js'
import type { FitResult } from './document.js'
import { hasFewEvents, hasValue } from './words.js'

export function fitFront(result: FitResult): Shown {
  const { record, inputs } = result
  const given = inputs.filter(hasValue)
  const few = inputs.filter(hasFewEvents)
  const events = inputs.reduce((sum, each) => sum + (each.what === 'mix' ? 0 : each.events), 0)
  return {
    tiles: [
      {
        label: 'Record',
        value: grouped(record.shifts, 0),
        unit: `shifts on ${counted(record.days.count, 'day')}`,
      },
      { label: 'Events read', value: grouped(events, 0), unit: 'over all inputs' },
      {
        label: 'Values found',
        value: grouped(given.length, 0),
        unit: `of ${counted(inputs.length, 'input')}`,
      },
      {
        label: 'Values with little evidence',
        value: grouped(few.length, 0),
        unit: 'of these',
        tone: few.length > 0 ? 'warning' : 'good',
      },
    ],
    told: [],
    picture: fitCharts(result)[0]?.name ?? null,
  }
}
