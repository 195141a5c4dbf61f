/** Machines that break down, coupled without a place between them: what a line puts out. */
import { describe, it } from 'vitest'
import { expectAround, simulate } from './run.js'

/** `ratios` are mean repair over mean time between breakdowns; a cycle is 1 s, a repair 40 s in the mean. */
const line = (ratios: readonly number[], clock: string) => {
  const machines = ratios.map((ratio, index) => {
    const after = `{exponential: {mean: ${40 / ratio} s}}`
    const breakdowns = `{after: ${after}, counted-in: ${clock}, repair: {exponential: {mean: 40 s}}}`
    const room = index === 0 ? 2 : 0
    return `m${index}: {type: station, time: 1 s, waiting-room: ${room}, breakdowns: ${breakdowns}}`
  })
  return simulate({
    arrivals: '{stock: {time-between: 10 ms, when-full: wait}}',
    line: `{${machines.join(', ')}}`,
    crew: '{fitters: {people: 5, does: [breakdowns]}}',
    length: '40 h',
    shifts: 10,
  })
}

describe('equal constant cycles, no places between', () => {
  // On running time a machine ages only while it works, so that stops do not overlap: 1 / (1 + sum of the
  // ratios); Buzacott, Int. J. Production Research 5 (1967); Gershwin, Manufacturing Systems Engineering
  // (1994) (from memory). On the calendar machines are up and down independently: the product of 1 / (1 +
  // ratio). That a machine ends the cycle in hand when another stops lets a few stops overlap after all, by
  // some 0.01 % of the output.
  it.each([
    { ratios: [0.1, 0.1], clock: 'running-time', throughput: 0.8333333 },
    { ratios: [0.1, 0.1], clock: 'calendar-time', throughput: 0.8264463 },
    { ratios: [1 / 9, 1 / 9, 1 / 9], clock: 'running-time', throughput: 0.75 },
    { ratios: [1 / 9, 1 / 9, 1 / 9], clock: 'calendar-time', throughput: 0.729 },
    { ratios: [0.1, 0.05, 0.02], clock: 'running-time', throughput: 0.8547009 },
    { ratios: [0.1, 0.05, 0.02], clock: 'calendar-time', throughput: 0.8488244 },
  ])('$ratios on $clock', async ({ ratios, clock, throughput }) => {
    const result = await line(ratios, clock)
    expectAround(result.measures.throughput, throughput, 0.015)
  })
})
