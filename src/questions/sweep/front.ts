/** What the page of a sweep shows first: the ends of the figures over all points, and the picture of the first measure. */
import { changesText } from '../../answers/flow.js'
import { tilesFor } from '../../answers/tiles.js'
import type { Shown, Tile } from '../../report/front.js'
import { fileStem } from '../../report/marks/chart.js'
import { sweepCharts } from './charts.js'
import type { SweepMeasure, SweepResult } from './document.js'
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

function endsOf({ points, display }: SweepResult, measure: SweepMeasure): Tile[] {
  const tiles = tilesFor(display)
  const subject = measureSubject(measure)
  const known = points.flatMap(({ set, measures }) => {
    const figure = measures[measure.name]
    return figure && figure.mean !== null ? [{ figure, mean: figure.mean, note: changesText(set) }] : []
  })
  const ranked = known.toSorted((a, b) => a.mean - b.mean)
  const [lowest, highest] = [ranked[0], ranked.at(-1)]
  if (!lowest || !highest) return []
  if (lowest.mean === highest.mean) return tiles(subject, lowest.figure, { note: 'at all points' })
  return [
    ...tiles(`${subject}, lowest`, lowest.figure, { note: lowest.note }),
    ...tiles(`${subject}, highest`, highest.figure, { note: highest.note }),
  ]
}
