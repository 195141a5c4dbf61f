/** A queue before a machine that breaks down, on the clock of its running time and on that of the calendar. */
import { describe, it } from 'vitest'
import type { Figure } from '../../src/study/result.js'
import { expectAround, expectSumAround, simulate } from './run.js'

interface Machine {
  between: string
  time: string
  after: string
  repair: string
  clock: 'running-time' | 'calendar-time'
  hours: number
  shifts: number
}

/** Five people without a walk: somebody is always there, so that a stop is a repair and nothing else. */
async function machine({ between, time, after, repair, clock, hours, shifts }: Machine) {
  const breakdowns = `{after: {exponential: {mean: ${after}}}, counted-in: ${clock}, repair: ${repair}}`
  const result = await simulate({
    arrivals: `{street: {time-between: {exponential: {mean: ${between}}}, when-full: queue}}`,
    line: `{press: {type: station, time: ${time}, waiting-room: unlimited, breakdowns: ${breakdowns}}}`,
    crew: '{fitters: {people: 5, does: [breakdowns]}}',
    length: `${hours} h`,
    shifts,
  })
  const { measures, states } = result.equipment.press!
  const down: Figure[] = [states['breakdown-waiting-for-crew']!, states['breakdown-being-repaired']!]
  return { measures, states, down, crew: result.crew.fitters!.busy }
}

const exponential = (mean: string) => `{exponential: {mean: ${mean}}}`

describe('exponential service, breakdowns and repairs', () => {
  // A case that is struck goes on with what was left. Its time from start to end C has E[C] = E[S] (1 + xi E[R]) and
  // E[C^2] = E[S^2] (1 + xi E[R])^2 + E[S] xi E[R^2]. On running time the queue is M/G/1 with service C:
  // Wq = lambda E[C^2] / (2 (1 - lambda E[C])). On the calendar an idle machine breaks down too, which adds
  // (1 - A) E[R^2] / (2 E[R]) with A = 1 / (1 + xi E[R]). White and Christie, Operations Research 6 (1958) 79-95;
  // Gaver, J. R. Stat. Soc. B 24 (1962) 73-90; Avi-Itzhak and Naor, Operations Research 11 (1963) 303-320 (all from
  // memory; the figures agree with the Markov chain of the model). The empty start is forgotten within some hundred
  // services, of 100 000 a shift.
  it.each([
    {
      clock: 'running-time' as const,
      between: '2 s',
      time: '1 s',
      after: '20 s',
      repair: '2 s',
      wait: 1.566667,
      held: 1.333333,
      down: 0.05,
      hours: 80,
    },
    {
      clock: 'calendar-time' as const,
      between: '2 s',
      time: '1 s',
      after: '20 s',
      repair: '2 s',
      wait: 1.748485,
      held: 1.424242,
      down: 0.09090909,
      hours: 80,
    },
    {
      clock: 'running-time' as const,
      between: '1.6666666666666667 s',
      time: '1 s',
      after: '50 s',
      repair: '10 s',
      wait: 7.371429,
      held: 5.142857,
      down: 0.12,
      hours: 160,
    },
    {
      clock: 'calendar-time' as const,
      between: '1.6666666666666667 s',
      time: '1 s',
      after: '50 s',
      repair: '10 s',
      wait: 9.038095,
      held: 6.142857,
      down: 0.1666667,
      hours: 160,
    },
    {
      clock: 'running-time' as const,
      between: '1 s',
      time: '0.5 s',
      after: '10 s',
      repair: '2.5 s',
      wait: 1.875,
      held: 2.5,
      down: 0.125,
      hours: 60,
    },
    {
      clock: 'calendar-time' as const,
      between: '1 s',
      time: '0.5 s',
      after: '10 s',
      repair: '2.5 s',
      wait: 2.375,
      held: 3,
      down: 0.2,
      hours: 60,
    },
  ])(
    'a breakdown every $after of $clock, $repair to repair',
    async ({ wait, held, down, time, repair, ...given }) => {
      const press = await machine({
        ...given,
        time: exponential(time),
        repair: exponential(repair),
        shifts: 10,
      })
      expectAround(press.measures.wait, wait, 0.03)
      expectAround(press.measures.held, held, 0.03)
      expectSumAround(press.down, down, 0.02)
      // one of five people is busy while it is down, for nobody walks
      expectAround(press.crew, down / 5, 0.02)
    },
  )
})

describe('a sealing machine: seconds a case, minutes a repair', () => {
  // the same formulas with E[S^2] = 3^2 x 1.04; on running time it is down for lambda E[S] MTTR / MTBF of the time, on
  // the calendar for MTTR / (MTBF + MTTR)
  it.each([
    { clock: 'running-time' as const, wait: 33.804, down: 0.075 },
    { clock: 'calendar-time' as const, wait: 39.25855, down: 0.09090909 },
  ])('on $clock', async ({ clock, wait, down }) => {
    const time = '{gamma: {mean: 3 s, cv: 0.2}}'
    const press = await machine({
      between: '4 s',
      time,
      after: '10 min',
      repair: exponential('60 s'),
      clock,
      hours: 700,
      shifts: 16,
    })
    expectAround(press.measures.wait, wait, 0.05)
    // E[C] = 3.3 s from start to end
    expectAround(press.measures.held, 0.25 * (wait + 3.3), 0.05)
    expectSumAround(press.down, down, 0.03)
    // it works for lambda E[S] of the time, whatever stops it
    expectAround(press.states.working, 0.75, 0.01)
  })
})
