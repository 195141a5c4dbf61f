/** Rows as CSV: what is left to no library is what that would write. */
import { stringify } from 'csv-stringify/sync'
import fc from 'fast-check'
import { expect, it } from 'vitest'
import { csvText } from '../../src/report/csv.js'

it.each([
  ['numbers, and nothing where nothing is known', [[1, -2.5, '', 1e-7]], '1,-2.5,,1e-7\n'],
  ['text that spreadsheets would take for a formula', [['=1+1', '-x', '@', 7]], "'=1+1,'-x,'@,7\n"],
  [
    'rows of both sorts in their order',
    [
      ['name, "unit"', 'a'],
      [1, 2],
      [true, 3],
      ['two-sealers', 4],
    ],
    '"name, ""unit""",a\n1,2\n1,3\ntwo-sealers,4\n',
  ],
])('writes %s', (_, rows, text) => {
  expect(csvText(rows)).toBe(text)
})

it('writes what the library writes', () => {
  const cell = fc.oneof(
    fc.double(),
    fc.integer(),
    fc.constant(''),
    fc.constant(null),
    fc.boolean(),
    fc.string(),
    fc.string({ unit: fc.constantFrom('a', 'Z', '4', '-', '.', ' ', ',', '"', '=', '\n', '\r', ';', '\t') }),
  )
  fc.assert(
    fc.property(fc.array(fc.array(cell, { minLength: 1, maxLength: 6 }), { maxLength: 8 }), (rows) => {
      expect(csvText(rows)).toBe(rows.length === 0 ? '' : stringify(rows, { escape_formulas: true }))
    }),
    { numRuns: 500 },
  )
})
