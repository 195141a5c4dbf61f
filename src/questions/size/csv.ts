/** Designs of a sizing as CSV, unrounded. */

import { csvText } from '../../report/csv.js'
import type { SizeResult } from './document.js'
import type { DrawRow } from './drawn.js'

/** A row per design that was looked at, in order of cost. */
export function designsSizedCsv({ choices, promises, designs, currency, drawn }: SizeResult): string {
  const paths = choices.map(({ path }) => path)
  const head = [
    ...[
      'design',
      ...paths,
      `cost of a shift by hand [${currency}]`,
      'verdict',
      'without simulating',
      'shifts',
    ],
    ...promises.flatMap(({ promise }) => [promise, 'low', 'high']),
    ...(drawn ? ['draws kept', 'draws missed', 'draws not told'] : []),
  ]
  const rows = designs.map(({ place, set, cost, verdict, without, shifts, promises: figures, draws }) => [
    ...[place, ...paths.map((path) => cellOf(set[path])), cost ?? '', verdict, without ?? '', shifts],
    ...figures.flatMap(({ mean, low, high }) => [mean ?? '', low ?? '', high ?? '']),
    ...(drawn ? [draws?.kept ?? '', draws?.missed ?? '', draws?.open ?? ''] : []),
  ])
  return csvText([head, ...rows])
}

const cellOf = (value: unknown) => (typeof value === 'object' ? JSON.stringify(value) : value)

const drawWords = { accepted: 'kept', refused: 'missed', undecided: 'not told' } as const

/** A row per draw of the inputs of the design that the search ends with: whether it keeps the promises, by how many shifts, the figure of the first promise over those that all draws have, and what was drawn, SI, of a law its mean. */
export const drawsSizedCsv = (
  { drawn, promises }: Pick<SizeResult, 'drawn' | 'promises'>,
  rows: readonly DrawRow[],
): string => {
  const promise = promises[0]!.promise
  const paths = drawn?.inputs ?? []
  return csvText([
    ['draw', 'promises', 'shifts', promise, ...paths],
    ...rows.map(({ verdict, shifts, figure, inputs }, index) => [
      ...[index + 1, drawWords[verdict], shifts, figure ?? ''],
      ...inputs,
    ]),
  ])
}
