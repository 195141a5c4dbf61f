/** Output of unreliable machines and what a buffer brings back, against published formulas and their values. */
import { describe, expect, it } from 'vitest'
import {
  efficiencyBound,
  shareRecovered,
  twoMachineEfficiency,
  type Unreliable,
} from '../../src/trade/buffer.js'
import { unbufferedEfficiency } from '../trade/yardsticks.js'

/** A machine by its rates of failure and repair. */
const machine = (fails: number, mends: number): Unreliable => ({ meanUp: 1 / fails, meanRepair: 1 / mends })
const ratios = (...each: number[]) => each.map((ratio) => ({ meanUp: 1, meanRepair: ratio }))

describe('lines without buffer and with buffers that never fill', () => {
  // Buzacott, International Journal of Production Research 5 (1967); Gershwin, Manufacturing Systems Engineering (1994): repair
  // over running time of each machine; values evaluated from the formulas
  it.each([
    { downs: [0.1, 0.1], without: 0.8333333, most: 0.9090909 },
    { downs: [1 / 9, 1 / 9, 1 / 9], without: 0.75, most: 0.9 },
    { downs: [0.1, 0.05, 0.02], without: 0.8547009, most: 0.9090909 },
  ])('$downs: $without and $most', ({ downs, without, most }) => {
    expect(unbufferedEfficiency(ratios(...downs))).toBeCloseTo(without, 7)
    const [first, second, ...more] = ratios(...downs)
    if (more.length === 0) expect(twoMachineEfficiency(0, first!, second)).toBeCloseTo(without, 7)
    expect(efficiencyBound(ratios(...downs))).toBeCloseTo(most, 7)
  })
})

describe('two machines with a buffer between them', () => {
  // Zimmern 1956, Sevast'yanov 1962; Gershwin (1994), continuous-material model; values evaluated from the formula and confirmed by
  // a Markov chain on a fine grid
  const alike = machine(0.01, 0.1)
  it.each([
    [0, 0.8333333],
    [1, 0.8369695],
    [5, 0.8485857],
    [10, 0.8587258],
    [20, 0.8713693],
    [50, 0.887574],
    [100, 0.8965517],
  ])('alike, buffer %d: %d', (buffer, expected) => {
    expect(twoMachineEfficiency(buffer, alike)).toBeCloseTo(expected, 7)
  })

  it.each([
    [0, 0.7692308],
    [1, 0.7735441],
    [5, 0.7872174],
    [10, 0.7989152],
    [20, 0.8128391],
    [50, 0.8278566],
    [100, 0.8325745],
  ])('the second fails twice as often, buffer %d: %d, either way round', (buffer, expected) => {
    const worse = machine(0.02, 0.1)
    expect(twoMachineEfficiency(buffer, alike, worse)).toBeCloseTo(expected, 7)
    expect(twoMachineEfficiency(buffer, worse, alike)).toBeCloseTo(expected, 7)
  })

  // the same model for machines alike, r (2 + N (r + p)) / (2 (r + 2 p) + N (r + p)^2); mean time to failure 30 min, mean repair
  // 1.5 min, buffers in mean repairs; values agreed with a Monte Carlo run within 0.001
  it.each([
    [0, 0.9091],
    [1, 0.9235],
    [2, 0.9308],
    [4, 0.938],
    [8, 0.9437],
    [16, 0.9476],
    [Infinity, 0.9524],
  ])('30 min between failures, 1.5 min repairs, buffer of %d repairs: %d', (repairs, expected) => {
    const each = { meanUp: 1800, meanRepair: 90 }
    const efficiency = twoMachineEfficiency(90 * repairs, each)
    expect(Math.abs(efficiency - expected)).toBeLessThanOrEqual(0.00005)
    if (repairs === Infinity) return
    const [p, r, n] = [1 / 1800, 1 / 90, 90 * repairs]
    const simple = (r * (2 + n * (r + p))) / (2 * (r + 2 * p) + n * (r + p) ** 2)
    expect(efficiency).toBeCloseTo(simple, 12)
  })

  // k mean repair times bring back about k / (k + 2) where failures are rare: the limit of the formula above for p << r
  it.each([
    [2, 0.5],
    [4, 2 / 3],
    [8, 0.8],
  ])('a buffer of %d mean repairs recovers %d of the loss', (repairs, share) => {
    const rare = { meanUp: 1e7, meanRepair: 90 }
    expect(shareRecovered(90 * repairs, rare)).toBeCloseTo(share, 4)
  })
})
