/** The charts of a result document, whichever command made it. */

import type { Chart } from '../report/marks/chart.js'
import { compareCharts } from './compare/charts.js'
import type { CompareResult } from './compare/document.js'
import { allCharts } from './run/charts.js'
import type { RunResult } from './run/document.js'
import { sizeCharts } from './size/charts.js'
import type { SizeResult } from './size/document.js'
import { sweepCharts } from './sweep/charts.js'
import type { SweepResult } from './sweep/document.js'

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
