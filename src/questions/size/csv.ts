/** Designs of a sizing as CSV, unrounded. */

import { csvText } from '../../report/csv.js'
import type { SizeResult } from './document.js'

/** A row per design that was looked at, in order of cost. */
export function designsSizedCsv({ choices, promises, designs, currency }: SizeResult): string {
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
  ]
  const rows = designs.map(({ place, set, cost, verdict, without, shifts, promises: figures }) => [
    ...[place, ...paths.map((path) => cellOf(set[path])), cost ?? '', verdict, without ?? '', shifts],
    ...figures.flatMap(({ mean, low, high }) => [mean ?? '', low ?? '', high ?? '']),
  ])
  return csvText([head, ...rows])
}

const cellOf = (value: unknown) => (typeof value === 'object' ? JSON.stringify(value) : value)
