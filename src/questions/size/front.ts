/** What the page of a sizing shows first: what the pick puts out, how often it reaches what is asked, what it costs, and all designs. */
import { mostTiles, tilesFor } from '../../answers/tiles.js'
import { isCostInPart } from '../../answers/warnings.js'
import type { Shown, Tile } from '../../report/front.js'
import type { SizeResult } from './document.js'
import { endOf, endWord, moneyText } from './words.js'

export function sizeFront(result: SizeResult): Shown {
  const end = endOf(result)
  const measures = end?.afresh.measures ?? {}
  const tiles = tilesFor(result.display)
  const cost: Tile[] =
    end && end.design.cost !== null && !isCostInPart(result)
      ? [{ label: 'A shift costs', value: moneyText(end.design.cost, result), interval: 'by hand' }]
      : []
  return {
    ...(end ? { of: `Of the ${endWord(result)}, in fresh shifts that the search did not see` } : {}),
    tiles: [
      ...tiles('Good cases out', measures.throughput),
      ...tiles('Good cases a shift', measures.output),
      ...tiles('Shifts that reach the target', measures['target-held']),
      ...cost,
      ...tiles('Time in the line', measures['time-in-system'], { note: 'on average' }),
    ].slice(0, mostTiles),
    told: ['Output'],
    picture: 'designs',
  }
}
