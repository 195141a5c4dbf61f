/** Intervals of a terminating shift: a queue from empty, whose means are known exactly. */
import { beforeAll, describe, expect, it } from 'vitest'
import { Line } from '../../src/line/line.js'
import { expected } from './markov.js'
import { arrivalRate, inQueue, isServing, queueChain, queueScenario, serviceRate } from './queue.js'
import { cover, expectCovers, type Pair } from './studies.js'

/** By the expansion in queue.ts 100 shifts of this length fall short by a third of a point. */
const shiftLength = 400

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
    ['cases that arrived', 2],
  ] as const)('%s, with control variates', (_, index) => {
    expectCovers(pairs[index]!.controlled)
    pairs[index]!.controlled.expectCentred()
    expect(pairs[index]!.controlled.shrink, `${pairs[index]!.controlled}`).toBeLessThan(1)
  })
})
