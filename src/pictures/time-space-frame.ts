/** Where things are in a time-space diagram: time along x, the pieces as bands one under the other. */

import { wrapped } from '../report/marks/breaking.js'
import { pageLetterWidth } from '../report/marks/letters.js'
import type { Stretch } from '../shifts/stretch.js'
import { findingOf } from './finding.js'
import type { Layout } from './layout.js'
import { clockOf, lasting, stopsOf, waitsOf } from './stops.js'

/** Room for names where the drawing is wide and where it is narrow, and at its right edge, px. */
const margin = { wide: 118, narrow: 92, right: 14 }
const narrow = 600
const between = 5
const leastBand = 20
/** Height that the bands together have if none of them is at its least, px. */
const bandsHeight = 430
const panelHeight = 84
/** Sources whose waiting is shown at most. */
const mostStrips = 6
export const stripHeight = 16

/** A number stays in the line of its unit. */
const together = (words: string) => words.replace(/(\d) (?=(?:min|s|h)\b)/g, '$1\u00a0')

/** What is drawn, and where; `id` begins the ids in the drawing. */
export function frameOf(layout: Layout, stretch: Stretch, width: number, id: string) {
  const { from, to, sources, shift } = stretch
  const isNarrow = width < narrow
  const [left, right] = [isNarrow ? margin.narrow : margin.wide, width - margin.right]
  const lines = (words: string, letter: number) => wrapped(together(words), Math.floor((width - 20) / letter))
  const finding = findingOf(stretch, layout)
  const span = `shift ${shift}, ${clockOf(from, true)} to ${clockOf(to, true)} h:min:s after its start`
  const title = lines(`${finding.slice(0, -1)} (${span}).`, pageLetterWidth.title)
  const subtitle = lines(
    `${lasting(to - from)} around the longest queue. Each line is a case on its way down the page; a level line is a case that stands.`,
    pageLetterWidth.subtitle,
  )
  const stripTop = 20 + title.length * 20 + subtitle.length * 16
  const strips = waitsOf(stretch)
    .map((waits, source) => ({ waits, ...sources[source]! }))
    .filter(({ whenFull }) => whenFull === 'wait')
    .slice(0, mostStrips)
    .map(({ name, waits }, index) => ({ name, waits, top: stripTop + index * (stripHeight + 2) }))
  const top = stripTop + strips.length * (stripHeight + 2) + 6
  const scale = bandsHeight / layout.pieces.reduce((sum, { length }) => sum + length, 0)
  let y = top
  const bands = layout.pieces.map(({ length }) => {
    const height = Math.max(leastBand, length * scale)
    const band = { top: y, height, scale: length > 0 ? height / length : 0 }
    y += height + between
    return band
  })
  return {
    ...{ layout, stretch, stops: stopsOf(stretch), id, width, isNarrow, left, right },
    ...{ finding, title, subtitle },
    /** Sources that wait for room, with the upper edge of their strip. */
    strips,
    /** Of each piece: upper edge, height, px per metre. */
    bands,
    /** Upper and lower edge of all bands, and of the panel of the cases held. */
    all: { top, bottom: y - between },
    panel: { top: y + 22, bottom: y + 22 + panelHeight },
    x: (time: number) => left + ((Math.min(Math.max(time, from), to) - from) / (to - from)) * (right - left),
  }
}
export type Frame = ReturnType<typeof frameOf>
