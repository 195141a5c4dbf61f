/** Which designs the charts of a comparison draw, and so its page holds: all of a few, of many the base and those that stand first. */
import { drawnOf, mostRows } from '../../report/marks/most-rows.js'
import { baseName, type CompareResult } from './document.js'
import { ranked } from './first-screen.js'
import { drawnLines } from './output-chart.js'

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

/** The document as the page of a comparison holds it; of a few designs all of it. */
export function compareOnPage(result: CompareResult): CompareResult {
  const lines = new Set(drawnLines(result))
  const left = new Set([...undrawn(result)].filter((name) => !lines.has(name)))
  if (left.size === 0) return result
  const only = <Of>(all: Record<string, Of>): Record<string, Of> =>
    Object.fromEntries(Object.entries(all).filter(([name]) => !left.has(name)))
  return {
    ...result,
    // no chart asks for single machines
    variants: Object.fromEntries(
      Object.entries(only(result.variants)).map(([name, design]) => [
        name,
        { ...design, equipment: {}, crew: {}, held: [] },
      ]),
    ),
    differences: only(result.differences),
    pairs: [],
  }
}
