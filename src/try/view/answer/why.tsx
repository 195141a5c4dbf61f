/** Why the answer is what it is: states, losses, cases held, what the check finds, and how sure all that is, each folded away. */
import type { ComponentChildren } from 'preact'
import { useState } from 'preact/hooks'
import { measureNext } from '../../../answers/inputs-words.js'
import type { FindingResult } from '../../../questions/check/document.js'
import { certaintyLines } from '../../../questions/run/certainty.js'
import type { RunResult } from '../../../questions/run/document.js'
import { runScreen } from '../../../questions/run/first-screen.js'
import { heldChart } from '../../../questions/run/held-chart.js'
import { inputsCharts } from '../../../questions/run/inputs-charts.js'
import { lossesCharts } from '../../../questions/run/losses-chart.js'
import { outputChart } from '../../../questions/run/output-chart.js'
import { statesChart } from '../../../questions/run/states-chart.js'
import { counted } from '../../../report/format.js'
import type { Desk } from '../desk/desk.js'
import { Fold, Prose, Sentences } from '../prose.js'
import { Charts, type ChartsOf } from './charts.js'
import { PathButton } from './path-button.js'
import { inPage, saidOf } from './verdict.js'

export function Why({ desk }: { desk: Desk }) {
  const { figures, drawn, checked } = desk.known
  const now = (drawn.value ?? figures.value)?.after ?? null
  const found = checked.value?.check.findings ?? []
  const errors = found.filter(({ severity }) => severity === 'error').length
  const warnings = found.filter(({ severity }) => severity === 'warning').length
  return (
    <>
      <ChartFold title="What each machine does" result={now} charts={statesChart} isOpen={true} />
      <ChartFold title="Where output is lost" result={now} charts={lossesCharts} most={4} />
      <ChartFold title="Cases in the line" result={now} charts={heldChart} />
      <ChartFold title="How shifts differ" result={now} charts={outputChart} />
      <Fold
        title="What the check says without simulating"
        gist={checked.value ? `${counted(errors, 'error')}, ${counted(warnings, 'warning')}` : ''}
      >
        <Findings desk={desk} findings={found} />
      </Fold>
      <OpenFold title="How sure is this">{() => (now ? <HowSure result={now} /> : null)}</OpenFold>
    </>
  )
}

interface OpenFoldProps {
  title: string
  isOpen?: boolean
  /** Made while it is open. */
  children: () => ComponentChildren
}

function OpenFold({ title, isOpen = false, children }: OpenFoldProps) {
  const [isShown, show] = useState(isOpen)
  return (
    <Fold title={title} isOpen={isShown} told={show}>
      {isShown ? children() : null}
    </Fold>
  )
}

interface ChartFoldProps {
  title: string
  result: RunResult | null
  charts: ChartsOf
  isOpen?: boolean
  /** How many charts there may be. */
  most?: number
}

function ChartFold({ title, result, charts, isOpen = false, most = 1 }: ChartFoldProps) {
  return (
    <OpenFold title={title} isOpen={isOpen}>
      {() => (result ? <Charts result={result} charts={charts} most={most} /> : null)}
    </OpenFold>
  )
}

const words = { error: 'Error', warning: 'Warning', note: 'To know' } as const
const tones = { error: 'error', warning: 'warning', note: 'plain' } as const

/** What the check finds: the worst first, each with what it rests on and the nearest fix. */
function Findings({ desk, findings }: { desk: Desk; findings: readonly FindingResult[] }) {
  if (findings.length === 0) return <p>The check finds nothing to say.</p>
  return (
    <ul class="findings">
      {findings.map(({ code, severity, path, message, fix, basis }) => (
        <li key={`${code} ${path}`}>
          <strong class={`word ${tones[severity]}`}>{words[severity]}</strong>{' '}
          {path ? <PathButton desk={desk} path={path} /> : null} <Prose text={message} />
          {fix ? (
            <>
              {' '}
              Fix: <Prose text={fix} />.
            </>
          ) : null}{' '}
          <span class="note">Basis: {basis}.</span>
        </li>
      ))}
    </ul>
  )
}

/** Charts of inputs that are shown: those of the figures that are asked for first. */
const mostCharts = 2

/** Luck of the simulation and what is not known of the inputs apart, and which input matters most. */
function HowSure({ result }: { result: RunResult }) {
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
