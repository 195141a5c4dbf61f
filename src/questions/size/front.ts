/** What the page of a sizing shows first: what the pick puts out, how often it reaches what is asked, what it costs, and all designs. */
import { mostTiles, tilesFor } from '../../answers/tiles.js'
import type { Shown, Tile } from '../../report/front.js'
import type { SizeResult } from './document.js'
import { endOf, endWord, priceText } from './words.js'

export function sizeFront(result: SizeResult): Shown {
  const end = endOf(result)
  const measures = end?.afresh.measures ?? {}
  const tiles = tilesFor(result.display)
  const price = end && priceText(end.design, result)
  const cost: Tile[] = price ? [{ label: 'A shift costs', value: price, interval: 'by hand' }] : []
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
