/** What is not known of the inputs: each of them with its part of it, figure by figure. */
import type { ContributionWithEnds, InputEndsTold } from '../../answers/contributions.js'
import { inputSharesTable, inputText } from '../../answers/rests-on.js'
import { briefUnit } from '../../catalogue/unit-name.js'
import { type Cell, figures, words } from '../../report/cell.js'
import { joined, printFigure } from '../../report/format.js'
import type { Table } from '../../report/report.js'
import { within } from '../../report/sections.js'
import type { RunResult } from './document.js'

/** How far the figure goes from its middle to either end of an input. */
const reachOf = ({ middle }: Pick<InputEndsTold, 'middle'>, { low, high }: ContributionWithEnds): number =>
  Math.max(Math.abs(low.figure - middle), Math.abs(high.figure - middle))

/** Inputs that move the figure, those first that move it most. */
export const byReach = (told: InputEndsTold): ContributionWithEnds[] =>
  told.shares.filter((each) => reachOf(told, each) > 0).sort((a, b) => reachOf(told, b) - reachOf(told, a))

/** The figure at an end or in the middle, and its unit. */
export function figureThere(
  value: number,
  told: InputEndsTold,
  { display }: Pick<RunResult, 'display'>,
): { value: string; unit: string } {
  const most = Math.max(...told.shares.map((each) => reachOf(told, each)))
  return printFigure(
    { mean: value, low: value - most, high: value + most, unit: briefUnit(told.unit) },
    display,
  )
}

/** The input at both of its ends. */
export function inputEnds(
  { path, low, high }: ContributionWithEnds,
  { evidence = [], display }: Pick<RunResult, 'evidence' | 'display'>,
): [low: string, high: string] {
  const told = evidence.find((each) => each.path === path) ?? { unit: '' }
  const text = (value: number) => inputText(Number(value.toPrecision(3)), told, display) ?? ''
  return [text(low.input), text(high.input)]
}

/** What each figure is at both ends of each input, those first that move the first figure most; without rows where inputs were not drawn. */
export function inputEndsTable(result: RunResult): Table {
  const told = (result.drawn?.contributions ?? []).filter((each) => byReach(each).length > 0)
  const [first] = told
  const moving = [...new Set(told.flatMap((each) => byReach(each).map(({ path }) => path)))]
  const middles = told.map((each) => {
    const { value, unit } = figureThere(each.middle, each, result)
    return `${each.label}: ${joined(value, unit)}`
  })
  return within('unknown', {
    title: 'Figures at the ends of each input',
    note: `Ends: 5 % of the draws of the input lie below the low end and 5 % above the high end. The other inputs are as drawn. By regression on ranks. In the middle of the draws: ${middles.join('; ')}.`,
    columns: [...words('input', 'its ends'), ...figures(...told.map(({ label }) => label))],
    rows: first
      ? moving.map((path): Cell[] => [
          { path },
          inputEnds(endsOf(first, path)!, result).join(' to '),
          ...told.map((each) => {
            const ends = endsOf(each, path)
            if (!ends || reachOf(each, ends) === 0) return 'the same'
            const [low, high] = [ends.low, ends.high].map((end) => figureThere(end.figure, each, result))
            return [`${low!.value} to ${joined(high!.value, high!.unit)}`]
          }),
        ])
      : [],
  })
}

const endsOf = ({ shares }: InputEndsTold, path: string) => shares.find((each) => each.path === path)

/** Parts of the inputs, those first that add most to the first figure; without rows where inputs were not drawn. */
export function inputsTable({ drawn, evidence = [], measures }: RunResult): Table {
  const told = (drawn?.contributions ?? []).filter(({ shares }) => shares.some(({ share }) => share > 0))
  const ofWhole = (measure: string) => measures[measure as keyof typeof measures]?.inputs?.share ?? Number.NaN
  return inputSharesTable(
    told.map((each) => ({ told: each, ofWhole: ofWhole(each.measure) })),
    evidence,
  )
}
