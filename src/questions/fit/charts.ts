/** The charts of a fit: input by input, those of its times, then those of its events. */
import type { Chart } from '../../report/marks/chart.js'
import type { FitResult } from './document.js'
import { hoursChart, trendChart } from './events-charts.js'
import { histogramChart, quantilesChart, survivalChart } from './times-charts.js'

export const fitCharts = (result: FitResult): Chart[] =>
  result.inputs.flatMap((input) =>
    [quantilesChart, histogramChart, survivalChart, trendChart, hoursChart].flatMap(
      (chartOf) => chartOf(result, input) ?? [],
    ),
  )
