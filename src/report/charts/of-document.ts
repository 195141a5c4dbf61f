/** The charts of a result document, whichever command made it. */
import type { CompareResult } from '../../study/compare-result.js'
import type { RunResult } from '../../study/result.js'
import type { SizeResult } from '../../study/size-result.js'
import type { SweepResult } from '../../study/sweep-result.js'
import type { Chart } from './chart.js'
import { allCharts, compareCharts, sizeCharts } from './index.js'
import { sweepCharts } from './sweep.js'

/** A document that a report can be made of. */
export type ResultDocument = RunResult | CompareResult | SizeResult | SweepResult

/** Its charts, in the order in which a report shows them. */
export function chartsOf(document: ResultDocument): Chart[] {
  switch (document.command) {
    case 'run':
      return allCharts(document)
    case 'compare':
      return compareCharts(document)
    case 'size':
      return sizeCharts(document)
    case 'sweep':
      return sweepCharts(document)
  }
}
