/** Charts of the losses: steps from the capacity of a machine down to what comes out, and how several add up. */

import { halfText } from '../../answers/inputs-words.js'
import type { Losses, LossStep, MachineLosses } from '../../answers/losses.js'
import { share } from '../../answers/losses-table.js'
import { type Figure, wholeOf } from '../../catalogue/figure.js'
import { type StateKey, states } from '../../catalogue/states.js'
import { grouped, printFigure } from '../../report/format.js'
import { numbers, roomAtRight } from '../../report/marks/axis.js'
import { steps } from '../../report/marks/bars.js'
import { beside } from '../../report/marks/beside.js'
import { rowLabel, shortened } from '../../report/marks/breaking.js'
import { type Chart, type ChartAsked, chartOf } from '../../report/marks/chart.js'
import { palette } from '../../report/marks/inks.js'
import { heaviest } from '../../report/marks/most-rows.js'
import type { RunResult } from './document.js'

/** A bar of the picture: it reaches from one number of cases to another. */
interface LossRow {
  label: string
  from: number
  to: number
  kind: 'total' | 'loss' | 'spare'
  /** What stands beside it. */
  text: string
}

/** Stops below this share of the capacity are drawn together, where they are several. */
const leastShare = 0.005
const isStop = ({ key }: LossStep): boolean => states[key as StateKey]?.group === 'stop'
/** What is no loss of anybody: there is nothing to seal, or the shift has its break. */
const isSpare = ({ key }: LossStep): boolean => key === 'waiting' || key === 'on-break'
const isSmall = (step: LossStep): boolean => isStop(step) && Math.abs(step.share) < leastShare

/** More machines than this have no picture each. */
const mostMachines = 12

/** Cases that a machine loses. */
const lost = ({ losses }: MachineLosses): number =>
  losses.reduce((sum, step) => sum + (isSpare(step) ? 0 : Math.max(0, step.cases.mean ?? 0)), 0)

const whole = (cases: number): string => grouped(cases, 0)

/** One picture for each machine, of many for those that lose most; where several put out what leaves the line, one more for how they add up. */
export function lossesCharts(result: RunResult): Chart[] {
  const { losses } = result
  if (!losses) return []
  const last = losses.machines.filter(({ isFollowed, could }) => !isFollowed && could > 0)
  const able = losses.machines.filter(({ could }) => could > 0)
  const drawn = heaviest(able, lost, mostMachines)
  const charts = drawn.map((each, index) => {
    const name = drawn.length === 1 ? 'losses' : `losses-${index + 1}`
    return machineChart(result, each, last.length === 1 && last[0] === each ? losses : null, name)
  })
  return last.length > 1 ? [...charts, lineChart(result, losses, last)] : charts
}

/** The rows of a machine; with `losses` they go on to the output of the line. */
export function machineRows(machine: MachineLosses, losses: Losses | null): LossRow[] {
  const { could, leaves } = machine
  const small = machine.losses.filter(isSmall)
  const steps = small.length < 2 ? machine.losses : together(machine.losses, small)
  const rows = [total('capacity', could, could, 0, machine.limit)]
  let left = stepDown(rows, steps, could, could)
  if (losses === null || losses.line.length > 0)
    rows.push(total('passed on', leaves.mean ?? 0, could, 0, leaves))
  if (losses !== null) {
    left = stepDown(rows, losses.line, left, could)
    rows.push(total('good cases', losses.output.mean ?? 0, could, 0, losses.output))
  }
  return rows
}

/** The small stops as one step, where the first of them stands. */
function together(steps: readonly LossStep[], small: readonly LossStep[]): LossStep[] {
  const sum = (of: (step: LossStep) => number) => small.reduce((total, step) => total + of(step), 0)
  const mean = sum(({ cases }) => cases.mean ?? 0)
  // of several together no interval is known
  const { inputs: _, ...first } = small[0]!.cases
  const others: LossStep = {
    key: 'other-stops',
    label: 'other stops',
    cases: { ...first, mean, low: null, high: null, sd: null, label: 'other stops' },
    share: sum((step) => step.share),
  }
  // beside the stops that have a bar of their own, before what the machine loses while it works
  const at = steps.findLastIndex(isStop)
  return steps.flatMap((step, index) => [...(isSmall(step) ? [] : [step]), ...(index === at ? [others] : [])])
}

function stepDown(rows: LossRow[], steps: readonly LossStep[], from: number, could: number): number {
  let left = from
  for (const step of steps) {
    const to = left - (step.cases.mean ?? 0)
    const word = to > left ? 'more: ' : ''
    const isBare = step.cases.low === null && !step.cases.few
    const value = isBare ? whole(step.cases.mean ?? 0) : printFigure(step.cases, 'metric').value
    rows.push({
      label: word + step.label,
      from: left,
      to,
      kind: isSpare(step) ? 'spare' : 'loss',
      text: `${minus(value)}${giveOrTake(step.cases)}, ${share(Math.abs(left - to) / could)}`,
    })
    left = to
  }
  return left
}

/** ` ± 23`, where it holds what is not known of the inputs; luck alone is told by the table. */
const giveOrTake = (figure: Figure | undefined): string =>
  figure?.inputs ? ` ± ${halfText(figure, wholeOf(figure), 'metric')}` : ''

const minus = (value: string): string => (value.startsWith('-') ? `+${value.slice(1)}` : `−${value}`)

const total = (label: string, to: number, could: number, from = 0, figure?: Figure): LossRow => ({
  label,
  from,
  to,
  kind: 'total',
  text: `${whole(to - from)}${giveOrTake(figure)}, ${share((to - from) / could)}`,
})

function machineChart(result: RunResult, machine: MachineLosses, losses: Losses | null, name: string): Chart {
  const rows = machineRows(machine, losses)
  const small = machine.losses.filter(isSmall)
  const out = losses === null ? (machine.leaves.mean ?? 0) : (losses.output.mean ?? 0)
  const [most] = machine.losses
    .filter((step) => !isSpare(step) && (step.cases.mean ?? 0) > 0)
    .sort((a, b) => (b.cases.mean ?? 0) - (a.cases.mean ?? 0))
  const title = `${shortened(machine.machine, 30)} has a capacity of ${whole(machine.could)} cases a shift; ${whole(out)} ${losses === null ? 'are passed on' : 'come out good'}${most ? `. Largest loss: ${most.label}` : ''}`
  const others =
    small.length < 2
      ? ''
      : ` Other stops: ${small.map((step) => `${step.label} ${share(step.share)}`).join(', ')}.`
  const subtitle = `Cases a shift, and per cent of its capacity at ${grouped(machine.rate * 60, 1)} cases/min (${machine.how}). Grey does not count as a loss: time without cases to seal, and breaks. Mean over the shifts${machine.leaves.inputs ? ', plus-minus with the uncertainty of the inputs' : ''}.${others}`
  return stepsChart(result, rows, { name, title, subtitle })
}

/** How machines side by side add up to the line. */
function lineChart(result: RunResult, losses: Losses, last: readonly MachineLosses[]): Chart {
  const could = last.reduce((sum, each) => sum + each.could, 0)
  const rows: LossRow[] = []
  let left = 0
  for (const { machine, leaves } of last) {
    const to = left + (leaves.mean ?? 0)
    rows.push(total(`passed on by ${machine}`, to, could, left, leaves))
    left = to
  }
  stepDown(rows, losses.line, left, could)
  rows.push(total('good cases', losses.output.mean ?? 0, could, 0, losses.output))
  const title = `${whole(losses.output.mean ?? 0)} good cases a shift come from ${last.length} machines`
  const subtitle = `Cases a shift, and per cent of their capacity of ${whole(could)}. Mean over the shifts${losses.output.inputs ? ', plus-minus with the uncertainty of the inputs' : ''}.`
  return stepsChart(result, rows, { name: 'losses', title, subtitle })
}

function stepsChart(
  result: RunResult,
  rows: readonly LossRow[],
  said: Pick<ChartAsked, 'name' | 'title' | 'subtitle'>,
): Chart {
  return chartOf(result, {
    ...said,
    section: 'losses',
    alt: `${said.title}. ${rows.map(({ label, text }) => `${label} ${text}`).join('; ')}.`,
    gap: 8,
    height: rows.length * 30,
    rows: rows.map(({ label }) => rowLabel(label)),
    axes: {
      x: numbers({
        title: 'cases a shift',
        min: 0,
        max: Math.max(1, ...rows.flatMap(({ from, to }) => [from, to])),
        most: 8,
        isInside: true,
        decimals: 0,
      }),
      figures: roomAtRight(rows.some(({ text }) => text.includes('±')) ? 190 : 150),
    },
    marks: [
      ...steps(
        'cases a shift',
        rows.map(({ from, to, kind }) => ({
          from,
          to,
          colour: { total: palette.main, loss: palette.lost, spare: palette.frame }[kind],
        })),
      ),
      beside(
        rows.map(({ text, kind }, row) => ({ row, words: [{ text, right: 12, isBold: kind === 'total' }] })),
      ),
    ],
  })
}
