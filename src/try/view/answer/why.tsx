/** Why the answer is what it is: states, losses, cases held, what the check finds, and how sure all that is, each folded away. */
import { type Signal, useSignal } from '@preact/signals'
import type { ComponentChildren } from 'preact'
import type { RunResult } from '../../../questions/run/document.js'
import { heldChart } from '../../../questions/run/held-chart.js'
import { lossesCharts } from '../../../questions/run/losses-chart.js'
import { outputChart } from '../../../questions/run/output-chart.js'
import { statesChart } from '../../../questions/run/states-chart.js'
import { counted } from '../../../report/format.js'
import type { Desk } from '../desk/desk.js'
import { Fold } from '../prose.js'
import { Charts, type ChartsOf } from './charts.js'
import { Findings } from './findings.js'
import { HowSure } from './how-sure.js'

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
  gist?: string
  isOpen?: boolean
  /** Made while it is open. */
  children: () => ComponentChildren
}

export function OpenFold({ title, gist, isOpen = false, children }: OpenFoldProps) {
  const open: Signal<boolean> = useSignal(isOpen)
  return (
    <Fold
      title={title}
      gist={gist}
      isOpen={open.value}
      told={(is) => {
        open.value = is
      }}
    >
      {open.value ? children() : null}
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
