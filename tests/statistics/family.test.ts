/** Several comparisons at once: what is shown on published p-values, and the intervals that say the same. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Comparison, family } from '../../src/statistics/family.js'
import { pairedDifference, pairedShareDifference } from '../../src/statistics/paired.js'
import { standardNormal } from '../../src/statistics/quantile.js'

/** A comparison that is `z` standard errors of 1 off 0, with normal intervals. */
const normal = (z: number, pValue: number): Comparison => ({
  pValue,
  at: (confidence) => {
    const half = standardNormal((1 + confidence) / 2)
    return { mean: z, low: z - half, high: z + half, sd: 1, n: 100 }
  },
})

describe('family', () => {
  it('by hand: two, of which the nearer one is not shown, for its interval reaches over 0', () => {
    // two-sided normal p-values of 3 and 2.1 (any table); 97.5 % each: z = 2.241403
    const [far, near] = family([normal(3, 0.0027), normal(2.1, 0.0357)], 0.95)
    expect(far).toMatchObject({ adjustedP: 0.0054, isShown: true })
    expect(far!.estimate.low).toBeCloseTo(3 - 2.241403, 5)
    expect(near).toMatchObject({ adjustedP: 0.0714, isShown: false })
    expect(near!.estimate.low).toBeCloseTo(2.1 - 2.241403, 5)
    expect(near!.estimate.high).toBeCloseTo(2.1 + 2.241403, 5)
  })

  it('shows three of the fifteen treatments of infarction', () => {
    // Benjamini & Hochberg, J. R. Statist. Soc. B 57 (1995) 289-300, sec. 4 (from memory): p-values of Neuhaus et al., of
    // which Bonferroni rejects three at 5 %
    const pValues = [
      0.0001, 0.0004, 0.0019, 0.0095, 0.0201, 0.0278, 0.0298, 0.0344, 0.0459, 0.324, 0.4262, 0.5719, 0.6528,
      0.759, 1,
    ]
    const judged = family(
      pValues.map((p) => normal(standardNormal(1 - p / 2 - 1e-12), p)),
      0.95,
    )
    expect(judged.filter(({ isShown }) => isShown)).toHaveLength(3)
    expect(judged[2]!.adjustedP).toBeCloseTo(0.0285, 12)
    expect(judged[14]!.adjustedP).toBe(1)
  })

  it('by hand: one alone is judged at its own interval', () => {
    const [only] = family([normal(2.1, 0.0357)], 0.95)
    expect(only).toMatchObject({ adjustedP: 0.0357, isShown: true })
    expect(only!.estimate.low).toBeCloseTo(2.1 - 1.959964, 5)
  })

  it('intervals of k comparisons at the levels of Bonferroni: t of Law, sec. 10.3', () => {
    // t of 9 degrees of freedom at 1 - 0.05 / 2k: 2.685011, 2.933324, 3.110935, 3.249836 (tables; more digits recomputed)
    const base = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10]
    const other = [3, 1, 4, 1, 5, 9, 2, 6, 5, 3]
    const { pValue, sd } = pairedDifference(base, other, 0.95)
    const one = { pValue, at: (confidence: number) => pairedDifference(base, other, confidence) }
    for (const [k, t] of [
      [2, 2.685011],
      [3, 2.933324],
      [4, 3.110935],
      [5, 3.249836],
    ] as const) {
      const [{ estimate }] = family(new Array(k).fill(one), 0.95) as [ReturnType<typeof family>[number]]
      expect((estimate.high - estimate.low) / 2).toBeCloseTo((t * sd) / Math.sqrt(10), 5)
    }
  })

  it('an interval off 0 where the exact test shows nothing is drawn out to 0', () => {
    // 5 against none of 41: by hand p = 2 / 2^5 = 0.0625; Newcombe's interval alone runs from 0.011
    const base = Array.from({ length: 41 }, (_, shift) => (shift < 14 ? 1 : 0))
    const other = Array.from({ length: 41 }, (_, shift) => (shift < 19 ? 1 : 0))
    const at = (confidence: number) => pairedShareDifference(base, other, confidence)
    const turned = (confidence: number) => pairedShareDifference(other, base, confidence)
    expect(at(0.95).low).toBeGreaterThan(0.01)
    const [up] = family([{ pValue: at(0.95).pValue, at }], 0.95)
    expect(up).toMatchObject({ isShown: false, estimate: { low: 0, high: at(0.95).high } })
    const [down] = family([{ pValue: at(0.95).pValue, at: turned }], 0.95)
    expect(down).toMatchObject({ isShown: false, estimate: { high: 0, low: turned(0.95).low } })
  })

  it('what says nothing shows nothing', () => {
    const at = () => pairedDifference([1], [2], 0.95)
    const [nothing, far] = family([{ pValue: Number.NaN, at }, normal(3, 0.0027)], 0.95)
    expect(nothing).toMatchObject({
      adjustedP: Number.NaN,
      isShown: false,
      estimate: { mean: 1, low: Number.NaN },
    })
    expect(far!.adjustedP).toBeCloseTo(0.0054, 12)
  })

  it('shown is an interval off 0, and nothing else', () => {
    const sample = fc.array(fc.integer({ min: -5, max: 5 }), { minLength: 8, maxLength: 8 })
    fc.assert(
      fc.property(fc.array(sample, { minLength: 1, maxLength: 6 }), sample, (others, base) => {
        const comparisons = others.map((other) => ({
          pValue: pairedDifference(base, other, 0.9).pValue,
          at: (confidence: number) => pairedDifference(base, other, confidence),
        }))
        for (const { estimate, isShown } of family(comparisons, 0.9))
          expect(isShown).toBe(estimate.low > 0 || estimate.high < 0)
      }),
      { seed: 8 },
    )
  })
})
