/** All charts of a run, in the order in which a report shows them. */
import type { Chart } from '../../report/marks/chart.js'
import type { RunResult } from './document.js'
import { heldChart } from './held-chart.js'
import { lossesCharts } from './losses-chart.js'
import { outputChart } from './output-chart.js'
import { settlingChart } from './settling-chart.js'
import { statesChart } from './states-chart.js'
import { tapeChart } from './tape-chart.js'

/** The charts that this result has something for: the target first, then why it is reached or not. */
export function allCharts(result: RunResult): Chart[] {
  return [outputChart, settlingChart, statesChart, lossesCharts, heldChart, tapeChart].flatMap(
    (chartOf) => chartOf(result) ?? [],
  )
}
