/** What is not known of the inputs: each of them with its part of it, figure by figure. */
import type { Contribution } from '../../answers/contributions.js'
import { type Cell, figures, words } from '../../report/cell.js'
import { percent } from '../../report/format.js'
import type { Table } from '../../report/report.js'
import { within } from '../../report/sections.js'
import type { RunResult } from './document.js'

/** Parts of the inputs, those first that add most to the first figure; without rows where inputs were not drawn. */
export function inputsTable({ drawn, evidence = [], measures }: RunResult): Table {
  const told = (drawn?.contributions ?? []).filter(({ shares }) => shares.some(({ share }) => share > 0))
  const shareIn = (shares: readonly Contribution[], path: string) =>
    percent(shares.find((each) => each.path === path)?.share ?? 0)
  const explained = told.map(({ label, explained }) => `${label}: ${percent(explained)}`)
  const ofWhole = (measure: string) => measures[measure as keyof typeof measures]?.inputs?.share ?? Number.NaN
  return within('unknown', {
    title: 'What each input adds to what is not known',
    note: `Shares of the variance that the inputs bring, each taken alone, by regression on the ranks of what was drawn. What is explained of the draws so (R², adjusted): ${explained.join('; ')}. The last row: part of the inputs in the variance of the whole; the rest is luck of the simulation.`,
    columns: [...words('input', 'rests on'), ...figures(...told.map(({ label }) => label))],
    rows:
      told.length === 0
        ? []
        : [
            ...told[0]!.shares.map(({ path }): Cell[] => [
              { path },
              evidence.find((each) => each.path === path)?.restsOn ?? '',
              ...told.map(({ shares }) => shareIn(shares, path)),
            ]),
            ['all inputs, of the whole', '', ...told.map(({ measure }) => percent(ofWhole(measure)))],
          ],
  })
}
