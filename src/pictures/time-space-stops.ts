/** What stands in a time-space diagram: stops with their hatches and names, sources that wait, and the key to all that. */
import { type StopKind, stopNouns } from '../catalogue/states.js'
import { shortened } from '../report/marks/breaking.js'
import { inks } from '../report/marks/inks.js'
import { pageLetterWidth } from '../report/marks/letters.js'
import { type Markup, svg } from '../report/markup.js'
import { stopInk, stopLooks } from './state-looks.js'
import { lasting, type Stop } from './stops.js'
import { line, px, rect, text } from './svg-parts.js'
import { type Frame, stripHeight } from './time-space-frame.js'

const kindsOf = (stops: readonly Stop[]): StopKind[] => [...new Set(stops.map(({ kind }) => kind))]

/** Definitions of the hatches of the stops that there are, and of waiting. */
export function patterns({ stops, id }: Frame): Markup {
  const hatches = kindsOf(stops).map(
    (kind) =>
      svg`<pattern id="${id}-${kind}" width="8" height="8" patternUnits="userSpaceOnUse">${line(stopLooks[kind].hatch, stopInk(kind), 1.6)}</pattern>`,
  )
  return svg`<defs>${hatches}<pattern id="${id}-wait" width="4" height="4" patternUnits="userSpaceOnUse"><circle cx="2" cy="2" r="1.1" fill="${inks.ink}"/></pattern></defs>`
}

/** A strip for each source that waits for room, dotted while it does. */
export const waitStrips = ({ strips, x, left, right, id }: Frame): Markup[] =>
  strips.map(({ name, waits, top }) => {
    const most = Math.floor((left - 8) / pageLetterWidth.plain) - 6
    const dotted = svg` stroke="${inks.ink}" stroke-width="0.8"`
    return svg`${[
      text(left - 8, top + 12, `${shortened(name, most)} waits`, { anchor: 'end', size: 11 }),
      rect(left, top, right - left, stripHeight, 'none', svg` stroke="${inks.pause}"`),
      ...waits.map(([begin, end]) =>
        rect(x(begin), top, Math.max(0.8, x(end) - x(begin)), stripHeight, `url(#${id}-wait)`, dotted),
      ),
    ]}`
  })

/** The bar of each stop; waiting for crew lies lighter, with a broken edge, and work has the full hatch. */
export const stopBars = ({ stops, x, bands, id }: Frame): Markup[] =>
  stops.map(({ piece, kind, from, workFrom, to }) => {
    const { top, height } = bands[piece]!
    const edge = svg` stroke="${stopInk(kind)}" stroke-width="1"`
    const bar = (begin: number, end: number, isWork: boolean) => {
      if (end <= begin) return []
      const box = (fill: string, more: Markup) => rect(x(begin), top, x(end) - x(begin), height, fill, more)
      const hatch = isWork ? edge : svg` fill-opacity="0.4"${edge} stroke-dasharray="3 2"`
      const shade = svg` fill-opacity="${isWork ? 0.18 : 0.07}"`
      return [box(stopInk(kind), shade), box(`url(#${id}-${kind})`, hatch)]
    }
    return svg`${bar(from, workFrom, false)}${bar(workFrom, to, true)}`
  })

/** Words at each stop: in its bar, or beside it where the bar is short and nothing else stands there. */
export function stopLabels({ stops, x, bands, right }: Frame): Markup[] {
  const taken = new Map<number, number>()
  return stops.flatMap((stop, index) => {
    const { top, height } = bands[stop.piece]!
    const next = stops.slice(index + 1).find(({ piece }) => piece === stop.piece)
    const begin = Math.max(x(stop.from) + 4, taken.get(stop.piece) ?? 0)
    const room = Math.min(next ? x(next.from) : right, right) - begin
    const words = [`${stop.kind} ${lasting(stop.to - stop.from)}`, stop.kind].find(
      (each) => each.length * pageLetterWidth.bold <= room,
    )
    if (words === undefined) return []
    taken.set(stop.piece, begin + words.length * pageLetterWidth.bold + 6)
    const y = top + Math.min(16, height / 2 + 4)
    return [text(begin, y, words, { size: 11, weight: 'bold', halo: true })]
  })
}

/** A bar along the far edge of each piece while it is blocked ahead. */
export const blockedEdges = ({ stretch: { states, from, to }, x, bands }: Frame): Markup[] =>
  states.flatMap((all, piece) => {
    const { top, height } = bands[piece]!
    const d = all.flatMap(([begin, state], index) => {
      const end = all[index + 1]?.[0] ?? to
      if (state !== 'blocked' || end <= from || begin >= to || x(end) - x(begin) < 0.3) return []
      return [`M${px(x(begin))} ${px(top + height - 1.5)}H${px(x(end))}`]
    })
    return d.length === 0 ? [] : [line(d, inks.accent, 3)]
  })

/** Keys of the hatches that occur, in rows that fit, from `top` on. */
export function legendOf({ stops, stretch, id, width }: Frame, top: number) {
  const box = (fill: string, more: Markup) => (x: number, y: number) => rect(x, y, 20, 12, fill, more)
  const entries: { words: string; draw: (x: number, y: number) => Markup }[] = kindsOf(stops).map((kind) => ({
    words: stopNouns[kind],
    draw: box(`url(#${id}-${kind})`, svg` stroke="${stopInk(kind)}"`),
  }))
  const kind = stops.find(({ from, workFrom }) => workFrom > from)?.kind
  if (kind) {
    const look = svg` fill-opacity="0.4" stroke="${stopInk(kind)}" stroke-dasharray="3 2"`
    entries.push({ words: 'lighter, broken edge: waiting for crew', draw: box(`url(#${id}-${kind})`, look) })
  }
  if (stretch.states.some((all) => all.some(([, state]) => state === 'blocked')))
    entries.push({
      words: 'blocked ahead',
      draw: (x, y) => svg`<path d="M${px(x)} ${px(y + 9)}h20" stroke="${inks.accent}" stroke-width="3"/>`,
    })
  let [x, y] = [10, top]
  const drawn = entries.map(({ words, draw }) => {
    const needed = 28 + words.length * pageLetterWidth.plain + 18
    if (x > 10 && x + needed > width) {
      x = 10
      y += 20
    }
    const part = svg`${draw(x, y)}${text(x + 26, y + 10, words, { size: 11 })}`
    x += needed
    return part
  })
  return { drawn: svg`${drawn}`, bottom: entries.length > 0 ? y + 16 : top - 10 }
}
