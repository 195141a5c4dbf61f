/** Lines that mix all that a floor has: their balances close, the same seed gives the same bytes, and a campaign begins as its first shift alone. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { Line } from '../../src/line/line.js'
import { DeadlockError } from '../../src/line/standstill.js'
import { mixed, mixedShifts, scenarioOf } from './mixed.js'
import { mixedFault, traceFault } from './mixed-closes.js'

const shifts = fc.integer({ min: 1, max: 1000 })
const seed = 20261129

describe('lines that mix it all', () => {
  it('keep their balances', () => {
    let locked = 0
    fc.assert(
      fc.property(mixed, shifts, (given, shift) => {
        const fault = mixedFault(given, shift)
        if (fault === 'locked') locked++
        else expect(fault).toBeNull()
      }),
      { numRuns: 200, seed },
    )
    // a check of the check: most lines run
    expect(locked).toBeLessThan(50)
  })

  it('give the same bytes whether they are told or not, at once or in parts, and after other shifts', () => {
    fc.assert(
      fc.property(mixed, shifts, (given, shift) => {
        expect(traceFault(given, shift)).toBeNull()
      }),
      { numRuns: 30, seed },
    )
  })

  it('begin a campaign with the shift that begins empty', () => {
    fc.assert(
      fc.property(mixedShifts, shifts, (given, shift) => {
        const scenario = scenarioOf(given)
        const first = (of: typeof scenario) => {
          try {
            return new Line(of).simulate('mixed', shift).outputs[0]
          } catch (error) {
            if (error instanceof DeadlockError) return null
            throw error
          }
        }
        const alone = first(scenario)
        const inCampaign = first({
          ...scenario,
          shift: { ...scenario.shift, start: 'carry-over', campaign: 2 },
        })
        // one that runs on may lock later
        if (inCampaign !== null) expect(inCampaign).toBe(alone)
      }),
      { numRuns: 30, seed },
    )
  })
})
