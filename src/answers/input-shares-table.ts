/** How much each input adds to the uncertainty of figures, as a table: inputs down, figures across. */
import { type Cell, figures, words } from '../report/cell.js'
import { percent } from '../report/format.js'
import type { Table } from '../report/report.js'
import { within } from '../report/sections.js'
import type { ContributionsTold } from './contributions.js'
import type { RestsOn } from './rests-on.js'

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
