/** No case lies on another at any event of 500 random rows of conveyors, belts and sealers, tails counted. */
import fc from 'fast-check'
import { expect, it } from 'vitest'
import { overlapOf, rows } from '../line/tails.js'

it('no case lies on another', () => {
  fc.assert(
    fc.property(rows, fc.integer({ min: 1, max: 1000 }), (row, shift) => {
      expect(overlapOf(row, shift)).toBeNull()
    }),
    { numRuns: 500, seed: 20261129 },
  )
})
