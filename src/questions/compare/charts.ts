/** All charts of a comparison, in the order in which a report shows them. */
import type { Chart } from '../../report/marks/chart.js'
import { costStackChart } from './cost-chart.js'
import { differenceCharts } from './differences-chart.js'
import type { CompareResult } from './document.js'
import { outputSharesChart } from './output-chart.js'

/** The charts of a comparison: what differs, what it costs, what may be promised. */
export function compareCharts(result: CompareResult): Chart[] {
  return [
    ...differenceCharts(result),
    ...[costStackChart, outputSharesChart].flatMap((chartOf) => chartOf(result) ?? []),
  ]
}
