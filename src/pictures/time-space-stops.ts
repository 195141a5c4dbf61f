/** What stands in a time-space diagram: stops with their hatches and names, sources that wait, and the key to all that. */
import type { StopKind } from '../catalogue/states.js'
import { stopNouns } from '../catalogue/states.js'
import { shortened } from '../report/marks/breaking.js'
import { inks } from '../report/marks/inks.js'
import { pageLetterWidth } from '../report/marks/letters.js'
import { stopInk, stopLooks } from './state-looks.js'
import { lasting, type Stop } from './stops.js'
import { px, rect, text } from './svg-parts.js'
import { type Frame, stripHeight } from './time-space-frame.js'

const kindsOf = (stops: readonly Stop[]): StopKind[] => [...new Set(stops.map(({ kind }) => kind))]

/** Definitions of the hatches of the stops that there are, and of waiting. */
export function patterns({ stops, id }: Frame): string {
  const hatches = kindsOf(stops).map(
    (kind) =>
      `<pattern id="${id}-${kind}" width="8" height="8" patternUnits="userSpaceOnUse"><path d="${stopLooks[kind].hatch}" fill="none" stroke="${stopInk(kind)}" stroke-width="1.6"/></pattern>`,
  )
  return `<defs>${hatches.join('')}<pattern id="${id}-wait" width="4" height="4" patternUnits="userSpaceOnUse"><circle cx="2" cy="2" r="1.1" fill="${inks.ink}"/></pattern></defs>`
}

/** A strip for each source that waits for room, dotted while it does. */
export const waitStrips = ({ strips, x, left, right, id }: Frame): string[] =>
  strips.map(({ name, waits, top }) => {
    const most = Math.floor((left - 8) / pageLetterWidth.plain) - 6
    const dotted = ` stroke="${inks.ink}" stroke-width="0.8"`
    return [
      text(left - 8, top + 12, `${shortened(name, most)} waits`, { anchor: 'end', size: 11 }),
      rect(left, top, right - left, stripHeight, 'none', ` stroke="${inks.pause}"`),
      ...waits.map(([begin, end]) =>
        rect(x(begin), top, Math.max(0.8, x(end) - x(begin)), stripHeight, `url(#${id}-wait)`, dotted),
      ),
    ].join('')
  })

/** The bar of each stop; waiting for crew lies lighter, with a broken edge, and work has the full hatch. */
export const stopBars = ({ stops, x, bands, id }: Frame): string[] =>
  stops.map(({ piece, kind, from, workFrom, to }) => {
    const { top, height } = bands[piece]!
    const edge = ` stroke="${stopInk(kind)}" stroke-width="1"`
    const bar = (begin: number, end: number, isWork: boolean) => {
      if (end <= begin) return ''
      const box = (fill: string, more: string) => rect(x(begin), top, x(end) - x(begin), height, fill, more)
      const hatch = isWork ? edge : ` fill-opacity="0.4"${edge} stroke-dasharray="3 2"`
      return box(stopInk(kind), ` fill-opacity="${isWork ? 0.18 : 0.07}"`) + box(`url(#${id}-${kind})`, hatch)
    }
    return bar(from, workFrom, false) + bar(workFrom, to, true)
  })

/** Words at each stop: in its bar, or beside it where the bar is short and nothing else stands there. */
export function stopLabels({ stops, x, bands, right }: Frame): string[] {
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
export const blockedEdges = ({ stretch: { states, from, to }, x, bands }: Frame): string[] =>
  states.map((all, piece) => {
    const { top, height } = bands[piece]!
    const d = all.flatMap(([begin, state], index) => {
      const end = all[index + 1]?.[0] ?? to
      if (state !== 'blocked' || end <= from || begin >= to || x(end) - x(begin) < 0.3) return []
      return [`M${px(x(begin))} ${px(top + height - 1.5)}H${px(x(end))}`]
    })
    return d.length === 0
      ? ''
      : `<path d="${d.join('')}" fill="none" stroke="${inks.accent}" stroke-width="3"/>`
  })

/** Keys of the hatches that occur, in rows that fit, from `top` on. */
export function legendOf({ stops, stretch, id, width }: Frame, top: number) {
  const box = (fill: string, more: string) => (x: number, y: number) => rect(x, y, 20, 12, fill, more)
  const entries: { words: string; draw: (x: number, y: number) => string }[] = kindsOf(stops).map((kind) => ({
    words: stopNouns[kind],
    draw: box(`url(#${id}-${kind})`, ` stroke="${stopInk(kind)}"`),
  }))
  const kind = stops.find(({ from, workFrom }) => workFrom > from)?.kind
  if (kind) {
    const look = ` fill-opacity="0.4" stroke="${stopInk(kind)}" stroke-dasharray="3 2"`
    entries.push({ words: 'lighter, broken edge: waiting for crew', draw: box(`url(#${id}-${kind})`, look) })
  }
  if (stretch.states.some((all) => all.some(([, state]) => state === 'blocked')))
    entries.push({
      words: 'blocked ahead',
      draw: (x, y) => `<path d="M${px(x)} ${px(y + 9)}h20" stroke="${inks.accent}" stroke-width="3"/>`,
    })
  let [x, y] = [10, top]
  const drawn = entries.map(({ words, draw }) => {
    const needed = 28 + words.length * pageLetterWidth.plain + 18
    if (x > 10 && x + needed > width) {
      x = 10
      y += 20
    }
    const part = draw(x, y) + text(x + 26, y + 10, words, { size: 11 })
    x += needed
    return part
  })
  return { drawn: drawn.join(''), bottom: entries.length > 0 ? y + 16 : top - 10 }
}
