/** Rows as CSV, for spreadsheets too: what begins like a formula is text. */
// the package's build for browsers runs in Node as well
import { stringify } from 'csv-stringify/browser/esm/sync'

/** Rows as text; `booleans` says how true and false are written, 1 and nothing where nobody says. */
export const csvText = (
  rows: readonly (readonly unknown[])[],
  booleans?: (value: boolean) => string,
): string =>
  stringify(rows as unknown[][], {
    escape_formulas: true,
    ...(booleans ? { cast: { boolean: booleans } } : {}),
  })

/** How true and false are written for people. */
export const yesOrNo = (value: boolean): string => (value ? 'yes' : 'no')
