/** One bed in pieces puts out what it does in one, and no case lies on another at any event of any row of conveyors and belts. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { Line } from '../../src/line/line.js'
import { loadScenario } from '../../src/scenario/load.js'
import { reader } from './shift.js'
import { tell } from './story.js'
import { overlapOf, rows, textOf } from './tails.js'

/** A bed of 4 m in `pieces`, cases of `share` of an eighth of it, before a table. */
const bed = (options: { carries: string; pieces: number; share: number; between: string; time: string }) => {
  const { carries, pieces, share, between, time } = options
  const keys = `type: conveyor, carries: ${carries}, length: ${4000 / pieces} mm, speed: 30 m/min, spacing: 20 mm`
  const names = Array.from({ length: pieces }, (_, index) => `  c${index}: {${keys}}`)
  return tell(`cases: {a: {length: ${500 * share} mm, width: 300 mm, height: 300 mm}}
arrivals: {p: {time-between: ${between}}}
line:
${names.join('\n')}
  table: {type: station, time: {exponential: {mean: ${time}}}}
shift: {length: 4 h}`).read('measures.output')
}

describe('a bed in 1 to 8 pieces', () => {
  const always = '10 ms'
  const atRandom = '{exponential: {mean: 6 s}}'
  // the paths are the same, but for the rounding of their sums: 1 case of some 2000. Belts with gaps between their cases are left
  // out, for drives that stop one by one close gaps that one drive keeps
  it.each([
    ['accumulating', always, '5 s'],
    ['accumulating', always, '1 s'],
    ['accumulating', atRandom, '5 s'],
    ['belt', always, '5 s'],
    ['belt', always, '1 s'],
  ])('%s, a case every %s, %s of work: puts out the same', (carries, between, time) => {
    for (const share of [0.2, 0.5, 0.95]) {
      const outputs = [1, 2, 3, 5, 8].map((pieces) => bed({ carries, pieces, share, between, time }))
      expect(Math.max(...outputs) - Math.min(...outputs), `${share}: ${outputs}`).toBeLessThanOrEqual(1)
    }
  })
})

describe('a case that comes up with a slower one while it crosses', () => {
  // what holds it up can be 7 ns, for which the belts stood again and again: such a shift took some hundred million events
  it('is not looked at without end', () => {
    const { scenario } = loadScenario(`
cases: {short: {length: 300 mm, width: 300 mm, height: 300 mm}, long: {share: 0.4, length: 300 mm, width: 300 mm, height: 350 mm}}
arrivals:
  one: {by-hour: {cases: [900 cases/h, 0 cases/h, 1500 cases/h, 600 cases/h], spaced: at-random}, when-full: queue}
  two: {time-between: 3 s}
  three: {time-between: {gamma: {mean: 6.069904624310793 s, cv: 0.5}}}
line:
  check: {type: station, time: {exponential: {mean: 1 s}}, waiting-room: 0}
  sealer: {type: sealer, bed: 1.8 m, belt-speed: 0.4 m/s, flaps: {folded-by: machine, time: 1 s}, size-setting: {by: machine, time: 0 s}, minimum-gap: 0 mm, roll-change: {time: 2 s}}
  outfeed: {type: conveyor, carries: accumulating, length: 5.1 m, speed: 0.6 m/s, spacing: 200 mm, start-delay: 0 s}
  slower: {type: conveyor, carries: accumulating, length: 6.5 m, speed: 0.4 m/s, spacing: 200 mm, start-delay: 0 s}
  palletiser: {type: station, time: 2 s}
crew: {operator: {people: 1, walk: 5 s, does: [roll-change]}}
shift: {length: 30 min}`)
    const line = new Line(scenario, 'events')
    for (let shift = 1; shift <= 40; shift++) {
      const output = reader(line, line.simulate('rows', shift))('measures.output')
      // one every 2 s but for the first and what they wait for
      expect(output).toBeGreaterThan(780)
      expect(line.counts.events / line.counts.arrived).toBeLessThan(40)
    }
  })
})

describe('rows of conveyors, belts and sealers', () => {
  it('have no case on another at any event', () => {
    fc.assert(
      fc.property(rows, fc.integer({ min: 1, max: 1000 }), (row, shift) => {
        expect(overlapOf(row, shift)).toBeNull()
      }),
      { numRuns: 60, seed: 20261129 },
    )
  })

  it('nor where every case has a length of its own', () => {
    const law = '{triangular: {low: 200 mm, mode: 200 mm, high: 750 mm}}'
    fc.assert(
      fc.property(rows, fc.integer({ min: 1, max: 1000 }), (row, shift) => {
        const text = textOf(row).replace('length: 0.5 m', `length: ${law}`)
        expect(text).toContain(law)
        expect(overlapOf(row, shift, text)).toBeNull()
      }),
      { numRuns: 40, seed: 20261130 },
    )
  })
})
