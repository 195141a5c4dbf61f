/** Chart of the losses as the target sees them: from the cases that it asks for to those that come out, and where the line loses them. Means of a shift. */
import { share } from '../../answers/losses-table.js'
import { shiftTarget } from '../../answers/shift-target.js'
import { suffixCannotWork } from '../../answers/warnings.js'
import { figureText, grouped } from '../../report/format.js'
import { numbers } from '../../report/marks/axis.js'
import { steps } from '../../report/marks/bars.js'
import { wrapped } from '../../report/marks/breaking.js'
import { type Chart, chartOf } from '../../report/marks/chart.js'
import { palette } from '../../report/marks/inks.js'
import { ruleUp } from '../../report/marks/rule.js'
import type { RunResult } from './document.js'

/** A step of a shift in cases; what is lost counts below 0. */
export interface DemandStep {
  key: 'asked' | 'offered' | 'waits' | 'turned-away' | 'spoilt' | 'rejected' | 'unsealed' | 'inside' | 'out'
  label: string
  cases: number
}

/** Less of a case a shift than this shows nowhere. */
const hair = 0.05

/**
 * The steps, which add up exactly: from the target, or without one from what would come if nobody ever waited for room, to the
 * good cases out. People who wait bring nothing meanwhile, so at their own pace `arrived / (1 - share waited)` would come. Null where
 * nothing is known of arrivals. What is left over is still in the line, or was at the start.
 */
export function demandSteps(result: RunResult): DemandStep[] | null {
  const { arrivals, measures, equipment } = result
  const sources = Object.entries(arrivals)
  const out = measures.output?.mean ?? null
  if (out === null || sources.length === 0) return null
  if (sources.some(([, { arrived }]) => arrived?.mean == null)) return null
  const target = shiftTarget(result)?.cases ?? null
  const arrived = sum(sources.map(([, of]) => of.arrived!.mean!))
  const waited = sum(
    sources.map(([, of]) => {
      const share = Math.min(0.999, of.blocked?.mean ?? 0)
      return (of.arrived!.mean! * share) / (1 - share)
    }),
  )
  const turned = sum(sources.map(([, of]) => of.arrived!.mean! * (of['turned-away']?.mean ?? 0)))
  const spoilt = sum(
    Object.values(equipment).map(({ pieces, measures }) =>
      pieces ? 0 : (measures['cases-lost']?.mean ?? 0),
    ),
  )
  const [rejected, unsealed] = [measures.rejected?.mean ?? 0, measures.unsealed?.mean ?? 0]
  const inside = arrived - turned - spoilt - rejected - unsealed - out
  const names = sources.map(([name]) => name)
  const who = names.length === 1 ? names[0]! : 'those who feed the line'
  const more = target === null ? 0 : arrived + waited - target
  const between: DemandStep[] = [
    { key: 'offered', label: more > 0 ? `${who} would bring more` : `${who} brings fewer`, cases: more },
    { key: 'waits', label: `${who} waits for room`, cases: -waited },
    { key: 'turned-away', label: 'turned away at the start', cases: -turned },
    { key: 'spoilt', label: 'spoilt in jams', cases: -spoilt },
    { key: 'rejected', label: 'rejected', cases: -rejected },
    { key: 'unsealed', label: 'left unsealed, unnoticed', cases: -unsealed },
    {
      key: 'inside',
      label: inside < 0 ? 'in the line from before' : 'still in the line at the end',
      cases: -inside,
    },
  ]
  return [
    {
      key: 'asked',
      label: target === null ? `${who} would bring` : 'the target asks for',
      cases: target ?? arrived + waited,
    },
    ...between.filter(({ cases }) => Math.abs(cases) >= hair),
    { key: 'out', label: 'good cases out', cases: out },
  ]
}

const sum = (all: readonly number[]): number => all.reduce((total, each) => total + each, 0)

export const demandName = 'demand'

export const hasDemand = (result: RunResult): boolean => demandSteps(result) !== null

/** Letters of a row beside the picture. */
const rowLetters = 19

/** The steps as rows; null where nothing is known of arrivals. */
export function demandChart(result: RunResult): Chart | null {
  const all = demandSteps(result)
  if (all === null) return null
  const [asked] = all as [DemandStep, ...DemandStep[]]
  const texts = all.map((step) => textOf(step, asked.cases, result))
  // all against what is asked: the steps are small beside the whole
  let left = 0
  const rows = all.map(({ key, cases }) => {
    if (key === 'asked') return { from: 0, to: 0, colour: palette.frame }
    const isEnd = key === 'out'
    const from = isEnd ? 0 : left
    left = isEnd ? cases - asked.cases : left + cases
    return { from, to: left, colour: colourOf(key, isEnd ? left : cases) }
  })
  const ends = rows.flatMap(({ from, to }) => [from, to])
  const room = Math.max(1, Math.max(...ends) - Math.min(...ends)) * 0.06
  return chartOf(result, {
    name: demandName,
    section: 'losses',
    title: titleOf(result, all),
    subtitle: subtitleOf(result),
    alt: `${titleOf(result, all)}. ${all.map(({ label }, row) => `${label} ${texts[row]}`).join('; ')}.`,
    mayNarrow: true,
    gap: 8,
    height: all.length * 48,
    rows: all.map(({ label }, row) => [...wrapped(label, rowLetters), texts[row]!]),
    axes: {
      x: numbers({
        title: `cases against ${result.target === null ? 'what could come' : 'the target'}`,
        min: Math.min(...ends) - room,
        max: Math.max(...ends) + room,
        most: 6,
        isInside: true,
        textOf: (value) => `${value > 0 ? '+' : ''}${grouped(value, Number.isInteger(value) ? 0 : 1)}`,
      }),
    },
    marks: [...steps('cases a shift', rows), ruleUp(0)],
  })
}

/** More than is asked for is spare, and no gain. */
function colourOf(key: DemandStep['key'], cases: number): string {
  if (key === 'out') return cases < 0 ? palette.lost : palette.main
  return cases < 0 ? palette.lost : palette.frame
}

function textOf({ key, cases }: DemandStep, asked: number, { measures, display }: RunResult): string {
  if (key === 'out') return figureText(measures.output, display)
  if (key === 'asked') return grouped(cases, 0)
  const size = grouped(Math.abs(cases), Math.abs(cases) < 10 ? 1 : 0)
  return `${cases < 0 ? '−' : '+'}${size} (${share(Math.abs(cases) / asked)})`
}

function titleOf(result: RunResult, all: readonly DemandStep[]): string {
  const [asked, out] = [all[0]!.cases, all.at(-1)!.cases]
  const but = suffixCannotWork(result)
  const worst = [...all.slice(1, -1)].filter(({ cases }) => cases < 0).sort((a, b) => a.cases - b.cases)[0]
  const most = worst ? `; most is lost because: ${worst.label}` : ''
  if (result.target === null)
    return `Of ${grouped(asked, 0)} cases that could come ${grouped(out, 0)} come out good${most}${but}`
  const gap = out - asked
  return gap >= 0
    ? `The target asks for ${grouped(asked, 0)} cases a shift; ${grouped(out, 0)} come out${but}`
    : `${grouped(-gap, gap > -10 ? 1 : 0)} of the ${grouped(asked, 0)} cases a shift are missing${most}${but}`
}

const subtitleOf = ({ target }: RunResult): string =>
  `Mean of a shift, step by step${target === null ? '' : ' from the target'}; dashed: ${target === null ? 'what could come' : 'the target'}. In brackets: share of it. Time without cases to seal does not count as a loss.`
