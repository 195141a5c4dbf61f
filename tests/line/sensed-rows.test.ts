/** Sensors and speeds by level on any row of conveyors, belts and sealers: no case lies on another, and balances close. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { Line } from '../../src/line/line.js'
import { loadScenario } from '../../src/scenario/load.js'
import { choices, sensor, steps, unlessRefused, withKeys } from './sensed.js'
import { overlapOf, rows } from './tails.js'

const shifts = fc.integer({ min: 1, max: 1000 })

describe('rows of conveyors, belts and sealers', () => {
  it('that sensors stop have no case on another at any event', () => {
    let asked = 0
    fc.assert(
      fc.property(rows, choices, shifts, (row, some, shift) => {
        const text = withKeys(row, some, sensor)
        const found = unlessRefused(() => overlapOf(row, shift, text))
        if (found === 'refused') return
        if (text.includes('stops-when')) asked++
        expect(found).toBeNull()
      }),
      { numRuns: 150, seed: 20261129 },
    )
    // most rows have no place for what is drawn
    expect(asked).toBeGreaterThan(20)
  })

  it('whose speed follows levels close their balances', () => {
    fc.assert(
      fc.property(rows, choices, shifts, (row, some, shift) => {
        const { scenario } = loadScenario(withKeys(row, some, steps))
        expect(() => new Line(scenario).simulate('levels', shift)).not.toThrow()
      }),
      { numRuns: 60, seed: 20261129 },
    )
  })
})
