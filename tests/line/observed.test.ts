/**
 * To be looked at changes nothing: what is told as it happens, and what is told later when nobody looks on, have the same results to the last
 * digit. Of events: a row that is worked ahead of them when nobody looks on is held against them in `row.test`.
 */
import fc from 'fast-check'
import { expect, it } from 'vitest'
import { Line } from '../../src/line/line.js'
import { loadScenario } from '../../src/scenario/load.js'
import type { Scenario } from '../../src/scenario/schema.js'
import { demos, loadDemo } from '../demo.js'
import { rows, textOf } from './tails.js'

/** Measures of a shift that differ when somebody looks on; and how many events that one was told. */
function differing(scenario: Scenario, shift: number) {
  const [plain, seen] = [new Line(scenario, 'events'), new Line(scenario, 'events')]
  let told = 0
  seen.observe(() => told++)
  const without = plain.simulate('observed', shift).values
  const withIt = seen.simulate('observed', shift).values
  const differs = plain.columns.flatMap(({ measure }, index) =>
    Object.is(without[index], withIt[index]) ? [] : [measure.path.join('.')],
  )
  return { differs, told }
}

it.each(demos)('a shift of %s', async (name) => {
  const scenario = await loadDemo(name)
  for (const shift of [1, 2, 3]) {
    const { differs, told } = differing(scenario, shift)
    expect(differs).toEqual([])
    expect(told).toBeGreaterThan(1000)
  }
})

it('a shift of any row of conveyors, belts and sealers', () => {
  fc.assert(
    fc.property(rows, fc.integer({ min: 1, max: 1000 }), (row, shift) => {
      expect(differing(loadScenario(textOf(row)).scenario, shift).differs).toEqual([])
    }),
    { numRuns: 60, seed: 20261130 },
  )
})

/** A sealer to which everything happens, with a short conveyor behind it; `dwell`: the chance that standing under a head spoils a strip. */
function everything(dwell: string): Scenario {
  const text = textOf({
    pieces: [],
    hasOneSpeed: true,
    between: 2,
    serving: '{exponential: {mean: 2 s}}',
    stops: 'everything',
    otherWork: 0,
  })
    .replace(
      'line:\n',
      `line:
  s: {type: sealer, belt-speed: 20 m/min, bed: 1.9 m, heads: {top: {position: 700 mm}, bottom: {position: 700 mm}}, tape-breaks: {chance: 3 %, fix: 5 s}, jams: {chance: 4 %, clear: 6 s, case-lost: 50 %}, dwell-spoils: ${dwell}, blade: {service-after: 23 cuts, time: 4 s}, roll-change: {time: 9 s, low-tape-warning: 2 m, also-below: 3 m}, breakdowns: {after: {exponential: {mean: 1 min}}, counted-in: calendar-time, repair: 5 s}}
  short: {type: conveyor, length: 1.2 m, speed: 20 m/min}
`,
    )
    .replace('shift:', 'tape: {roll: 21 m}\nshift:')
  return loadScenario(text).scenario
}

it.each(['0 %', '40 %'])(
  'a shift in which strips break, blades wear, rolls run out, and standing spoils %s',
  (dwell) => {
    const scenario = everything(dwell)
    for (let shift = 1; shift <= 20; shift++) expect(differing(scenario, shift).differs).toEqual([])
  },
)
