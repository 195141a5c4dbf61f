/** Every law, over all parameters that the format lets through, gives finite times that do not fall as the number rises. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Law } from '../../src/engine/variates.js'
import { inverse } from './inverse.js'

const laws: fc.Arbitrary<Law> = fc.oneof(
  fc.record({
    law: fc.constant('exponential' as const),
    mean: fc.double({ min: 1e-6, max: 1e6, noNaN: true }),
  }),
  fc.record({
    law: fc.constant('lognormal' as const),
    mean: fc.double({ min: 1e-3, max: 1e6, noNaN: true }),
    cv: fc.double({ min: 0, max: 100, noNaN: true }),
  }),
  fc.record({
    law: fc.constant('gamma' as const),
    mean: fc.double({ min: 1e-3, max: 1e6, noNaN: true }),
    cv: fc.double({ min: 0.01, max: 5, noNaN: true }),
  }),
  fc.record({
    law: fc.constant('erlang' as const),
    mean: fc.double({ min: 1e-3, max: 1e6, noNaN: true }),
    phases: fc.integer({ min: 1, max: 10_000 }),
  }),
  fc.record({
    law: fc.constant('weibull' as const),
    shape: fc.double({ min: 0.05, max: 1000, noNaN: true }),
    scale: fc.double({ min: 1e-3, max: 1e6, noNaN: true }),
  }),
  fc.record({
    law: fc.constant('normal' as const),
    mean: fc.constant(10),
    sd: fc.double({ min: 0, max: 100, noNaN: true }),
    atLeast: fc.double({ min: 0, max: 10, noNaN: true }),
  }),
)

const ends = [
  2 ** -33,
  2 ** -20,
  0.001,
  1 / 128 - 1e-9,
  1 / 128,
  0.1,
  0.5,
  0.9,
  1 - 1 / 128,
  0.999,
  1 - 2 ** -20,
  1 - 2 ** -33,
]

describe('quantile functions', () => {
  it('are finite, not negative and rising from end to end', () => {
    fc.assert(
      fc.property(laws, (law) => {
        const values = ends.map(inverse(law))
        for (const [index, value] of values.entries()) {
          expect(Number.isFinite(value)).toBe(true)
          expect(value).toBeGreaterThanOrEqual(0)
          if (index > 0) expect(value).toBeGreaterThanOrEqual(values[index - 1]! * (1 - 1e-9))
        }
      }),
      { numRuns: 400, seed: 11 },
    )
  })

  it('of observed values are the values, each with its share', () => {
    const quantile = inverse({ law: 'observed', values: [1, 2, 4, 8] })
    expect([0.1, 0.25 + 1e-9, 0.6, 0.99].map(quantile)).toEqual([1, 2, 4, 8])
  })
})
