/** Which designs the charts of a comparison draw: all of a few, of many the base and those that stand first. */
import { drawnOf, mostRows } from '../../report/marks/most-rows.js'
import { baseName, type CompareResult } from './document.js'
import { ranked } from './first-screen.js'

/** Names of the designs that are drawn, in the order of the document. */
export function drawnDesigns(result: CompareResult): readonly string[] {
  const names = Object.keys(result.variants)
  if (names.length <= mostRows) return names
  const first = ranked(result)
    .filter((name) => name !== baseName)
    .slice(0, mostRows - 1)
  const drawn = new Set([baseName, ...first])
  return names.filter((name) => drawn.has(name))
}

/** Says that some are not drawn; nothing where all are. */
export const drawnWords = (drawn: number, all: number): string =>
  drawnOf(drawn, all, 'designs that rank first, and the base')
