/** What the values of a scenario rest on, as documents tell it and reports print it: evidence, or what stands where nobody names one; and how much each input adds. */
import type { Amount } from '../catalogue/figure.js'
import {
  amountText,
  type Display,
  inSmall,
  inUnitsOf,
  spanText,
  wordsFor,
} from '../catalogue/printed-units.js'
import { type Cell, figures, words } from '../report/cell.js'
import { percent } from '../report/format.js'
import type { Table } from '../report/report.js'
import { within } from '../report/sections.js'
import type { Known } from '../scenario/known.js'
import type { ContributionsTold } from './contributions.js'
import { flowText } from './flow.js'

/** A value that says how well it is known; in SI, of a law its mean. */
export interface RestsOn {
  path: string
  form: Known['form']
  restsOn: string
  unit: string
  value: number | null
  low: number | null
  high: number | null
  confidence: number
}

/** A value that the scenario does not say: its path, and where it comes from. */
export interface Assumed {
  path: string
  value: unknown
  basis: string
}

/** What a document tells of its inputs. */
export interface InputsTold {
  evidence: RestsOn[]
  /** A sentence on what is taken as exact. */
  exact: string
}

/** The table of what the inputs rest on; without rows where nothing says so. `isDrawn`: they are in the plus-minus. */
export function restsOnTable(evidence: readonly RestsOn[], display: Display, isDrawn = false): Table {
  return {
    title: 'Evidence for the inputs',
    note: `Values that say how well they are known. For a distribution, its mean is shown. Counted chances and rates have exact limits. For a guess, the limits hold the true value nine times in ten. ${isDrawn ? 'The plus-minus of this study includes this uncertainty.' : 'The plus-minus of a study with these values fixed covers only the random variation of its shifts.'}`,
    columns: [...words('input'), ...figures('value'), ...words('based on'), ...figures('lies between')],
    rows: evidence.map((each): Cell[] => [
      { path: each.path },
      inputText(each.value, each, display) ?? 'none seen',
      each.restsOn,
      intervalText(each, display),
    ]),
  }
}

/** An input, or an end of it, with its unit; null where that is not known. */
export function inputText(
  value: number | null,
  { unit }: Pick<RestsOn, 'unit'>,
  display: Display,
): string | null {
  if (value === null) return null
  if (unit === 'K') return wordsFor(display).temperature(value)
  const amount: Amount = { value, unit }
  return amountText(unit === 'm' && Math.abs(value) < 1 ? inSmall(amount) : amount, display)
}

function intervalText(each: RestsOn, display: Display): string {
  const [low, high] = [inputText(each.low, each, display), inputText(each.high, each, display)]
  const sure = `(${each.confidence * 100} %)`
  return high === null ? `above ${low} ${sure}` : `${spanText(low ?? '', high)} ${sure}`
}

/** Is it without a published source? */
export const isUnsourced = ({ basis }: Assumed): boolean => basis !== 'definition of the format'

/** Columns and rows of a table of them. */
export const assumedColumns = words('what', 'value', 'where the value comes from')
export const assumedRows = (assumed: readonly Assumed[], display: Display): Cell[][] =>
  assumed.map(({ path, value, basis }) => [{ path }, inUnitsOf(flowText(value), display), basis])

/** A figure with its inputs: their parts, and that of all of them in the variance of the whole. */
export interface FigureInputs {
  told: Pick<ContributionsTold, 'label' | 'explained' | 'shares'>
  ofWhole: number
}

/** Those first that add most to the first figure; without rows where inputs were not drawn, or nothing can be told apart. */
export function inputSharesTable(all: readonly FigureInputs[], evidence: readonly RestsOn[]): Table {
  const explained = all.map(({ told }) => `${told.label}: ${percent(told.explained)}`)
  const shareIn = ({ told }: FigureInputs, path: string) =>
    percent(told.shares.find((each) => each.path === path)?.share ?? 0)
  return within('unknown', {
    title: 'How much each input adds to the uncertainty',
    note: `Share of the input variance that each input explains alone, by regression on ranks of the draws. Explained together (adjusted R²): ${explained.join('; ')}. Last row: the share of all inputs in the total variance; the rest is random variation of the simulation.`,
    columns: [...words('input', 'based on'), ...figures(...all.map(({ told }) => told.label))],
    rows:
      all.length === 0
        ? []
        : [
            ...all[0]!.told.shares.map(({ path }): Cell[] => [
              { path },
              evidence.find((each) => each.path === path)?.restsOn ?? '',
              ...all.map((each) => shareIn(each, path)),
            ]),
            ['all inputs, share of the total', '', ...all.map(({ ofWhole }) => percent(ofWhole))],
          ],
  })
}
