/** Conveyor geometry and braking worked by hand. */
import { describe, expect, it } from 'vitest'
import {
  frictions,
  gapMade,
  infeedSpeedRatio,
  leastZone,
  noSlipAcceleration,
  noTipAcceleration,
  speedRatioFor,
  stopDistance,
  widestRollerPitch,
} from '../../src/trade/conveyor.js'

describe('a step of speed', () => {
  it('from 12 to 21 m/min draws 400 mm cases 300 mm apart', () => {
    expect(gapMade(0.4, 12, 21)).toBeCloseTo(0.3, 12)
    expect(speedRatioFor(0.4, 0.3)).toBeCloseTo(1.75, 12)
    expect(gapMade(0.4, 12, 12)).toBe(0)
    expect(gapMade(0.4, 12, 9)).toBeCloseTo(-0.1, 12)
  })

  it('the belts of a sealer run a fifth faster than its infeed (from memory, low confidence)', () => {
    expect(infeedSpeedRatio).toBe(1.2)
  })
})

describe('under a case', () => {
  it('three rollers under 300 mm are 100 mm apart, four 75 mm (common practice, no source)', () => {
    expect(widestRollerPitch(0.3)).toBeCloseTo(0.1, 12)
    expect(widestRollerPitch(0.3, 4)).toBeCloseTo(0.075, 12)
  })

  it('a zone is 75 to 150 mm longer than the longest case (from memory, low confidence)', () => {
    expect(leastZone(0.6)).toBeCloseTo(0.675, 12)
    expect(leastZone(0.6, 0.15)).toBeCloseTo(0.75, 12)
  })
})

describe('braking', () => {
  it('0.5 m/s at 1.5 m/s2 takes 83 mm', () => {
    expect(Math.round(stopDistance(0.5, 1.5) * 1000)).toBe(83)
  })

  it('friction of 0.3 bears 2.9 m/s2; 300 mm of base under 300 mm of height half of gravity', () => {
    expect(noSlipAcceleration(0.3).toFixed(1)).toBe('2.9')
    expect(noTipAcceleration(0.3, 0.3)).toBeCloseTo(9.80665 / 2, 12)
  })

  it('no friction value is from a published table', () => {
    expect(frictions).toHaveLength(4)
    for (const { low, high, basis } of frictions) {
      expect(low).toBeLessThan(high)
      expect(basis).toBe('from memory, low confidence')
    }
  })
})
