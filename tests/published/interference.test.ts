/** Machines that wait for the same people: the machine interference of the trade. */
import { describe, it } from 'vitest'
import { expectAround, expectSumAround, simulate } from './run.js'

/**
 * `machines` stations side by side that never lack a case: each has its own source and place before it, and
 * all pass to a sink that is always free. So each works whenever it is up, and its running time to the next
 * breakdown is exponential, 1000 s in the mean. `people` without a walk repair, those who wait longest first.
 */
async function pool(machines: number, people: number, repair: string, hours: number) {
  const names = Array.from({ length: machines }, (_, index) => `m${index}`)
  const breakdowns = `{after: {exponential: {mean: 1000 s}}, repair: ${repair}}`
  const stations = names.map(
    (name) => `${name}: {type: station, time: 200 s, waiting-room: 1, breakdowns: ${breakdowns}, to: sink}`,
  )
  const sources = names.map((name) => `to ${name}: {time-between: 1 s, when-full: wait, to: ${name}}`)
  const result = await simulate({
    arrivals: `{${sources.join(', ')}}`,
    line: `{${stations.join(', ')}, sink: {type: station, time: 0 s, waiting-room: unlimited}}`,
    crew: `{fitters: {people: ${people}, does: [breakdowns]}}`,
    // all machines start in order, which is forgotten within some ten repairs, of a thousand a shift and more
    length: `${hours} h`,
    shifts: 10,
  })
  const states = names.map((name) => result.equipment[name]!.states)
  return {
    working: states.map((each) => each.working),
    waitingForCrew: states.map((each) => each['breakdown-waiting-for-crew']),
    beingRepaired: states.map((each) => each['breakdown-being-repaired']),
    busy: result.crew.fitters!.busy,
  }
}

describe('exponential repairs: p_n proportional to lambda^n N! / (N - n)! / product of min(i, r) mu', () => {
  it.each([
    // Feller, An Introduction to Probability Theory, vol. I, sec. XVII.7 (from memory): 0.3297 machines wait,
    // the person is idle for 0.4845 of the time; of three people for twenty machines each is idle for 0.4042
    { machines: 6, people: 1, repair: 100, running: 5.154851, hours: 600 },
    { machines: 20, people: 3, repair: 100, running: 17.87377, hours: 400 },
    // Taylor and Karlin, An Introduction to Stochastic Modeling, ch. VI, problem 4.1: 210/109 machines run,
    // and the person is idle for 4/109 of the time; with two people 1740/579 run
    { machines: 5, people: 1, repair: 500, running: 210 / 109, hours: 1000 },
    { machines: 5, people: 2, repair: 500, running: 1740 / 579, hours: 1000 },
  ])('$machines machines, $people to repair them', async ({ machines, people, repair, running, hours }) => {
    const result = await pool(machines, people, `{exponential: {mean: ${repair} s}}`, hours)
    const beingRepaired = (running * repair) / 1000
    expectSumAround(result.working, running, 0.03)
    expectSumAround(result.beingRepaired, beingRepaired, 0.05)
    expectSumAround(result.waitingForCrew, machines - running - beingRepaired, 0.08)
    expectAround(result.busy, beingRepaired / people, 0.02)
    // alike machines run alike
    expectAround(result.working[0], running / machines, 0.03)
  })
})

describe('constant repairs', () => {
  // N S / (1 + N rho S), S = sum over k of C(N - 1, k) times the product over i up to k of (e^(i rho) - 1);
  // Ashcroft, J. R. Stat. Soc. B 12 (1950) 145-151 (from memory; agrees with Erlang repairs of many phases)
  it.each([
    { machines: 2, repair: 100, running: 1.810221 },
    { machines: 6, repair: 100, running: 5.277856 },
    { machines: 5, repair: 200, running: 3.752108 },
  ])('$machines machines, $repair s to repair one after 1000 s', async ({ machines, repair, running }) => {
    const result = await pool(machines, 1, `${repair} s`, 600)
    expectSumAround(result.working, running, 0.03)
    // the person works for rho of each machine's running time
    expectAround(result.busy, (running * repair) / 1000, 0.02)
  })
})
