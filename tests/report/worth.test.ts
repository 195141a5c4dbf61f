/** What a design is worth, in a sentence: with its interval, and without one where too few shifts differ. */
import { describe, expect, it } from 'vitest'
import type { Interval } from '../../src/answers/difference-figure.js'
import type { CompareResult, DesignResult } from '../../src/questions/compare/document.js'
import { worthTable, worthText } from '../../src/questions/compare/worth-table.js'
import { saidRows } from './said.js'

const design = (yearlySaving: Interval, payback: Interval) =>
  ({
    worth: {
      investment: 2000,
      yearlySaving,
      yearlyCases: 1_000_000,
      years: null,
      interest: null,
      netPresentValue: null,
      payback,
      breakEven: null,
      leftOut: [],
    },
  }) as unknown as DesignResult

const result = { currency: 'EUR', variants: {} } as unknown as CompareResult

describe('what a design is worth', () => {
  it('says what it saves with its plus-minus', () => {
    const sure = design({ mean: 1000, low: 900, high: 1100 }, { mean: 2, low: 1.8, high: 2.2 })
    expect(worthText(sure, result)).toContain('saves 1 000 ± 100 EUR a year'.replace(' 000', '\u2009000'))
  })

  it('does not say what is not told: neither a saving nor when it has paid', () => {
    const untold = design({ mean: 1000, low: null, high: null }, { mean: 2, low: null, high: null })
    expect(worthText(untold, result)).toBe('The saving a year is not known: too few shifts differ.')
    const [row] = saidRows(worthTable({ ...result, variants: { untold } }))
    expect(row!.slice(2, 4)).toEqual(['–', '–'])
  })
})
