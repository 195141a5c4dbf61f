/** What the page of a sweep shows first: the ends of the figures over all points, and the picture of the first measure. */
import { changesText } from '../../answers/flow.js'
import { tilesFor } from '../../answers/tiles.js'
import type { Shown, Tile } from '../../report/front.js'
import { sweepCharts } from './charts.js'
import type { SweepMeasure, SweepResult } from './document.js'
import { measureSubject } from './words.js'

/** Measures of which both ends are shown. */
const mostMeasures = 2

export const sweepFront = (result: SweepResult): Shown => ({
  of: 'Lowest and highest of all points',
  tiles: result.measures.slice(0, mostMeasures).flatMap((measure) => endsOf(result, measure)),
  told: [],
  picture: sweepCharts(result)[0]?.name ?? null,
})

function endsOf({ points, display }: SweepResult, measure: SweepMeasure): Tile[] {
  const tiles = tilesFor(display)
  const known = points.filter(({ measures }) => measures[measure.name]?.mean != null)
  const ranked = [...known].sort((a, b) => a.measures[measure.name]!.mean! - b.measures[measure.name]!.mean!)
  return [
    { end: 'lowest', point: ranked[0] },
    { end: 'highest', point: ranked.at(-1) },
  ].flatMap(({ end, point }) =>
    point
      ? tiles(`${measureSubject(measure)}, ${end}`, point.measures[measure.name], {
          note: changesText(point.set),
        })
      : [],
  )
}
