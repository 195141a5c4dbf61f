/** What the page of a sweep shows first: the ends of the figures over all points, and the picture of the first measure. */
import { changesText } from '../../answers/flow.js'
import { tilesFor } from '../../answers/tiles.js'
import type { Shown, Tile } from '../../report/front.js'
import { fileStem } from '../../report/marks/chart.js'
import { sweepCharts } from './charts.js'
import type { SweepMeasure, SweepPoint, SweepResult } from './document.js'
import { judgedMeasure } from './first-screen.js'
import { measureSubject } from './words.js'

/** Measures of which both ends are shown. */
const mostMeasures = 2

export const sweepFront = (result: SweepResult): Shown => ({
  of: 'Lowest and highest of all points',
  tiles: result.measures.slice(0, mostMeasures).flatMap((measure) => endsOf(result, measure)),
  told: [],
  picture: pictureOf(result),
})

/** The picture of the measure that the verdict is of, else the first. */
function pictureOf(result: SweepResult): string | null {
  const drawn = sweepCharts(result).map(({ name }) => name)
  const judged = judgedMeasure(result)
  const isOf = (name: string) => judged !== undefined && name === fileStem(result.kind, judged.name)
  return drawn.find(isOf) ?? drawn[0] ?? null
}

const meanAt = ({ measures }: SweepPoint, { name }: SweepMeasure): number => measures[name]!.mean!

function endsOf({ points, display }: SweepResult, measure: SweepMeasure): Tile[] {
  const tiles = tilesFor(display)
  const known = points.filter(({ measures }) => measures[measure.name]?.mean != null)
  const ranked = [...known].sort((a, b) => meanAt(a, measure) - meanAt(b, measure))
  const [lowest, highest] = [ranked[0], ranked.at(-1)]
  if (lowest && highest && meanAt(lowest, measure) === meanAt(highest, measure))
    return tiles(measureSubject(measure), lowest.measures[measure.name], { note: 'at all points' })
  return [
    { end: 'lowest', point: lowest },
    { end: 'highest', point: highest },
  ].flatMap(({ end, point }) =>
    point
      ? tiles(`${measureSubject(measure)}, ${end}`, point.measures[measure.name], {
          note: changesText(point.set),
        })
      : [],
  )
}
