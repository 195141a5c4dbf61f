/** Sizing where the cheapest design is exactly known: how often the search picks it, of many searches with other random numbers. */
import { describe, expect, it } from 'vitest'
import { type Condition, meanCondition } from '../../src/answers/condition.js'
import { studyMeasures } from '../../src/answers/figures.js'
import { parseRequirement } from '../../src/answers/requirement.js'
import { Line, type ShiftResult } from '../../src/line/line.js'
import { findCheapest } from '../../src/questions/size/search.js'
import type { Scenario } from '../../src/scenario/schema.js'
import { brought } from '../questions/searches.js'
import { birthDeath, expected } from '../slow/markov.js'
import { scenarioOf, seedOf } from '../slow/studies.js'
import { hunt, isWorking, twoStations } from '../slow/two-stations.js'

const runs = 200
const confidence = 0.95

/** A promise, and how near counts as either in the unit of its measure. */
const promiseOf = (line: Line, text: string, near: number): Condition =>
  meanCondition(
    parseRequirement(text, studyMeasures(line.columns, 1), (name) => `no ${name}`),
    near,
  )

/** Searches many times among scenarios of which each has more than the one before; asserts that enough find the one at `right`. */
async function expectFound(
  name: string,
  scenarios: readonly Scenario[],
  right: number,
  promise: string,
  near: number,
  knowsMore: boolean,
): Promise<void> {
  const lines = scenarios.map((scenario) => new Line(scenario))
  const conditions = lines.map((line) => [promiseOf(line, promise, near)])
  const picks = new Map<number | null, number>()
  let shifts = 0
  for (let run = 1; run <= runs; run++) {
    const rows = lines.map((): ShiftResult[] => [])
    const found = await findCheapest({
      candidates: lines.map((_, design) => ({
        ruledOut: () => null,
        isBelow: (other) => knowsMore && design <= other,
      })),
      goal: { promises: (design) => conditions[design]!, confidence, most: 10_000, isFull: false },
      more: async (design, count, isEnough) =>
        brought(rows[design]!, count, isEnough, (shift) => lines[design]!.simulate(seedOf(run), shift)),
      known: () => null,
      onTried: () => {},
    })
    shifts += rows.reduce((sum, each) => sum + each.length, 0)
    picks.set(found!.pick, (picks.get(found!.pick) ?? 0) + 1)
  }
  const told = `${name}${knowsMore ? ', more never hurts' : ''}: picks ${JSON.stringify([...picks])}, right ${right}, ${(shifts / runs).toFixed(0)} shifts a search`
  console.log(told)
  expect((picks.get(right) ?? 0) / runs, told).toBeGreaterThanOrEqual(confidence)
}

describe(`${runs} searches find what is known, in at least 95 %`, () => {
  describe('the smallest waiting room that turns away less than 1 %', () => {
    // M/M/1/K at half load: p_K = (1 - rho) rho^K / (1 - rho^(K + 1)), by PASTA the share turned away. Kleinrock, Queueing
    // Systems, vol. 1 (1975), ch. 3 (from memory): 1.59 % of five places, 0.79 % of six
    const [arrivalRate, serviceRate, length] = [0.5, 1, 1000]
    const loss = (places: number) => (0.5 * 0.5 ** places) / (1 - 0.5 ** (places + 1))
    const near = 0.0015
    const places = [2, 3, 4, 5, 6, 7, 8, 9]
    const scenarios = places.map((all) =>
      scenarioOf(
        `{street: {time-between: {exponential: {mean: ${1 / arrivalRate} s}}, when-full: turn-away}}`,
        `{desk: {type: station, time: {exponential: {mean: ${1 / serviceRate} s}}, waiting-room: ${all - 1}}}`,
        `${length} s`,
      ),
    )
    const right = places.indexOf(6)

    it('neighbours lie outside what may go either way, the empty start counted', () => {
      expect(loss(5)).toBeCloseTo(0.015873, 6)
      expect(loss(6)).toBeCloseTo(0.007874, 6)
      // of a shift from empty, cases turned away are those that come while it is full
      for (const [all, side] of [
        [5, 1],
        [6, -1],
      ] as const) {
        const isFull = (state: number) => (state === all ? 1 : 0)
        const share = expected(birthDeath(arrivalRate, serviceRate, all), 0, isFull, length).integral / length
        expect(share).toBeLessThan(loss(all))
        expect(share).toBeGreaterThan(0.98 * loss(all))
        expect(side * (share - 0.01)).toBeGreaterThan(near)
      }
    })

    it.each([true, false])(
      'six places; known that more never hurts: %s',
      async (knowsMore) => {
        const promise = 'arrivals.street.turned-away <= 1 %'
        await expectFound('waiting room', scenarios, right, promise, near, knowsMore)
      },
      300_000,
    )
  })

  describe('the fewest servers for a mean wait of 0.3 of a service', () => {
    // Erlang's C formula at a load of 4: C(5) = 0.5541, C(6) = 0.2848, and the mean wait is C / (c mu - lambda): 0.554 and
    // 0.142 of a service. Published in any table of Erlang C (from memory)
    const [arrivalRate, length] = [4, 200]
    const erlangC = (servers: number) => {
      let blocked = 1
      for (let each = 1; each <= servers; each++)
        blocked = (arrivalRate * blocked) / (each + arrivalRate * blocked)
      return blocked / (1 - (arrivalRate / servers) * (1 - blocked))
    }
    const wait = (servers: number) => erlangC(servers) / (servers - arrivalRate)
    const near = 0.1
    const servers = [5, 6, 7, 8, 9, 10]
    const scenarios = servers.map((each) =>
      scenarioOf(
        `{street: {time-between: {exponential: {mean: ${1 / arrivalRate} s}}, when-full: queue}}`,
        `{desk: {type: station, time: {exponential: {mean: 1 s}}, servers: ${each}, waiting-room: unlimited}}`,
        `${length} s`,
      ),
    )

    it('neighbours lie outside what may go either way, the empty start counted', () => {
      expect(erlangC(5)).toBeCloseTo(0.5541, 4)
      expect(erlangC(6)).toBeCloseTo(0.2848, 4)
      for (const [each, side] of [
        [5, 1],
        [6, -1],
      ] as const) {
        // beyond 200 in the queue lies less than 0.8^200; by Little's law the mean wait is the mean queue over the arrivals
        const queue = (state: number) => Math.max(0, state - each)
        const chain = {
          states: 201,
          moves: (state: number) => [
            ...(state < 200 ? [{ to: state + 1, rate: arrivalRate }] : []),
            ...(state > 0 ? [{ to: state - 1, rate: Math.min(state, each) }] : []),
          ],
        }
        const mean = expected(chain, 0, queue, length).integral / length / arrivalRate
        expect(mean).toBeLessThan(wait(each))
        expect(mean).toBeGreaterThan(0.85 * wait(each))
        expect(side * (mean - 0.3)).toBeGreaterThan(near)
      }
    })

    it.each([true, false])(
      'six servers; known that more never hurts: %s',
      async (knowsMore) => {
        const promise = 'equipment.desk.wait <= 0.3 s'
        await expectFound('servers', scenarios, servers.indexOf(6), promise, near, knowsMore)
      },
      300_000,
    )
  })

  describe('the smallest buffer between two machines for 84.5 % of the output of one alone', () => {
    // two exponential machines of rate 1, the first never short of work: (b + 2) / (b + 3). Hunt, Operations Research 4
    // (1956) 674-683 (from memory): 0.8333 of three places, 0.8571 of four. Packers who wait while the line is full are such a
    // first machine
    const length = 600
    const near = 0.008
    const rooms = [0, 1, 2, 3, 4, 5, 6, 7, 8]
    const scenarios = rooms.map((room) =>
      scenarioOf(
        '{packers: {time-between: {exponential: {mean: 1 s}}, when-full: wait}}',
        `{second: {type: station, time: {exponential: {mean: 1 s}}, waiting-room: ${room}}}`,
        `${length} s`,
      ),
    )

    it('neighbours lie outside what may go either way, the empty start counted', () => {
      for (const [room, side] of [
        [3, -1],
        [4, 1],
      ] as const) {
        const output = expected(twoStations(room), 0, isWorking, length).integral / length
        expect(output).toBeLessThan(hunt(room))
        expect(output).toBeGreaterThan(0.99 * hunt(room))
        expect(side * (output - 0.845)).toBeGreaterThan(near)
      }
    })

    it.each([true, false])(
      'four places; known that more never hurts: %s',
      async (knowsMore) => {
        // 0.845 a second are 50.7 a minute
        const promise = 'throughput >= 50.7 cases/min'
        await expectFound('buffer', scenarios, rooms.indexOf(4), promise, near, knowsMore)
      },
      300_000,
    )
  })
})
