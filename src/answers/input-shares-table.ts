/** What each input adds to what is not known of figures, as a table: inputs down, figures across. */
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
    title: 'What each input adds to what is not known',
    note: `Shares of the variance that the inputs bring, each taken alone, by regression on the ranks of what was drawn. What is explained of the draws so (R², adjusted): ${explained.join('; ')}. The last row: part of the inputs in the variance of the whole; the rest is luck of the simulation.`,
    columns: [...words('input', 'rests on'), ...figures(...all.map(({ told }) => told.label))],
    rows:
      all.length === 0
        ? []
        : [
            ...all[0]!.told.shares.map(({ path }): Cell[] => [
              { path },
              evidence.find((each) => each.path === path)?.restsOn ?? '',
              ...all.map((each) => shareIn(each, path)),
            ]),
            ['all inputs, of the whole', '', ...all.map(({ ofWhole }) => percent(ofWhole))],
          ],
  })
}
