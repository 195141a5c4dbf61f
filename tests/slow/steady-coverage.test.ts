/** Intervals of an open-ended run: a queue whose warm-up is cut away, against its mean in the long run. */
import { beforeAll, describe, expect, it } from 'vitest'
import { estimationOf } from '../../src/answers/figures.js'
import { Line } from '../../src/line/line.js'
import { inProcess } from '../../src/shifts/in-process.js'
import { findWarmUp, type WarmUp } from '../../src/shifts/steady.js'
import { expected } from './markov.js'
import { arrivalRate, inQueue, queueChain, queueScenario, serviceRate, shiftLength } from './queue.js'
import { confidence, cover, expectCovers, type Pair, seedOf, shiftsPerStudy } from './studies.js'

/** L = rho / (1 - rho): any textbook of queues, such as Gross & Harris, Fundamentals of Queueing Theory, ch. 2. */
const load = arrivalRate / serviceRate
const inTheLongRun = load / (1 - load)
/** W = rho / (mu - lambda), the same place. */
const waitInTheLongRun = load / (serviceRate - arrivalRate)

/** The line stands empty so long before cases come, s: a start that nobody could take for its stride. */
const startUp = 100
/** With it, what is counted is about as long as the shifts whose length is argued for in queue.ts, s. */
const length = startUp + shiftLength

/** Exact mean of the cases in the queue from `from` to the end of the run. */
const meanFrom = (from: number): number =>
  (expected(queueChain, 0, inQueue, length - startUp).integral -
    (from > startUp ? expected(queueChain, 0, inQueue, from - startUp).integral : 0)) /
  (length - from)

describe('95 % intervals of 2 000 studies of a queue in its stride', () => {
  const scenario = queueScenario(length, `start: steady, start-up: ${startUp} s`)
  const figures = [
    { name: 'equipment.desk.held', truth: inTheLongRun },
    { name: 'equipment.desk.wait', truth: waitInTheLongRun },
    // in its stride as many leave as come
    { name: 'throughput', truth: arrivalRate },
  ]
  const line = new Line(scenario)
  let warmUp: WarmUp
  let pairs: Pair[]
  beforeAll(async () => {
    // found once, in a study of its own, and used for all: the search takes 20 runs, and would for each of 2 000 studies cost
    // nearly as much again as all that is simulated here
    warmUp = await findWarmUp(inProcess(), { seed: seedOf(0), scenario, design: 0 })
    console.log(
      `counted from ${warmUp.countFrom} s of ${length} s; true mean from there ${meanFrom(warmUp.countFrom).toFixed(5)}`,
    )
    line.countFrom = warmUp.countFrom
    pairs = cover(line, figures)
  })

  it('the start is cut away, and little more', () => {
    expect(warmUp.isSettled).toBe(true)
    expect(warmUp.countFrom).toBeGreaterThanOrEqual(startUp)
    expect(warmUp.countFrom).toBeLessThan(length / 2)
    // what is left of the start is a tenth of a half-width, 0.06: it costs less coverage than can be seen here
    expect(Math.abs(meanFrom(warmUp.countFrom) - inTheLongRun)).toBeLessThan(0.006)
  })

  it('without the cut hardly an interval would cover', () => {
    line.countFrom = 0
    const [{ plain }] = cover(line, figures, shiftsPerStudy, 200) as [Pair]
    expect(plain.share, `${plain}`).toBeLessThan(0.5)
  })

  it.each([
    ['cases in the queue', 0],
    ['time until work on them begins', 1],
    ['cases out', 2],
  ] as const)('%s, as such a study estimates them', (_, index) => {
    expect(estimationOf(scenario, { confidence, isPlain: false }, warmUp.countFrom).isPlain).toBe(true)
    expectCovers(pairs[index]!.plain)
  })

  it('with control variates cases out would not be covered: what they leave is less than what is left of the start', () => {
    expect(pairs[2]!.controlled.share, `${pairs[2]!.controlled}`).toBeLessThan(0.9)
  })
})
