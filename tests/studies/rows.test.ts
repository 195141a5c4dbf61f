/** Rows worked ahead have the shifts that events have, more than a hundred thousand of them. */
import fc from 'fast-check'
import { expect, it } from 'vitest'
import { chains } from '../line/chains.js'
import { comparedOf } from '../line/engines.js'
import { type Row, rows } from '../line/rows.js'

const kinds: [string, fc.Arbitrary<Row>, number][] = [
  ['rows of random shape', rows, 100_000],
  ['rows of pieces in any order', chains, 25_000],
]

it.each(kinds)(
  '%s give the same shifts to 1e-9',
  (_, arbitrary, numRuns) => {
    fc.assert(
      fc.property(arbitrary, fc.integer({ min: 1, max: 1000 }), (given, shift) => {
        expect(comparedOf(given, shift).apart).toEqual([])
      }),
      { numRuns, seed: 2 },
    )
  },
  0,
)
