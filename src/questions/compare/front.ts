/** What the page of a comparison shows first: figures of the design that stands first, and what differs from the base. */
import { mostTiles, tilesFor } from '../../answers/tiles.js'
import { costWords } from '../../answers/warnings.js'
import { briefly } from '../../catalogue/unit-name.js'
import { numberText } from '../../report/format.js'
import type { Shown } from '../../report/front.js'
import { differenceCharts } from './differences-chart.js'
import { baseName, type CompareResult } from './document.js'
import { ranked, wished } from './first-screen.js'

const labels = {
  throughput: 'Good cases out',
  'target-held': 'Shifts that reach the target',
  'cost-per-1000': '1000 cases cost',
  'time-in-system': 'Time in the line',
  output: 'Good cases a shift',
} as const

export function compareFront(result: CompareResult): Shown {
  const { variants, display } = result
  const name = ranked(result)[0]!
  const measures = variants[name]!.measures
  const base = variants[baseName]?.measures
  const tiles = tilesFor(display)
  return {
    of: `First of the designs: ${name}`,
    tiles: (Object.keys(labels) as (keyof typeof labels)[])
      .flatMap((key) => {
        const figure = base?.[key]
        const against = figure && name !== baseName ? `base ${numberText(briefly(figure), display)}` : ''
        const left = key === 'cost-per-1000' ? costWords('', result).trim() : ''
        return tiles(labels[key], measures[key], {
          note: [against, left].filter((each) => each !== '').join('; '),
        })
      })
      .slice(0, mostTiles),
    told: [],
    picture: pictureOf(result),
  }
}

/** Of what designs are wished for the first in which one is shown to differ, else the first that was compared. */
function pictureOf(result: CompareResult): string | null {
  const { differences, compared } = result
  const isShown = (measure: string) => Object.values(differences).some((each) => each[measure]?.isShown)
  const order = [...wished.filter(isShown), ...compared]
  const drawn = differenceCharts(result)
  const [first] = order.flatMap((measure) => drawn.find(({ name }) => name === `difference-${measure}`) ?? [])
  return (first ?? drawn[0])?.name ?? null
}
