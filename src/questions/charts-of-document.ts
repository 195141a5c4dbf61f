/** The charts of a result document, whichever command made it. */

import type { Chart } from '../report/marks/chart.js'
import { costStackChart } from './compare/cost-chart.js'
import { differenceCharts } from './compare/differences-chart.js'
import type { CompareResult } from './compare/document.js'
import { outputSharesChart } from './compare/output-chart.js'
import { fitCharts } from './fit/charts.js'
import type { FitResult } from './fit/document.js'
import { demandChart } from './run/demand-chart.js'
import type { RunResult } from './run/document.js'
import { heldChart } from './run/held-chart.js'
import { inputsCharts } from './run/inputs-charts.js'
import { lossesCharts } from './run/losses-chart.js'
import { outputChart } from './run/output-chart.js'
import { settlingChart } from './run/settling-chart.js'
import { statesChart } from './run/states-chart.js'
import { tapeChart } from './run/tape-chart.js'
import { sizeCostChart } from './size/costs-chart.js'
import type { SizeResult } from './size/document.js'
import { sizeDrawsChart } from './size/draws-chart.js'
import { sizeMapChart } from './size/map-chart.js'
import { sweepCharts } from './sweep/charts.js'
import type { SweepResult } from './sweep/document.js'
import { causesChart } from './validate/causes-chart.js'
import { daysChart } from './validate/days-chart.js'
import type { ValidateResult } from './validate/document.js'

/** A document that a report can be made of. */
export type ResultDocument = RunResult | CompareResult | SizeResult | SweepResult | FitResult | ValidateResult

/** The documents of a command. */
export type DocumentOf<Command> = Extract<ResultDocument, { command: Command }>

/** What draws the charts of each, in the order in which a report shows them; null where it has nothing for one. */
const drawn: {
  [Command in ResultDocument['command']]: ((document: DocumentOf<Command>) => Chart | Chart[] | null)[]
} = {
  // the target first, then why it is reached or not
  run: [
    outputChart,
    inputsCharts,
    settlingChart,
    demandChart,
    lossesCharts,
    statesChart,
    heldChart,
    tapeChart,
  ],
  compare: [differenceCharts, costStackChart, outputSharesChart],
  size: [sizeCostChart, sizeMapChart, sizeDrawsChart],
  sweep: [sweepCharts],
  fit: [fitCharts],
  validate: [daysChart, causesChart],
}

/** Its charts. */
export const chartsOf = <Command extends ResultDocument['command']>(document: DocumentOf<Command>): Chart[] =>
  drawn[document.command as Command].flatMap((chartOf) => chartOf(document) ?? [])
