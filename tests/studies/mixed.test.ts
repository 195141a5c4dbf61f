/** The balances close on 5,000 random lines that mix all that a floor has, and 500 of them are the same where they are traced. */
import fc from 'fast-check'
import { expect, it } from 'vitest'
import { mixed } from '../line/mixed.js'
import { mixedFault, traceFault } from '../line/mixed-closes.js'

const shifts = fc.integer({ min: 1, max: 1000 })
const seed = 20261130

it('keep their balances', () => {
  fc.assert(
    fc.property(mixed, shifts, (given, shift) => {
      const fault = mixedFault(given, shift)
      if (fault !== 'locked') expect(fault).toBeNull()
    }),
    { numRuns: 5000, seed },
  )
})

it('are the same where they are traced', () => {
  fc.assert(
    fc.property(mixed, shifts, (given, shift) => {
      expect(traceFault(given, shift)).toBeNull()
    }),
    { numRuns: 500, seed },
  )
})
