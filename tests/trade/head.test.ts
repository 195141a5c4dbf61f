/** Taping heads: common practice and what follows from geometry. */
import { describe, expect, it } from 'vitest'
import { drumDiameters, elongationUsed, legSettings, legsFit, takesTape } from '../../src/trade/head.js'

describe('tape in heads (common practice, no source)', () => {
  it('takes both ends of its range', () => {
    const [narrowest, widest] = [0.036, 0.05]
    expect(takesTape(narrowest, widest, 0.05)).toBe(true)
    expect(takesTape(narrowest, widest, 0.0501)).toBe(false)
    expect(takesTape(narrowest, widest, 0.0359)).toBe(false)
  })

  it('lays legs of 50 or 70 mm, 2 to 3 in', () => {
    expect(legSettings).toEqual([0.05, 0.07])
  })

  it('takes rolls of 355 to 406 mm (from memory, low confidence)', () => {
    expect(drumDiameters.smallest).toBeCloseTo(0.3556, 9)
    expect(drumDiameters.largest).toBeCloseTo(0.4064, 9)
  })
})

describe('legs and stretch', () => {
  it('legs of 70 mm need more than 140 mm of height', () => {
    expect(legsFit(0.141, 0.07, 0.07)).toBe(true)
    expect(legsFit(0.14, 0.07, 0.07)).toBe(false)
    expect(legsFit(0.12, 0.05, 0.05)).toBe(true)
  })

  it('stretch of 15 % uses a tenth of 150 % elongation', () => {
    expect(elongationUsed(0.15, 1.5)).toBeCloseTo(0.1, 12)
    expect(elongationUsed(0.15, 0)).toBe(Infinity)
    expect(elongationUsed(0, 0)).toBe(0)
  })
})
