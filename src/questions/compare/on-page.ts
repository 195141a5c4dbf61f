/** What of a comparison its page holds: of many designs those that its charts draw. */
import type { CompareResult } from './document.js'
import { undrawn } from './drawn-designs.js'
import { drawnLines } from './output-chart.js'

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
