/** A queue before a machine that breaks down, on running time and on the calendar. */
import { describe, it } from 'vitest'
import { expectAround, expectSumAround, simulate } from './run.js'

interface Machine {
  /** Mean time between arrivals, to a breakdown and to repair, s; all exponential. */
  between: number
  after: number
  repair: number
  /** Law of the service. */
  time: string
  clock: string
  hours: number
  shifts: number
}

/** Five people without a walk: somebody is always there, so that a stop is a repair and nothing else. */
async function machine({ between, time, after, repair, clock, hours, shifts }: Machine) {
  const exponential = (mean: number) => `{exponential: {mean: ${mean} s}}`
  const breakdowns = `{after: ${exponential(after)}, counted-in: ${clock}, repair: ${exponential(repair)}}`
  const result = await simulate({
    arrivals: `{street: {time-between: ${exponential(between)}, when-full: queue}}`,
    line: `{press: {type: station, time: ${time}, waiting-room: unlimited, breakdowns: ${breakdowns}}}`,
    crew: '{fitters: {people: 5, does: [breakdowns]}}',
    length: `${hours} h`,
    shifts,
  })
  const { measures, states } = result.equipment.press!
  const down = [states['breakdown-waiting-for-crew'], states['breakdown-being-repaired']]
  return { measures, states, down, crew: result.crew.fitters!.busy }
}

const running = 'running-time'
const calendar = 'calendar-time'

describe('exponential service, breakdowns and repairs', () => {
  // A case that is struck goes on with what was left. Its time from start to end C has E[C] = E[S] (1 + xi
  // E[R]) and E[C^2] = E[S^2] (1 + xi E[R])^2 + E[S] xi E[R^2]. On running time the queue is M/G/1 with
  // service C: Wq = lambda E[C^2] / (2 (1 - lambda E[C])). On the calendar an idle machine breaks down too,
  // which adds (1 - A) E[R^2] / (2 E[R]) with A = 1 / (1 + xi E[R]). In both L = lambda (Wq + E[C]). White
  // and Christie, Operations Research 6 (1958) 79-95; Gaver, J. R. Stat. Soc. B 24 (1962) 73-90; Avi-Itzhak
  // and Naor, Operations Research 11 (1963) 303-320 (all from memory; the figures agree with the Markov chain
  // of the model). The empty start is forgotten within some hundred services, of 100 000 a shift.
  it.each([
    // mean time between arrivals, of service, to breakdown, to repair, s; hours a shift; Wq, L, share of time
    // down
    [running, 2, 1, 20, 2, 80, 1.566667, 1.333333, 0.05],
    [calendar, 2, 1, 20, 2, 80, 1.748485, 1.424242, 0.09090909],
    [running, 5 / 3, 1, 50, 10, 140, 7.371429, 5.142857, 0.12],
    [calendar, 5 / 3, 1, 50, 10, 140, 9.038095, 6.142857, 0.1666667],
    [running, 1, 0.5, 10, 2.5, 60, 1.875, 2.5, 0.125],
    [calendar, 1, 0.5, 10, 2.5, 60, 2.375, 3, 0.2],
  ])('on %s: %d, %d, %d, %d', async (clock, between, service, after, repair, hours, wait, held, down) => {
    const time = `{exponential: {mean: ${service} s}}`
    const press = await machine({ between, time, after, repair, clock, hours, shifts: 10 })
    expectAround(press.measures.wait, wait, 0.05)
    expectAround(press.measures.held, held, 0.05)
    expectSumAround(press.down, down, 0.03)
    // one of five people is busy while it is down, for nobody walks
    expectAround(press.crew, down / 5, 0.03)
  })
})

describe('a sealing machine: 3 s a case, a minute to repair, ten minutes to the next breakdown', () => {
  // the same formulas with E[S^2] = 3^2 x 1.04; on running time it is down for lambda E[S] MTTR / MTBF of the
  // time, on the calendar for MTTR / (MTBF + MTTR)
  it.each([
    { clock: running, wait: 33.804, down: 0.075 },
    { clock: calendar, wait: 39.25855, down: 1 / 11 },
  ])('on $clock', async ({ clock, wait, down }) => {
    const time = '{gamma: {mean: 3 s, cv: 0.2}}'
    const press = await machine({ between: 4, time, after: 600, repair: 60, clock, hours: 500, shifts: 16 })
    expectAround(press.measures.wait, wait, 0.06)
    // E[C] = 3.3 s from start to end
    expectAround(press.measures.held, 0.25 * (wait + 3.3), 0.06)
    expectSumAround(press.down, down, 0.03)
    // it works for lambda E[S] of the time, whatever stops it
    expectAround(press.states.working, 0.75, 0.01)
  })
})
