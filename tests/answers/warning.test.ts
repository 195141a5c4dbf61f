/** The head of an answer: however many findings, one line for each code, with the worst named. */
import { describe, expect, it } from 'vitest'
import { type FoundError, headed, warningsOf } from '../../src/answers/warning.js'
import { headOf } from '../../src/answers/warnings.js'
import type { Dropped } from '../../src/scenario/dropped.js'

const found = (kind: number, over: number | null): FoundError => ({
  ...{ code: 'legs-meet', meaning: 'legs meet', path: `cases.k${kind}`, fix: `a higher case than k${kind}` },
  ...{ message: `The legs of k${kind} meet.`, over },
})
const dropped = (metres: number): Dropped => ({
  ...{ leavesOut: 'capital recovery', words: 'capital recovery', given: ['money.capital'] },
  missing: [{ path: 'money.life', words: '`money.life`', example: '8 yr' }],
  amounts: [900 * metres, null],
})

describe('findings of one code', () => {
  it('52 of them are one line: the worst three are those that are most over their bound', () => {
    // over by 1.01 to 1.52 of the bound, in no order
    const errors = Array.from({ length: 52 }, (_, kind) => found(kind, 1 + (((kind * 7) % 52) + 1) / 100))
    const [line, ...others] = warningsOf([{ name: null, errors, dropped: [] }])
    expect(others).toEqual([])
    // 7 x 37 = 259 = 4 x 52 + 51, 7 x 22 = 154 = 2 x 52 + 50, 7 x 7 = 49
    expect(line).toMatchObject({ count: 52, paths: ['cases.k37', 'cases.k22', 'cases.k7'], designs: [] })
    expect(line!.text).toBe('The legs of k37 meet.')
    expect(line!.fix).toBe('a higher case than k37')
    expect(headOf({ warnings: [line!] })!.lines).toEqual([
      'error legs-meet, 52 times, worst at `cases.k37`, `cases.k22` and `cases.k7`: The legs of k37 meet. Fix: a higher case than k37.',
    ])
  })

  it('where nothing tells how bad they are the first ones are named', () => {
    const errors = [1, 2, 3, 4].map((kind) => found(kind, null))
    expect(warningsOf([{ name: null, errors, dropped: [] }])[0]).toMatchObject({
      paths: ['cases.k1', 'cases.k2', 'cases.k3'],
    })
  })

  it('designs are named in their order, and of many the first three', () => {
    const designs = ['base', 'a', 'b', 'c', 'd'].map((name) => ({
      ...{ name, errors: name === 'base' ? [] : [found(1, 2)], dropped: [] },
    }))
    const warnings = warningsOf(designs)
    expect(warnings[0]!.designs).toEqual(['a', 'b', 'c', 'd'])
    expect(headOf({ warnings })!.title).toBe(
      'Cannot work as described: a, b, c and d; check finds 4 errors. The figures below ignore this.',
    )
    const more = warningsOf([...designs, { name: 'e', errors: [found(1, 2)], dropped: [] }])
    expect(headOf({ warnings: more })!.title).toContain('a, b, c and 2 more')
  })
})

describe('a price that is left out', () => {
  const design = (metres: number | null, name: string | null = null) => ({
    ...{ name, errors: [], dropped: metres === null ? [] : [dropped(metres)] },
  })

  it('of designs that differ in it is said to say nothing of the cheapest', () => {
    expect(warningsOf([design(6), design(12)])).toMatchObject([
      {
        ...{ code: 'price-dropped', severity: 'warning', differs: true, leavesOut: 'capital recovery' },
        ...{ given: ['money.capital'], missing: ['money.life'], designs: [] },
      },
    ])
    expect(warningsOf([design(6), design(6)])[0]).toMatchObject({ differs: false })
  })

  it('by some of the designs alone makes them differ, and they are named', () => {
    expect(warningsOf([design(null, 'base'), design(6, 'bought')])[0]).toMatchObject({
      ...{ differs: true, designs: ['bought'] },
    })
  })

  it('without any warning there is no head', () => {
    expect(headed(warningsOf([design(null)]))).toEqual({})
    expect(headOf({})).toBeNull()
    expect(headOf({ warnings: [] })).toBeNull()
  })
})
