/** Latin hypercubes: what McKay, Beckman & Conover, Technometrics 21 (1979), sec. 2, define them by (from memory). */
import { describe, expect, it } from 'vitest'
import { latinHypercube, leastDistance, planTries } from '../../src/questions/sweep/plan.js'

describe('a plan', () => {
  it.each([
    [2, 3],
    [7, 4],
    [40, 5],
  ])('of %i points has of each of %i factors one value in each stratum', (size, factors) => {
    const plan = latinHypercube('strata', size, factors)
    expect(plan).toHaveLength(size)
    for (let factor = 0; factor < factors; factor++) {
      const strata = plan.map((point) => Math.floor(point[factor]! * size)).sort((a, b) => a - b)
      expect(strata).toEqual(Array.from({ length: size }, (_, index) => index))
    }
  })

  it('is the same for a seed, another for another', () => {
    expect(latinHypercube('a', 10, 3)).toEqual(latinHypercube('a', 10, 3))
    expect(latinHypercube('a', 10, 3)).not.toEqual(latinHypercube('b', 10, 3))
  })

  it('has its nearest points no nearer than that of any of its tries', () => {
    const most = leastDistance(latinHypercube('far', 12, 3))
    for (const tries of [1, 2, 5, 20, 100])
      expect(leastDistance(latinHypercube('far', 12, 3, tries))).toBeLessThanOrEqual(most)
    expect(leastDistance(latinHypercube('far', 12, 3, 1))).toBeLessThan(most)
    expect(planTries).toBe(200)
  })

  it('knows the distance of the two nearest', () => {
    expect(
      leastDistance([
        [0, 0],
        [1, 1],
        [0.3, 0.4],
      ]),
    ).toBeCloseTo(0.25, 12)
    expect(leastDistance([[0, 0]])).toBe(Infinity)
  })
})
