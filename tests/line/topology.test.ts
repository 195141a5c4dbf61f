/** For lines of any shape the balances close, the shares of the states add up, and what locks is said to. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { Line } from '../../src/line/line.js'
import { DeadlockError } from '../../src/line/standstill.js'
import { loadScenario } from '../../src/scenario/load.js'
import { lines } from './topology.js'

describe('lines of random shape', () => {
  it('keep their balances over thousands of shifts', () => {
    let shifts = 0
    let locked = 0
    fc.assert(
      fc.property(lines, fc.integer({ min: 1, max: 1000 }), (text, first) => {
        const line = new Line(loadScenario(text).scenario)
        const states = new Map<string, number[]>()
        for (const [index, { measure }] of line.columns.entries())
          if (measure.path[2] === 'states')
            states.set(measure.path[1]!, [...(states.get(measure.path[1]!) ?? []), index])
        const column = (path: string) =>
          line.columns.findIndex(({ measure, part }) => part === 'value' && measure.path.join('.') === path)
        for (let shift = first; shift < first + 4; shift++) {
          shifts++
          try {
            // throws when a balance does not close
            const { values } = line.simulate('shape', shift)
            expect(values.filter((value) => value === Infinity || value < 0)).toEqual(new Float64Array(0))
            for (const [name, indices] of states)
              expect(
                indices.reduce((sum, index) => sum + values[index]!, 0),
                name,
              ).toBeCloseTo(1, 9)
            const arrived = ['s0', 's1'].map((name) => values[column(`arrivals.${name}.arrived`)] ?? 0)
            expect(values[column('measures.output')]).toBeLessThanOrEqual(arrived[0]! + arrived[1]!)
          } catch (error) {
            if (!(error instanceof DeadlockError)) throw error
            // only a line with a repair loop can lock
            expect(text).toMatch(/-bench: /)
            locked++
          }
        }
      }),
      { numRuns: 2000, seed: 20261125 },
    )
    expect(shifts).toBe(8000)
    // a check of the check: loops do lock now and then, and mostly do not
    expect(locked).toBeGreaterThan(0)
    expect(locked).toBeLessThan(shifts / 4)
  })

  it('give the same shift again, whatever was simulated before', () => {
    fc.assert(
      fc.property(lines, (text) => {
        const { scenario } = loadScenario(text)
        const line = new Line(scenario)
        const simulate = (on: Line) => {
          try {
            return on.simulate('again', 2)
          } catch (error) {
            if (error instanceof DeadlockError) return error.message
            throw error
          }
        }
        const first = simulate(line)
        simulate(line)
        expect(simulate(line)).toEqual(first)
        expect(simulate(new Line(scenario))).toEqual(first)
      }),
      { numRuns: 60, seed: 20261125 },
    )
  })
})
