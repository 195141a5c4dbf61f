/** Buffers worked by hand, and what must hold for any two machines. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  bufferTime,
  contactCapacity,
  drainTime,
  efficiencyBound,
  leastBufferInStops,
  shareRecovered,
  twoMachineEfficiency,
  zoneCapacity,
} from '../../src/trade/buffer.js'
import { unbufferedEfficiency } from './yardsticks.js'

describe('room and time', () => {
  it('6 m hold 15 cases of 400 mm in contact, 14 with 20 mm between them', () => {
    expect(contactCapacity(6, 0.4)).toBe(15)
    expect(contactCapacity(6, 0.4, 0.02)).toBe(14)
    expect(contactCapacity(5.86, 0.4, 0.02)).toBe(14)
    expect(contactCapacity(5.85, 0.4, 0.02)).toBe(13)
    expect(contactCapacity(0.3, 0.4)).toBe(0)
  })

  it('30 ft in zones of 30 in hold 12 cases of 400 mm, 6 of 800 mm', () => {
    expect(zoneCapacity(9.144, 0.762, 0.4)).toBe(12)
    expect(zoneCapacity(9.144, 0.762, 0.8)).toBe(6)
    expect(zoneCapacity(0.7, 0.762, 0.4)).toBe(0)
  })

  it('30 places last 2 min at 15 a minute', () => {
    expect(bufferTime(30, 0.25)).toBe(120)
  })

  it('20 cases drain in 4 min at 20 a minute against 15, never at 15 against 15', () => {
    expect(drainTime(20, 20 / 60, 15 / 60)).toBeCloseTo(240, 9)
    expect(drainTime(20, 0.25, 0.25)).toBe(Infinity)
    expect(drainTime(20, 0.2, 0.25)).toBe(Infinity)
    expect(drainTime(0, 0.2, 0.25)).toBe(0)
  })

  it('two mean stops are the least buffer (common practice, no source)', () => {
    expect(leastBufferInStops).toBe(2)
  })
})

describe('two machines', () => {
  const machine = fc.record({
    meanUp: fc.double({ min: 10, max: 1e6, noNaN: true }),
    meanRepair: fc.double({ min: 1, max: 1e4, noNaN: true }),
  })

  it('more buffer never brings less, and no buffer and endless buffer are the ends', () => {
    fc.assert(
      fc.property(machine, machine, fc.double({ min: 0, max: 1e7, noNaN: true }), (first, second, buffer) => {
        const pair = [first, second]
        const efficiency = twoMachineEfficiency(buffer, first, second)
        expect(efficiency).toBeGreaterThanOrEqual(unbufferedEfficiency(pair) * (1 - 1e-9))
        expect(efficiency).toBeLessThanOrEqual(efficiencyBound(pair) * (1 + 1e-9))
        expect(twoMachineEfficiency(2 * buffer, first, second)).toBeGreaterThanOrEqual(
          efficiency * (1 - 1e-9),
        )
        expect(twoMachineEfficiency(buffer, second, first)).toBeCloseTo(efficiency, 9)
        expect(twoMachineEfficiency(0, first, second)).toBeCloseTo(unbufferedEfficiency(pair), 9)
        const share = shareRecovered(buffer, first, second)
        expect(share).toBeGreaterThanOrEqual(-1e-6)
        expect(share).toBeLessThanOrEqual(1 + 1e-6)
      }),
      { numRuns: 500, seed: 7 },
    )
  })

  it('beside a machine that never fails a buffer recovers nothing, for nothing is lost', () => {
    const sound = { meanUp: Infinity, meanRepair: 90 }
    const failing = { meanUp: 1800, meanRepair: 90 }
    expect(twoMachineEfficiency(100, sound, failing)).toBeCloseTo(1800 / 1890, 12)
    expect(twoMachineEfficiency(100, sound)).toBe(1)
    expect(twoMachineEfficiency(100, { meanUp: 1800, meanRepair: 0 }, failing)).toBeCloseTo(1800 / 1890, 12)
    expect(shareRecovered(100, sound, failing)).toBe(0)
    expect(shareRecovered(Infinity, failing)).toBe(1)
  })
})
