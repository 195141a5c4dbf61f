/** Planned work and other work against closed forms of availability and of waiting. */
import { describe, expect, it } from 'vitest'
import { expectAround, simulate } from './run.js'

/** A station that never lacks a case. */
const busy = (keys: string) => ({
  arrivals: '{p: {time-between: 1 s, when-full: wait}}',
  line: `{s: {type: station, time: 100 s, waiting-room: 1, ${keys}}}`,
})

describe('a station that never lacks a case', () => {
  // 600 h less 299 pieces of planned work of 10 min on the mean: the time of a count of them that is known, so exact
  const work = '{does: cleaning, every: 2 h, takes: {gamma: {mean: 10 min, cv: 0.5}}}'
  const left = 1 - (299 * 600) / (600 * 3600)

  it('works while no planned work is done', async () => {
    const { equipment } = await simulate({ ...busy(`planned: [${work}]`), length: '600 h', shifts: 10 })
    const { states, measures } = equipment.s!
    expect(measures['planned-work']!.mean).toBe(299)
    expectAround(states['planned-stop'], 1 - left, 0.03)
    expectAround(states.working, left, 0.01)
  })

  it('and is broken down for the share of the rest that mean times to failure and repair have: no running time in planned work', async () => {
    // availability: mean time up over that and the mean repair (textbook), of the time that planned work leaves
    const breakdowns = '{after: {exponential: {mean: 5000 s}}, repair: {exponential: {mean: 1000 s}}}'
    const { equipment } = await simulate({
      ...busy(`planned: [${work}], breakdowns: ${breakdowns}`),
      length: '600 h',
      shifts: 20,
    })
    const { states } = equipment.s!
    // work that is due in a repair, 1 of 6, is done beside it, for the lesser of a gamma time (4 phases of 150 s) and an exponential one:
    // 1000 s x (1 - (1 + 0.15)^-4); all other time is shared by work and repairs as 5 to 1
    const beside = ((1 / 6) * 1000 * (1 - 1.15 ** -4)) / 600
    const planned = (1 - left) * (1 - beside)
    expectAround(states['planned-stop'], planned, 0.05)
    expectAround(states.working, ((1 - planned) * 5) / 6, 0.02)
  })
})

describe('a stop that comes at any time', () => {
  it('waits for what is left of other work: its share x mean square over twice the mean', async () => {
    // residual time of a renewal, found by arrivals at random (Wolff, Oper. Res. 30 (1982); as W0 of Cobham, Oper. Res. 2 (1954); both
    // from memory). 25 % of 240 s with a coefficient of variation of 0.6: 0.25 x 240 (1 + 0.36) / 2; stops are rare, one in 3 h of 10 s
    const { equipment, crew } = await simulate({
      arrivals: '{p: {time-between: 1 h}}',
      line: '{s: {type: station, time: 1 s, breakdowns: {after: {exponential: {mean: 3 h}}, counted-in: calendar-time, repair: 10 s}}}',
      crew: '{o: {does: [breakdowns], other-work: {share: 25 %, takes: {lognormal: {mean: 240 s, cv: 0.6}}}}}',
      length: '3000 h',
      shifts: 20,
    })
    expectAround(equipment.s!.measures['breakdowns-wait'], 0.25 * 120 * 1.36, 0.04)
    expectAround(crew.o!['other-work'], 0.25, 0.02)
  })

  it('of two people waits only where both are at it', async () => {
    // other work of two people is M/M/2 with one of them busy on the mean: both are for Erlang's C(2, 1) = 1/3 of the time (Erlang 1917;
    // textbook), and the first of two exponential times is over after half their mean: 150 s / 3
    const { equipment } = await simulate({
      arrivals: '{p: {time-between: 1 h}}',
      line: '{s: {type: station, time: 1 s, breakdowns: {after: {exponential: {mean: 3 h}}, counted-in: calendar-time, repair: 10 s}}}',
      crew: '{o: {people: 2, does: [breakdowns], other-work: {share: 50 %, takes: {exponential: {mean: 300 s}}}}}',
      length: '3000 h',
      shifts: 20,
    })
    expectAround(equipment.s!.measures['breakdowns-wait'], 50, 0.05)
  })
})
