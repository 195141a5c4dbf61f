/** Machines that wait for the same people: the machine interference of the trade. */
import { describe, expect, it } from 'vitest'
import { expectAround, expectSumAround, simulate } from './run.js'

/**
 * `machines` stations side by side that never lack a case: each has its own source and place before it, and
 * all pass to a sink that is always free. So each works whenever it is up, and its running time to the next
 * breakdown is exponential, 1000 s in the mean. `people` without a walk repair, those who wait longest first; `other`: their other work.
 */
async function pool(machines: number, people: number, repair: string, hours: number, other = '') {
  const names = Array.from({ length: machines }, (_, index) => `m${index}`)
  const breakdowns = `{after: {exponential: {mean: 1000 s}}, repair: ${repair}}`
  const stations = names.map(
    (name) => `${name}: {type: station, time: 200 s, waiting-room: 1, breakdowns: ${breakdowns}, to: sink}`,
  )
  const sources = names.map((name) => `to ${name}: {time-between: 1 s, when-full: wait, to: ${name}}`)
  const result = await simulate({
    arrivals: `{${sources.join(', ')}}`,
    line: `{${stations.join(', ')}, sink: {type: station, time: 0 s, waiting-room: unlimited}}`,
    crew: `{fitters: {people: ${people}, does: [breakdowns]${other === '' ? '' : `, other-work: ${other}`}}}`,
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
    atOtherWork: result.crew.fitters!['other-work'],
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

/**
 * Machines that run on the mean of `machines` that fail and are repaired exponentially, by one person who has other work too: it comes at
 * random, takes exponential times, and is begun only while no machine is down, but not left. A Markov chain of its own, in no part that of the
 * program: machines down, other work waiting (cut off at `most`), and what the person does. Rates in 1/s.
 */
function runningBeside(
  rates: { fail: number; repair: number; other: number; done: number },
  machines: number,
): number {
  const most = 200
  const doings = 3 // nothing, a repair, other work
  const place = (down: number, waiting: number, doing: number) =>
    (down * (most + 1) + waiting) * doings + doing
  const chances = new Float64Array((machines + 1) * (most + 1) * doings).fill(1e-3)
  const into = chances.map(() => 0)
  const next = (down: number, waiting: number): number =>
    down > 0 ? place(down, waiting, 1) : waiting > 0 ? place(0, waiting - 1, 2) : place(0, 0, 0)
  const step = 0.9 / (machines * rates.fail + rates.repair + rates.other + rates.done)
  const move = (from: number, to: number, rate: number) => {
    into[from]! -= chances[from]! * rate * step
    into[to]! += chances[from]! * rate * step
  }
  const round = () => {
    into.set(chances)
    for (let down = 0; down <= machines; down++)
      for (let waiting = 0; waiting <= most; waiting++)
        for (let doing = 0; doing < doings; doing++) {
          const from = place(down, waiting, doing)
          const isIdle = doing === 0
          if ((isIdle && (down > 0 || waiting > 0)) || (doing === 1 && down === 0)) {
            into[from] = 0
            continue
          }
          if (down < machines)
            move(
              from,
              isIdle ? place(1, 0, 1) : place(down + 1, waiting, doing),
              (machines - down) * rates.fail,
            )
          if (waiting < most)
            move(from, isIdle ? place(0, 0, 2) : place(down, waiting + 1, doing), rates.other)
          if (doing === 1) move(from, next(down - 1, waiting), rates.repair)
          if (doing === 2) move(from, next(down, waiting), rates.done)
        }
    const total = into.reduce((sum, each) => sum + each, 0)
    for (const [index, each] of into.entries()) chances[index] = each / total
  }
  const mean = () =>
    chances.reduce((sum, each, at) => sum + each * (machines - Math.floor(at / ((most + 1) * doings))), 0)
  let before = Number.NaN
  for (let now = mean(); !(Math.abs(now - before) < 1e-9); now = mean()) {
    before = now
    for (let turn = 0; turn < 200; turn++) round()
  }
  return before
}

describe('other work of the person who repairs', () => {
  const other = (more: string) => `{share: 30 %, takes: {exponential: {mean: 300 s}}, ${more}}`

  it('in a chain of its own: none is the row of Feller', () => {
    const rates = { fail: 1 / 1000, repair: 1 / 100, other: 0, done: 1 / 300 }
    // vol. I, sec. XVII.7 (from memory), as above
    expect(runningBeside(rates, 6)).toBeCloseTo(5.154851, 5)
  })

  it('that cannot be left: machines wait for it as a Markov chain has it', async () => {
    const rates = { fail: 1 / 1000, repair: 1 / 100, other: 0.3 / 300, done: 1 / 300 }
    const running = runningBeside(rates, 6)
    const result = await pool(6, 1, '{exponential: {mean: 100 s}}', 1000, other('can-be-left: false'))
    expect(running).toBeLessThan(5)
    expectSumAround(result.working, running, 0.03)
    expectSumAround(result.waitingForCrew, 6 - running - running / 10, 0.08)
    expectAround(result.busy, running / 10, 0.02)
    expectAround(result.atOtherWork, 0.3, 0.03)
  })

  it('that can be left: the machines do not feel it, and its share is what it is said to be', async () => {
    const result = await pool(6, 1, '{exponential: {mean: 100 s}}', 600, other('can-be-left: true'))
    expectSumAround(result.working, 5.154851, 0.03)
    expectAround(result.atOtherWork, 0.3, 0.03)
  })
})
