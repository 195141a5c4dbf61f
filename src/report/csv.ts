/** Rows as CSV, for spreadsheets too: what begins like a formula is text. */
// the package's build for browsers runs in Node as well
import { stringify } from 'csv-stringify/browser/esm/sync'

/** Rows that are turned into text at once: of tens of thousands the library would hold each cell by itself. */
const atOnce = 100

/** Rows as text; `booleans` says how true and false are written, 1 and nothing where nobody says. */
export function csvText(rows: Iterable<readonly unknown[]>, booleans?: (value: boolean) => string): string {
  const how = { escape_formulas: true, ...(booleans ? { cast: { boolean: booleans } } : {}) }
  const texts: string[] = []
  let block: unknown[][] = []
  const write = () => {
    if (block.length > 0) texts.push(stringify(block, how))
    block = []
  }
  for (const row of rows)
    if (row.every(isPlain)) {
      write()
      texts.push(`${row.join(',')}\n`)
    } else if (block.push([...row]) === atOnce) write()
  write()
  return texts.join('')
}

/** Cells that the library would leave as they are: nearly all, and several times as fast without it. */
const isPlain = (cell: unknown): boolean =>
  typeof cell === 'number' || (typeof cell === 'string' && /^(?:[a-z\d][\w .-]*)?$/i.test(cell))

/** How true and false are written for people. */
export const yesOrNo = (value: boolean): string => (value ? 'yes' : 'no')
