/** Rows worked ahead have the shifts that events have, a hundred thousand of them. */
import fc from 'fast-check'
import { expect, it } from 'vitest'
import { chains } from '../line/chains.js'
import { comparedOf } from '../line/engines.js'
import { rows } from '../line/rows.js'

it('rows of random shape give the same shifts to 1e-9', () => {
  fc.assert(
    fc.property(rows, fc.integer({ min: 1, max: 1000 }), (given, shift) => {
      expect(comparedOf(given, shift).apart).toEqual([])
    }),
    { numRuns: 100_000, seed: 2 },
  )
}, 0)

it('rows of pieces in any order give the same shifts to 1e-9', () => {
  fc.assert(
    fc.property(chains, fc.integer({ min: 1, max: 1000 }), (given, shift) => {
      expect(comparedOf(given, shift).apart).toEqual([])
    }),
    { numRuns: 25_000, seed: 2 },
  )
}, 0)
