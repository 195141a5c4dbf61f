/** The charts of a sweep, one for each measure that can be drawn. */

import type { Chart } from '../../report/marks/chart.js'
import { sweepCurveChart } from './curve-chart.js'
import type { SweepResult } from './document.js'
import { sweepGridChart } from './grid-chart.js'
import { planChart, tornadoChart } from './tornado-chart.js'

const byKind = { curve: sweepCurveChart, grid: sweepGridChart, each: tornadoChart, plan: planChart }

/** Charts in the order of the measures. */
export const sweepCharts = (result: SweepResult): Chart[] =>
  result.measures.flatMap((measure) => byKind[result.kind](result, measure) ?? [])
