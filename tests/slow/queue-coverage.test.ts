/** Intervals of a terminating shift: a queue from empty, whose means are known exactly. */
import { beforeAll, describe, expect, it } from 'vitest'
import { Line } from '../../src/line/line.js'
import { expected } from './markov.js'
import {
  arrivalRate,
  inQueue,
  isServing,
  queueChain,
  queueScenario,
  serviceRate,
  shiftLength,
} from './queue.js'
import { cover, expectCovers, type Pair } from './studies.js'

describe('95 % intervals of 2 000 studies of a queue that starts empty', () => {
  const held = expected(queueChain, 0, inQueue, shiftLength).integral / shiftLength
  const output = (serviceRate * expected(queueChain, 0, isServing, shiftLength).integral) / shiftLength
  let pairs: Pair[]
  beforeAll(() => {
    pairs = cover(new Line(queueScenario(shiftLength)), [
      { name: 'equipment.desk.held', truth: held },
      { name: 'throughput', truth: output },
      { name: 'arrivals.street.arrived', truth: arrivalRate * shiftLength },
    ])
  })

  it.each([
    ['cases in the queue', 0],
    ['throughput', 1],
    ['cases that arrived', 2],
  ] as const)('%s, plain', (_, index) => {
    expectCovers(pairs[index]!.plain)
    pairs[index]!.plain.expectCentred()
  })

  it.each([
    ['cases in the queue', 0],
    ['throughput', 1],
  ] as const)('%s, with control variates', (_, index) => {
    expectCovers(pairs[index]!.controlled)
    pairs[index]!.controlled.expectCentred()
    expect(pairs[index]!.controlled.shrink, `${pairs[index]!.controlled}`).toBeLessThan(1)
  })

  it('cases that arrived, with control variates: as well as 50 exponential times allow, which is not 95 %', () => {
    // The control is all but the figure itself: what it leaves of the arrivals is the one interval that was drawn and not yet over
    // at the end, an exponential time, skewness 2 and excess 6. By the expansion in queue.ts 50 of these cover
    // 0.95 + 0.229 (0.07 x 6 - 1.08 x 4) / 50 = 0.932; four standard errors of that share are 2.3 %.
    const { controlled } = pairs[2]!
    expect(Math.abs(controlled.share - 0.932), `${controlled}`).toBeLessThan(0.0225)
    controlled.expectCentred()
    // an interval has spread 1 beside the Poisson spread of 500 that come in a shift; t loses a degree of freedom
    expect(controlled.shrink).toBeCloseTo(1 / Math.sqrt(arrivalRate * shiftLength), 2)
  })
})

describe('95 % intervals of 2 000 studies of the usual 100 shifts', () => {
  // short shifts, because what is left beside the controls, one interval and the cases inside at the end, does not depend on their length
  const length = 100
  let pairs: Pair[]
  beforeAll(() => {
    const output = (serviceRate * expected(queueChain, 0, isServing, length).integral) / length
    pairs = cover(
      new Line(queueScenario(length)),
      [
        { name: 'throughput', truth: output },
        { name: 'arrivals.street.arrived', truth: arrivalRate * length },
      ],
      100,
    )
  })

  it.each([
    ['throughput', 0],
    ['cases that arrived', 1],
  ] as const)('%s, plain and with control variates', (_, index) => {
    const { plain, controlled } = pairs[index]!
    expectCovers(plain)
    plain.expectCentred()
    expectCovers(controlled)
    controlled.expectCentred()
    expect(controlled.shrink, `${controlled}`).toBeLessThan(1)
  })
})
