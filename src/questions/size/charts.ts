/** All charts of a sizing, in the order in which a report shows them. */
import type { Chart } from '../../report/marks/chart.js'
import { sizeCostChart } from './costs-chart.js'
import type { SizeResult } from './document.js'
import { sizeMapChart } from './map-chart.js'

/** The charts of a sizing: what designs cost and keep, which combinations hold. */
export function sizeCharts(result: SizeResult): Chart[] {
  return [sizeCostChart, sizeMapChart].flatMap((chartOf) => chartOf(result) ?? [])
}
