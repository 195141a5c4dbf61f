/** Slow starts by hand: which are known beforehand, and what they leave of a rate. */
import { describe, expect, it } from 'vitest'
import { slowStartsOf } from '../../src/hand/planned.js'
import { checkedWith, findingOf, loadedWith } from './line.js'

const slow = (more = '') => `line.sealer.slow-start={after: 10 min, at: 60 %, for: 3 min${more}}`
const ofSealer = (...sets: string[]) => {
  const { scenario } = loadedWith(sets)
  return slowStartsOf(scenario, scenario.line.sealer!)
}

describe('slow starts of a shift', () => {
  it('come after breaks that are long enough, where the piece stands in them', () => {
    // 40 % of 3 min: 72 s each; the one break lasts 30 min
    expect(ofSealer(slow())).toEqual({ count: 1, time: expect.closeTo(72, 9) as number })
    expect(ofSealer(slow().replace('10 min', '31 min')).count).toBe(0)
    expect(ofSealer(slow(), 'shift.breaks-stop=arrivals-and-manual-work').count).toBe(0)
  })

  it('come after planned work that is long enough, and at the start of the shift', () => {
    // every 2 h of 8 h is three times
    const work =
      'line.sealer.planned=[{does: cleaning, every: 2 h, takes: 10 min}, {does: test, at: 1 h, takes: 9 min}]'
    expect(ofSealer(slow(), work).count).toBe(4)
    expect(ofSealer(slow(', at-shift-start: true'), work).count).toBe(5)
  })

  it('lower what stops leave of a rate: 72 s of 7.5 h', () => {
    const rate = (...sets: string[]) =>
      checkedWith(sets).hand.line.pieces.find(({ name }) => name === 'sealer')!.rateAfterStops
    expect(rate(slow()) / rate()).toBeCloseTo(1 - 72 / 27_000, 12)
  })

  it('are told with what each costs', () => {
    // 34.9 cases/min: 41.8 cases in 72 s
    expect(findingOf('starts-by-hand', [slow()])!.message).toContain(
      'costs as much as standing 72 s, at most 42 cases.',
    )
    // 24.4 m/min are 0.407 m/s: 0.41 s at 0.5 m/s2
    expect(findingOf('starts-by-hand', ['line.sealer.acceleration=0.5 m/s2'])!.message).toContain(
      'costs 0.407 s',
    )
  })
})
