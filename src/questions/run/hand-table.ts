/** Hand figures beside simulated ones, and why they part: what a run finds that averages cannot. */

import { figureAt } from '../../answers/figure-at.js'
import type { EquipmentResult } from '../../answers/line-result.js'
import type { ByHand } from '../../answers/made.js'
import type { Figure } from '../../catalogue/figure.js'
import type { ArrivalKey } from '../../catalogue/of-people.js'
import { figures } from '../../catalogue/printed-units.js'
import { type StateKey, stateKeys, states } from '../../catalogue/states.js'
import { isPerThousand } from '../../catalogue/unit-name.js'
import { type Cell, figures as ofFigures, words } from '../../report/cell.js'
import type { Table } from '../../report/report.js'
import type { RunResult } from './document.js'

type HandRow = ByHand['rows'][number]

/** A difference below this share of the hand figure is no matter, whatever the plus-minus. */
const small = 0.01
/** Two figures that both follow the number of cases part from hand in the same proportion, to within this. */
const alike = 0.02

/** Simulated over hand; NaN where either says nothing. */
const ratio = (row: HandRow | undefined, figure: Figure | undefined): number =>
  row?.value && figure && figure.mean !== null ? figure.mean / row.value : Number.NaN

const isApart = (value: number, { mean, low, high }: Figure): boolean =>
  mean !== null &&
  low !== null &&
  high !== null &&
  (value < low || value > high) &&
  Math.abs(mean - value) > small * Math.abs(value)

/** Figures worked by hand that the run measures too: both, their difference, and where it comes from. Heads are left out. */
export function handTable(result: RunResult): Table {
  const all = result.byHand?.rows ?? []
  const flow = ratio(
    all.find(({ measure }) => measure === 'measures.output'),
    result.measures.output,
  )
  const rows = all.flatMap((row): Cell[][] => {
    const figure = figureAt(result, row.measure)
    if (row.measure.includes('.heads.') || row.value === null || !figure || figure.mean === null) return []
    const why = isApart(row.value, figure) ? reason(row, figure, flow, result) : ''
    return [[row.label, row, figure, changeText(row.value, figure), why]]
  })
  return {
    title: 'Hand calculation and simulation',
    note: `Hand calculation uses averages: no waiting, and stops do not affect each other. The difference is the effect of variation, stops and full conveyors. "Agrees": within ${result.drawn ? 'the plus-minus from random variation' : 'plus-minus'}, or within 1 %.`,
    columns: [...words('figure'), ...ofFigures('by hand', 'simulated', 'difference'), ...words('why')],
    rows: [...rows.slice(0, 1), ...expectedRow(result), ...rows.slice(1)],
  }
}

/** The output that stops and buffers leave, beside the simulated one; none where it was not worked out. */
function expectedRow({ byHand, measures }: RunResult): Cell[][] {
  const expected = byHand?.expected
  const figure = measures.throughput
  if (!expected || !figure || figure.mean === null) return []
  const hand = expected.throughput
  const usual =
    Math.abs(figure.mean / hand - 1) <= expected.within
      ? 'within the usual error of this calculation'
      : 'more than the usual error of this calculation'
  const why = isApart(hand, figure) ? usual : ''
  const amount = { value: hand, unit: figure.unit }
  return [['Throughput, with stops and buffers', amount, figure, changeText(hand, figure), why]]
}

/** By how much the simulated figure is more than the one by hand: `+1.2 %`. */
function changeText(value: number, figure: Figure): string {
  const change = figure.mean! / value - 1
  if (!isApart(value, figure) || !Number.isFinite(change)) return 'agrees'
  return `${change > 0 ? '+' : ''}${figures(change * 100, 2)} %`
}

const percent = (share: number): string => `${figures(share * 100, 2)} %`

/** The first reason that holds. */
function reason(row: HandRow, figure: Figure, flow: number, result: RunResult): string {
  const own = ratio(row, figure)
  const { measure, unit } = row
  const name = /^equipment\.([^.]+)\./.exec(measure)?.[1] ?? ''
  const piece = result.equipment[name]
  const folding =
    own > flow
      ? 'cases arrive far apart, so more flaps are folded while the belts are free'
      : 'cases arrive close together, so more flaps are folded during the headway of the case ahead'
  const isAsOutput = Math.abs(flow - 1) > small && Math.abs(own - flow) <= alike * flow
  if (measure === 'measures.throughput' || measure === 'measures.output') return whyOutput(result, own)
  if (measure === 'measures.time-in-system')
    return `waiting, which hand calculation ignores: ${mostHeld(result)}`
  if (measure.endsWith('.held')) return `cases queue${blockedText(piece)}`
  if (isAsOutput) return 'same cause as the output'
  // what is spread over the cases goes the other way
  if (isPerThousand(unit) && Math.abs(own * flow - 1) <= alike) return 'divided by the output'
  if (measure.endsWith('.states.working')) return folding
  if (measure.startsWith('crew.')) return 'random stops, cut off by the end of the shift or delayed by breaks'
  if (unit === 'count') return 'chance, and cycles cut by the start and end of shifts'
  return piece ? `states of ${name}: ${topStates(piece)}` : 'the mix, losses and part rolls of these shifts'
}

/** What holds the output off its hand figure: packers that wait, cases turned away, or what the bottleneck stands for. */
function whyOutput({ byHand, arrivals, equipment }: RunResult, own: number): string {
  if (own > 1) return 'more output than by averages: the bottleneck stops less often than calculated'
  const causes: [number, string][] = []
  for (const [name, figures] of Object.entries(arrivals)) {
    const weight = byHand?.shareOfArrivals[name] ?? 1
    const add = (key: ArrivalKey, text: (share: string) => string) => {
      const mean = figures[key]?.mean
      if (mean) causes.push([mean * weight, text(percent(mean))])
    }
    add('blocked', (share) => `${name} is blocked ${share} of the time`)
    add('turned-away', (share) => `${name} turns away ${share}`)
  }
  const name = byHand?.bottleneck
  const bottleneck = name ? equipment[name] : undefined
  if (bottleneck && byHand!.shareAdmitted < 1)
    causes.push([
      shareOf(bottleneck, 'waiting') + shareOf(bottleneck, 'blocked') + stopsOf(bottleneck, true),
      `${name}: ${topStates(bottleneck)}`,
    ])
  causes.sort((a, b) => b[0] - a[0])
  const text = causes
    .filter(([share]) => share > small / 2)
    .slice(0, 2)
    .map(([, words]) => words)
  return text.length > 0 ? text.join('; ') : 'cases still in the line at the end of the shift'
}

const shareOf = (piece: EquipmentResult, key: StateKey): number => piece.states[key]?.mean ?? 0

/** The share of the stops in which somebody is waited for, or in which somebody is there; planned ones left out. */
const stopsOf = (piece: EquipmentResult, isWait: boolean): number =>
  stateKeys
    .filter((key) => {
      const { stop, isWaitForCrew = false } = states[key]
      return stop !== undefined && stop !== 'planned' && isWaitForCrew === isWait
    })
    .reduce((sum, key) => sum + shareOf(piece, key), 0)

/** The largest of what keeps a piece from working, in words. */
function topStates(piece: EquipmentResult): string {
  const all: [number, string][] = [
    [shareOf(piece, 'waiting'), 'starved'],
    [shareOf(piece, 'blocked'), 'blocked'],
    [stopsOf(piece, true), 'waiting for crew'],
    [stopsOf(piece, false), 'stops being cleared'],
    [shareOf(piece, 'planned-stop'), 'planned stops'],
  ]
  return all
    .sort((a, b) => b[0] - a[0])
    .filter(([share]) => share > 0)
    .slice(0, 2)
    .map(([share, words]) => `${words} ${percent(share)}`)
    .join(', ')
}

const blockedText = (piece: EquipmentResult | undefined): string => {
  const blocked = piece ? shareOf(piece, 'blocked') : 0
  return blocked > 0 ? `: the next piece takes none for ${percent(blocked)} of the time` : ''
}

/** Where most cases stand, beyond a ride: the place that holds most. */
function mostHeld(result: RunResult): string {
  const [most] = [
    ...Object.entries(result.equipment).map(([name, { measures }]) => [name, measures.held] as const),
    ...Object.entries(result.arrivals).map(([name, { held }]) => [`the floor at ${name}`, held] as const),
  ]
    .flatMap(([place, held]) => (held?.mean ? [{ place, cases: held.mean }] : []))
    .sort((a, b) => b.cases - a.cases)
  return most ? `most wait on ${most.place} (${figures(most.cases)} cases)` : 'in queues'
}
