/** Survival curves worked by hand. */
import { describe, expect, it } from 'vitest'
import type { Sample, Seen } from '../../src/statistics/fitting/sample.js'
import { survivalCurve } from '../../src/statistics/fitting/survival.js'

const of = (seen: Seen[], counts = seen.map(() => 1), from = 0): Sample => ({ seen, counts, from })

describe('survival by hand', () => {
  it('1, cut off at 2, 3: two thirds outlast 1, none outlasts 3', () => {
    expect(survivalCurve(of([{ at: 3 }, { over: 2 }, { at: 1 }]))).toEqual([
      // Greenwood: 2/3 sqrt(1 / (3 x 2))
      {
        at: 1,
        atRisk: 3,
        ended: 1,
        survival: expect.closeTo(2 / 3, 12),
        se: expect.closeTo((2 / 3) * Math.sqrt(1 / 6), 12),
      },
      { at: 3, atRisk: 1, ended: 1, survival: 0, se: 0 },
    ])
  })

  it('2, 2 and 4 times 4, alike ones counted: four of six outlast 2', () => {
    const [first, second] = survivalCurve(of([{ at: 2 }, { at: 4 }], [2, 4]))
    expect(first).toMatchObject({ atRisk: 6, ended: 2, survival: expect.closeTo(4 / 6, 12) })
    expect(second).toMatchObject({ atRisk: 4, ended: 4, survival: 0 })
  })

  it('cut off when another ends: it was there to end', () => {
    expect(survivalCurve(of([{ over: 2 }, { at: 2 }]))).toMatchObject([{ at: 2, atRisk: 2, survival: 0.5 }])
  })

  it('rounded ones stand at what was read or in the middle; none that ends has no curve', () => {
    const rounded = of(
      [{ clocked: 60, grain: 60 }, { between: [0, 100] }, { between: [200, Number.POSITIVE_INFINITY] }],
      [1, 1, 1],
      20,
    )
    // seen from 20 s on, the interval has its middle at 60 s as well
    expect(survivalCurve(rounded)).toMatchObject([
      { at: 60, atRisk: 3, ended: 2, survival: expect.closeTo(1 / 3, 12) },
    ])
    expect(survivalCurve(of([{ over: 5 }]))).toEqual([])
  })
})
