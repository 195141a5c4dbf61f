/** The charts of a sweep, one for each measure that can be drawn. */

import type { Chart } from '../../report/marks/chart.js'
import { sweepCurveChart } from './curve-chart.js'
import type { SweepResult } from './document.js'
import { sweepGridChart } from './grid-chart.js'
import { planChart, tornadoChart } from './tornado-chart.js'

/** Charts in the order of the measures. */
export function sweepCharts(result: SweepResult): Chart[] {
  const chartOf = result.curve
    ? sweepCurveChart
    : result.grid
      ? sweepGridChart
      : result.each
        ? tornadoChart
        : planChart
  return result.measures.flatMap((measure) => chartOf(result, measure) ?? [])
}
