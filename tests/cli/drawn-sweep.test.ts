/** Curves whose band holds uncertainty of the inputs. */
import { describe, expect, it } from 'vitest'
import { loadScenario, sweep } from '../../src/index.js'
import { smallLine } from './in-process.js'

const known = smallLine
  .replace('chance: 1 %', 'chance: 4 in 400 cases')
  .replace('clear: 60 s', 'clear: {guess: 60 s, between: [40 s, 90 s]}')
const length = { vary: ['line.infeed.length=4 m,8 m'], draws: 12 }

describe('sweep, of a scenario that says how well values are known', () => {
  it('gives points and differences of a curve both kinds, and leaves what is luck of them as it is', async () => {
    const scenario = loadScenario(known)
    const [drawn, fixed] = [
      await sweep(scenario, length),
      await sweep(scenario, { vary: length.vary, inputs: 'fixed' }),
    ]
    expect(drawn.document.drawn).toEqual({ draws: 12, shifts: 10 })
    expect(fixed.document.drawn).toBeUndefined()
    const [step, ofLuck] = [drawn, fixed].map(
      ({ document }) => document.curve!.measures.throughput!.steps[0]!,
    )
    const { inputs: both, isShown, alone, ...rest } = step!.difference
    const { isShown: _, alone: aloneOfLuck, ...restOfLuck } = ofLuck!.difference
    expect(rest).toEqual(restOfLuck)
    expect(alone).toMatchObject(aloneOfLuck)
    expect(both!.low!).toBeLessThan(rest.low!)
    expect(isShown).toBe(both!.low! > 0)
    for (const [place, { measures }] of drawn.document.points.entries()) {
      const { inputs, ...luck } = measures.throughput!
      expect(luck).toEqual(fixed.document.points[place]!.measures.throughput)
      expect(inputs!.low!).toBeLessThan(luck.low!)
      expect(inputs!.high!).toBeGreaterThan(luck.high!)
    }
    const [head] = drawn.rows().get('designs.csv')!.split('\n')
    expect(head).toContain('low of both kinds')
    expect(fixed.rows().get('designs.csv')!.split('\n')[0]).not.toContain('both kinds')
  })

  it('takes what is varied as it is varied: with nothing else known there is nothing to draw', async () => {
    const only = smallLine.replace('clear: 60 s', 'clear: {guess: 60 s, between: [40 s, 90 s]}')
    const { document } = await sweep(loadScenario(only), { vary: ['line.sealer.jams.clear=50 s,70 s'] })
    expect(document.drawn).toBeUndefined()
  })
})
