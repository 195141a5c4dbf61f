/** The charts of a sweep, one for each measure that can be drawn. */
import type { SweepResult } from '../../study/sweep-result.js'
import type { Chart } from './chart.js'
import { sweepCurveChart } from './sweep-curve.js'
import { sweepGridChart } from './sweep-grid.js'
import { planChart, tornadoChart } from './sweep-tornado.js'

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
