/** All charts of a run, of a comparison and of a sizing, in the order in which a report shows them. */
import type { CompareResult } from '../../study/compare-result.js'
import type { RunResult } from '../../study/result.js'
import type { SizeResult } from '../../study/size-result.js'
import type { Chart } from './chart.js'
import { costStackChart } from './cost-stack.js'
import { differenceCharts } from './differences.js'
import { heldChart } from './held.js'
import { lossesCharts } from './losses.js'
import { outputChart } from './output.js'
import { outputSharesChart } from './output-shares.js'
import { settlingChart } from './settling.js'
import { sizeCostChart } from './size.js'
import { sizeMapChart } from './size-map.js'
import { statesChart } from './states.js'
import { tapeChart } from './tape.js'

/** The charts that this result has something for: the target first, then why it is reached or not. */
export function allCharts(result: RunResult): Chart[] {
  return [outputChart, settlingChart, statesChart, lossesCharts, heldChart, tapeChart].flatMap(
    (chartOf) => chartOf(result) ?? [],
  )
}

/** The charts of a comparison: what differs, what it costs, what may be promised. */
export function compareCharts(result: CompareResult): Chart[] {
  return [
    ...differenceCharts(result),
    ...[costStackChart, outputSharesChart].flatMap((chartOf) => chartOf(result) ?? []),
  ]
}

/** The charts of a sizing: what designs cost and keep, which combinations hold. */
export function sizeCharts(result: SizeResult): Chart[] {
  return [sizeCostChart, sizeMapChart].flatMap((chartOf) => chartOf(result) ?? [])
}
