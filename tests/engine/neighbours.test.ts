/** Between an instant and its neighbours lies no number. */
import fc from 'fast-check'
import { expect, it } from 'vitest'
import { justAfter, justBefore } from '../../src/engine/neighbours.js'

/** The number whose 64 bits, read as a whole number, are `by` more. */
function bitsAway(instant: number, by: bigint): number {
  const bits = new BigInt64Array(1)
  const number = new Float64Array(bits.buffer)
  number[0] = instant
  bits[0]! += by
  return number[0]!
}

it.each([1, 2, 0.5, 1024, 1862, 28_800, 1 + Number.EPSILON])('of %d', (instant) => {
  expect(justAfter(instant)).toBe(bitsAway(instant, 1n))
  expect(justBefore(instant)).toBe(bitsAway(instant, -1n))
})

it('of any instant', () => {
  fc.assert(
    fc.property(fc.double({ min: 1e-6, max: 1e9, noNaN: true }), (instant) => {
      expect(justAfter(instant)).toBe(bitsAway(instant, 1n))
      expect(justBefore(instant)).toBe(bitsAway(instant, -1n))
    }),
    { numRuns: 2000, seed: 1 },
  )
})
