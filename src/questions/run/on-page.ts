/** What of a run its page holds: all that its charts and its replay draw. Of a line of many pieces that is less than the document. */
import type { EquipmentResult } from '../../answers/line-result.js'
import type { Layout } from '../../pictures/layout.js'
import { mostRows } from '../../report/marks/most-rows.js'
import type { Stretch } from '../../shifts/stretch.js'
import type { RunResult } from './document.js'
import { drawnPlaces } from './held-chart.js'
import { drawnMachines } from './states-chart.js'

/** A replay of more steps would fill a page with megabytes, and no screen tells its cases apart. Project rule. */
const mostSteps = 40_000

/** Does a page play it? What counts is what it would have to hold: the steps of all cases and of all pieces. */
export function isReplayed({ cases, states }: Pick<Stretch, 'cases' | 'states'>): boolean {
  const ofCases = cases.reduce((sum, { path }) => sum + path.length, 0)
  return states.reduce((sum, { length }) => sum + length, ofCases) <= mostSteps
}

/** Says why there is none, and where what it would show stands. */
export const unplayed = ({ pieces }: Pick<Layout, 'pieces'>): string =>
  `There is no replay here: with ${pieces.length} pieces it would make the page too large. The recorded minutes are in result.json, and \`tapeshift trace\` tells any shift event by event.`

/** The document as the page of a run holds it; a line of usual size whole. */
export function runOnPage(result: RunResult): RunResult {
  const { equipment, stretch } = result
  const { stretch: _, layout: __, ...others } = result
  const replayed = stretch && !isReplayed(stretch) ? others : result
  if (Object.keys(equipment).length <= mostRows) return replayed
  const drawn = new Set(drawnMachines(result).map(({ name }) => name))
  return {
    ...replayed,
    equipment: Object.fromEntries(
      Object.entries(equipment).map(([name, piece]) => [name, drawn.has(name) ? piece : without(piece)]),
    ),
    held: [...drawnPlaces(result)],
    assumed: [],
  }
}

/** A piece that has no row of its own: what is summed over all pieces, and its heads. */
const without = ({ type, pieces, heads, measures }: EquipmentResult): EquipmentResult => ({
  type,
  ...(pieces ? { pieces } : {}),
  measures: measures['cases-lost'] ? { 'cases-lost': measures['cases-lost'] } : {},
  states: {},
  ...(heads ? { heads } : {}),
})
