/** All charts of a run, in the order in which a report shows them. */
import type { RunResult } from '../../study/result.js'
import type { Chart } from './chart.js'
import { heldChart } from './held.js'
import { outputChart } from './output.js'
import { settlingChart } from './settling.js'
import { statesChart } from './states.js'
import { tapeChart } from './tape.js'

/** The charts that this result has something for: the target first, then why it is reached or not. */
export function allCharts(result: RunResult): Chart[] {
  return [outputChart, settlingChart, statesChart, heldChart, tapeChart].flatMap(
    (chartOf) => chartOf(result) ?? [],
  )
}
