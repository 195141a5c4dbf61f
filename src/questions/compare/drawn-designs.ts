/** Which designs the charts of a comparison draw: all of a few, of many the base and those that stand first. */
import { drawnOf, mostRows } from '../../report/marks/most-rows.js'
import { baseName, type CompareResult } from './document.js'
import { ranked } from './first-screen.js'

/** Names of the designs that are not drawn: of a few none. */
export function undrawn(result: CompareResult): ReadonlySet<string> {
  if (Object.keys(result.variants).length <= mostRows) return new Set()
  return new Set(
    ranked(result)
      .filter((name) => name !== baseName)
      .slice(mostRows - 1),
  )
}

/** Says of so many drawn and all variants that some are not drawn; nothing where all are. */
export const drawnWords = (drawn: number, all: number): string =>
  drawnOf(drawn, all, 'variants that rank first')
