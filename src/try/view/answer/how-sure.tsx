/** How sure the answer is: luck of the simulation and what is not known of the inputs apart, and which input matters most. */
import { measureNext } from '../../../answers/inputs-words.js'
import { certaintyLines } from '../../../questions/run/certainty.js'
import type { RunResult } from '../../../questions/run/document.js'
import { runScreen } from '../../../questions/run/first-screen.js'
import { inputsCharts } from '../../../questions/run/inputs-charts.js'
import { Sentences } from '../prose.js'
import { Charts } from './charts.js'
import { inPage, saidOf } from './verdict.js'

/** Charts of inputs that are shown: those of the figures that are asked for first. */
const mostCharts = 2

export function HowSure({ result }: { result: RunResult }) {
  const contributions = result.drawn?.contributions ?? []
  const next = measureNext(contributions[0], result.measures.throughput)
  const basis = saidOf(runScreen(result), 'Basis')?.lines ?? []
  return (
    <>
      <Sentences lines={[...certaintyLines(result), ...next, ...basis].map(inPage)} />
      {result.drawn ? (
        <Charts result={result} charts={inputsCharts} most={mostCharts} />
      ) : (
        <p class="note">{waiting(result)}</p>
      )}
    </>
  )
}

/** Inputs are drawn after the first answer, where anything is known of how sure they are. */
const waiting = ({ evidence = [] }: RunResult): string =>
  evidence.length === 0
    ? 'No value says how well it is known, so plus-minus is of the simulation alone. Counts such as 18 in 640 h, and guesses with their ends, change that.'
    : 'Plus-minus is of the simulation alone so far; draws of the inputs are on their way.'
