/** What is said of the design that was sought: picked, and why it is open. */
import { describe, expect, it } from 'vitest'
import { bestSentences } from '../../src/questions/compare/best-table.js'
import type { BestResult, CompareResult } from '../../src/questions/compare/document.js'

const best = (designs: BestResult['designs'], change: Partial<BestResult> = {}): BestResult => ({
  measure: 'output',
  label: 'Good cases a shift',
  unit: 'cases',
  isLargerBetter: true,
  within: 5,
  among: [],
  confidence: 0.95,
  pick: null,
  designs,
  most: 500,
  spent: 1000,
  ...change,
})

const said = (result: BestResult): string =>
  bestSentences({ best: result, display: 'metric', variants: {} } as unknown as CompareResult).join(' ')

describe('no design is chosen', () => {
  it('designs that differ too seldom: said once for both, with the number of shifts', () => {
    const alike = (other: string, shifts: number) => ({
      verdict: 'undecided' as const,
      shifts: 500,
      why: { reason: 'alike' as const, other, shifts },
    })
    expect(said(best({ base: alike('short', 3), short: alike('base', 3) }))).toBe(
      'No design is chosen: after 500 shifts, the maximum, it is not decided for base, short. base and short differed in 3 of 500 shifts: too few to tell. Allow more shifts, or a larger difference that does not matter.',
    )
    expect(said(best({ base: alike('short', 0), short: alike('base', 0) }, { most: 10_000 }))).toBe(
      'No design is chosen: base and short differed in none of 500 shifts: too few to tell. Such a rare difference cannot matter: choose either.',
    )
  })

  it('a stop that came too seldom is named, a spread that is too wide is not', () => {
    const text = said(
      best({
        base: {
          verdict: 'undecided',
          shifts: 500,
          why: { reason: 'unseen', stop: 'breakdowns of sealer', shifts: 2 },
        },
        long: { verdict: 'undecided', shifts: 500, why: { reason: 'spread' } },
      }),
    )
    expect(text).toContain(
      'it is not decided for base, long. base had breakdowns of sealer in 2 of 500 shifts: too few to judge their effect. Allow more shifts',
    )
  })
})

it('a pick says which designs were left out as open', () => {
  const text = said(
    best(
      {
        base: { verdict: 'picked', shifts: 60 },
        long: { verdict: 'undecided', shifts: 500, why: { reason: 'spread' } },
      },
      { pick: 'base' },
    ),
  )
  expect(text).toContain('Choose base: it has the highest good cases a shift')
  expect(text).toContain('Left out, because it is not known whether they meet this: long.')
})
