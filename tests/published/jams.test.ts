/**
 * Jams of several kinds against the effective process time: mean = t0 + sum of chance x time of each kind, with the variance of
 * independent kinds (Hopp & Spearman, Factory Physics, ch. 8, from memory); the queue by Pollaczek and Khinchine.
 */
import { describe, expect, it } from 'vitest'
import { expectAround, simulate } from './run.js'

/** Natural time, s. */
const natural = 3
/** Kinds of jam: chance a case, mean and square of the mean of its clearing, walk of who comes, isolation before and after, s. */
const kinds = [
  { chance: 0.02, mean: 20, square: 2 * 20 ** 2, walk: 5, isolate: 0 },
  { chance: 0.004, mean: 120, square: (1 + 0.5 ** 2) * 120 ** 2, walk: 30, isolate: 15 },
]
const jams =
  '{flap: {chance: 2 %, clear: {exponential: {mean: 20 s}}}, crushed: {chance: 0.4 %, clear: {lognormal: {mean: 120 s, cv: 0.5}}, by: mechanic, isolate: 15 s}}'
const crew = '{operators: {walk: 5 s, does: [jams]}, mechanic: {walk: 30 s, does: [breakdowns]}}'

/** Mean and mean square of the time that a case takes with its jams, s. */
function effective(): { mean: number; square: number } {
  let [mean, variance] = [natural, 0]
  for (const { chance, mean: clear, square, walk, isolate } of kinds) {
    const fixed = walk + 2 * isolate
    const time = clear + fixed
    mean += chance * time
    variance += chance * (square + 2 * clear * fixed + fixed ** 2) - (chance * time) ** 2
  }
  return { mean, square: variance + mean ** 2 }
}

describe('a station of 3 s with two kinds of jam', () => {
  it('takes 4.22 s a case by hand: 3 + 2 % of 25 s + 0.4 % of 180 s', () => {
    expect(effective().mean).toBeCloseTo(3 + 0.5 + 0.72, 12)
  })

  it('never short of cases puts out one in that time, each kind as often as its chance', async () => {
    const { mean } = effective()
    const hours = 40
    const { measures, equipment } = await simulate({
      arrivals: '{packer: {rate: 40 cases/min}}',
      line: `{press: {type: station, time: ${natural} s, jams: ${jams}}}`,
      crew,
      length: `${hours} h`,
      shifts: 20,
    })
    expectAround(measures.throughput, 1 / mean, 0.015)
    const cases = (hours * 3600) / mean
    const { flap, crushed } = equipment.press!.jams!
    expectAround(flap!.stops, 0.02 * cases, 0.03)
    expectAround(flap!.stop, 25, 0.03)
    expectAround(flap!.wait, 5, 0.001)
    expectAround(crushed!.stops, 0.004 * cases, 0.06)
    expectAround(crushed!.stop, 180, 0.03)
    expectAround(crushed!.time, 0.004 * cases * 180, 0.07)
    // no kind is counted twice, and none is left out
    const all = equipment.press!.measures.jams!.mean!
    expect(flap!.stops!.mean! + crushed!.stops!.mean!).toBeCloseTo(all, 9)
  })

  it('waits before it as an M/G/1 queue does', async () => {
    const { mean, square } = effective()
    const between = 7
    const { equipment } = await simulate({
      arrivals: `{street: {time-between: {exponential: {mean: ${between} s}}, when-full: queue}}`,
      line: `{press: {type: station, time: ${natural} s, waiting-room: unlimited, jams: ${jams}}}`,
      crew,
      length: '200 h',
      shifts: 20,
    })
    const rate = 1 / between
    expectAround(equipment.press!.measures.wait, (rate * square) / (2 * (1 - rate * mean)), 0.07)
  })
})

describe('a sealer', () => {
  it('with two kinds of jam takes its headway and its part of both', async () => {
    // (400 mm + 300 mm) at 0.4 m/s: 1.75 s; walk 5 s and 30 s, clearing 40 s and 200 s, 5 % of the first spoilt
    const { measures, equipment } = await simulate({
      arrivals: '{packer: {rate: 60 cases/min}}',
      line: '{sealer: {type: sealer, jams: {flap: {chance: 1 %, clear: 40 s, case-lost: 5 %}, crushed: {chance: 0.1 %, clear: 200 s, by: mechanic}}}}',
      tape: '{roll: 100000 m}',
      crew: '{operators: {walk: 5 s, does: [jams, roll-change]}, mechanic: {walk: 30 s, does: [breakdowns]}}',
      length: '20 h',
      shifts: 20,
    })
    const second = (1 - 0.01 * 0.05) * 0.001
    const perCase = 1.75 + 0.01 * 45 + second * 230
    expectAround(measures.throughput, (1 - 0.01 * 0.05) / perCase, 0.015)
    const cases = (20 * 3600) / perCase
    expectAround(equipment.sealer!.jams!.flap!['cases-lost'], 0.01 * 0.05 * cases, 0.15)
    expectAround(equipment.sealer!.jams!.crushed!.stops, second * cases, 0.15)
  })
})
