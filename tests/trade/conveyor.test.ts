/** Conveyor geometry worked by hand. */
import { describe, expect, it } from 'vitest'
import { infeedSpeedRatio, leastZone, speedRatioFor, widestRollerPitch } from '../../src/trade/conveyor.js'

describe('a step of speed', () => {
  it('from 12 to 21 m/min draws 400 mm cases 300 mm apart', () => {
    expect(speedRatioFor(0.4, 0.3)).toBeCloseTo(1.75, 12)
  })

  it('the belts of a sealer run a fifth faster than its infeed (from memory, low confidence)', () => {
    expect(infeedSpeedRatio).toBe(1.2)
  })
})

describe('under a case', () => {
  it('three rollers under 300 mm are 100 mm apart (common practice, no source)', () => {
    expect(widestRollerPitch(0.3)).toBeCloseTo(0.1, 12)
  })

  it('a zone is at least 75 mm longer than the longest case (from memory, low confidence)', () => {
    expect(leastZone(0.6)).toBeCloseTo(0.675, 12)
  })
})
