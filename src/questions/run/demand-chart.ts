/** Chart of the losses as the target sees them: from the cases that it asks for to those that come out. */
import { share } from '../../answers/losses-table.js'
import { suffixCannotWork } from '../../answers/warnings.js'
import { figureText, grouped } from '../../report/format.js'
import { numbers } from '../../report/marks/axis.js'
import { steps } from '../../report/marks/bars.js'
import { wrapped } from '../../report/marks/breaking.js'
import { type Chart, chartOf } from '../../report/marks/chart.js'
import { palette } from '../../report/marks/inks.js'
import { ruleUp } from '../../report/marks/rule.js'
import { type DemandStep, demandSteps } from './demand.js'
import type { RunResult } from './document.js'

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
