/** The closure index: ratios of the published shear formula, worked by hand. */
import { describe, expect, it } from 'vitest'
import { type Closure, closureIndex, closureProof, coverage, leastCoverage } from '../../src/trade/closure.js'
import { postalWidth, widthGuidance, widthWeights } from '../../src/trade/tape-width.js'

const known: Closure = { width: 0.048, leg: 0.05, gap: 0, offset: 0, load: 100, seam: 0.4 }
const index = (changes: Partial<Closure>) => closureIndex({ ...known, ...changes }, known)

describe('closure index', () => {
  it('of the reference itself is 1', () => {
    expect(index({})).toEqual({ leg: 1, seam: 1, peel: 1, coverage: 1 })
  })

  // holding in shear t = n w L^2 / (2 h F): S. Abbott, practical adhesion, after Dahlquist. The leg carries along the tape (w is its
  // width), the seam across it (L is half its width); ratios derived
  it.each([
    { change: { width: 0.072 }, leg: 1.5, seam: 2.25, peel: 1.5, cover: 1.5 },
    { change: { leg: 0.07 }, leg: 1.96, seam: 1, peel: 1, cover: 1 },
    { change: { gap: 0.003, offset: 0.005 }, leg: 1, seam: 0.5317, peel: 1, cover: 17.5 / 24 },
    {
      change: { width: 0.072, gap: 0.003, offset: 0.005 },
      leg: 1.5,
      seam: 1.5109,
      peel: 1.5,
      cover: 29.5 / 24,
    },
    { change: { load: 200 }, leg: 0.5, seam: 0.5, peel: 0.5, cover: 1 },
    { change: { seam: 0.6 }, leg: 1, seam: 1.5, peel: 1, cover: 1 },
  ])('$change', ({ change, leg, seam, peel, cover }) => {
    const got = index(change)
    expect(got.leg).toBeCloseTo(leg, 4)
    expect(got.seam).toBeCloseTo(seam, 4)
    expect(got.peel).toBeCloseTo(peel, 4)
    expect(got.coverage).toBeCloseTo(cover, 12)
  })

  it('from 50 to 75 mm it gains what it does from 48 to 72; from legs of 70 to 50 mm it falls to 0.51', () => {
    const european = closureIndex({ ...known, width: 0.075 }, { ...known, width: 0.05 })
    expect(european.leg).toBeCloseTo(1.5, 12)
    expect(european.seam).toBeCloseTo(2.25, 12)
    expect(closureIndex(known, { ...known, leg: 0.07 }).leg.toFixed(2)).toBe('0.51')
  })

  it('of a strip that misses a flap is nothing on the seam', () => {
    expect(coverage({ width: 0.048, gap: 0.01, offset: 0.02 })).toBe(0)
    expect(index({ offset: 0.03 }).seam).toBe(0)
    expect(index({ offset: 0.03 }).leg).toBe(1)
  })

  it('covers 17.5 mm of the weaker flap with 48 mm, 3 mm gap, 5 mm off; 15 mm is the project rule', () => {
    expect(coverage({ width: 0.048, gap: 0.003, offset: 0.005 })).toBeCloseTo(0.0175, 12)
    expect(leastCoverage).toBe(0.015)
  })

  it('says that it proves nothing', () => {
    expect(closureProof).toMatch(/must be proved/)
    expect(closureProof).toMatch(/ASTM D4169/)
  })
})

describe('guidance on width', () => {
  it('gives only the postal rule a source', () => {
    const published = Object.values(widthGuidance).filter((each) => 'source' in each)
    expect(published).toEqual([widthGuidance.post])
    expect(widthGuidance.post.source).toMatch(/USPS Publication 2/)
  })

  it('has its weights at 13.6 and 29.5 kg and the postal width at 50.8 mm (USPS Publication 2, 4-5.2)', () => {
    expect(widthWeights.narrowUpTo.toFixed(1)).toBe('13.6')
    expect(widthWeights.wideAbove.toFixed(1)).toBe('29.5')
    expect(postalWidth).toBeCloseTo(0.0508, 12)
  })
})
