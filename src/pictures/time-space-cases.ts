/** The ways of cases in a time-space diagram, each with what it says: thousands of lines, as short in markup as they can be. */
import { inks } from '../report/marks/inks.js'
import { type Markup, markup, svg } from '../report/markup.js'
import type { Stretch } from '../shifts/stretch.js'
import type { Layout } from './layout.js'
import { type Move, motionOf } from './motion.js'
import { type Polyline, placeOn, simplified } from './polyline.js'
import { clockOf, lasting } from './stops.js'
import type { Frame } from './time-space-frame.js'

/** Every case as one thin line: from piece to piece where the next one lies below, else begun anew. */
export function casePaths({ layout, stretch, x, left, right, bands }: Frame): Markup {
  const { from, cases } = stretch
  // the closer the lines stand, the finer they are, so that there is paper between them
  const stroke = Math.min(0.9, 0.35 + (0.15 * (right - left)) / cases.length)
  const lines: string[] = cases.map(() => '')
  const ends: [number, number][] = []
  const moves = motionOf(stretch, layout, from)
  const says = caseWords(stretch, layout, moves)
  for (const { item, piece, before, times, places } of moves) {
    const { top, scale } = bands[piece]!
    const seen = since(from, times, places)
    if (seen.times.length === 0) continue
    const { times: across, places: down } = simplified(
      { times: seen.times.map(x), places: seen.places.map((place) => top + place * scale) },
      0.4,
    )
    const isOn = before === piece - 1 && lines[item] !== ''
    const last: [number, number] = isOn ? ends[item]! : [tenths(across[0]!), tenths(down[0]!)]
    if (!isOn) lines[item] += `M${last[0] / 10} ${last[1] / 10}`
    for (const [corner, at] of across.entries()) lines[item] += step(last, at, down[corner]!)
    ends[item] = last
  }
  const paths = lines.flatMap((line, item) =>
    line === '' ? [] : [svg`<path d="${markup(line)}" data-says="${says[item]!}"/>`],
  )
  return svg`<g data-cases="" fill="none" stroke="${inks.ink}" stroke-width="${stroke.toFixed(2)}" stroke-linejoin="round">${paths}</g>`
}

/** A place in tenths of a pixel. */
const tenths = (place: number) => Math.round(place * 10)

/** The way to a point from `last`, which is in tenths of a pixel: relative and short, for there are thousands. */
function step(last: [number, number], x: number, y: number): string {
  const [across, down] = [tenths(x), tenths(y)]
  const [by, deep] = [(across - last[0]) / 10, (down - last[1]) / 10]
  last[0] = across
  last[1] = down
  return by === 0 && deep === 0 ? '' : deep === 0 ? `h${by}` : by === 0 ? `v${deep}` : `l${by} ${deep}`
}

/** What of a path lies after `from`. */
function since(from: number, times: Float64Array, places: Float64Array): Polyline {
  const first = times.findIndex((time) => time >= from)
  if (first < 0) return { times: [], places: [] }
  const seen = { times: [...times.subarray(first)], places: [...places.subarray(first)] }
  if (first > 0 && times[first]! > from) {
    seen.times.unshift(from)
    seen.places.unshift(placeOn(times, places, from))
  }
  return seen
}

/** Shorter standing is not told, s. */
const least = 2
/** Ways shorter than this in a piece of a path are standing, m. */
const hair = 1e-3

/** Of each case of the stretch, in their order, a sentence: its number and kind, and where it stood while it is seen. `moves` are all its moves. */
function caseWords(stretch: Stretch, layout: Layout, moves: readonly Move[]): string[] {
  const stood = stretch.cases.map(() => new Map<number, number>())
  for (const { item, piece, times, places } of moves)
    for (let corner = 1; corner < times.length; corner++) {
      const lasts = times[corner]! - Math.max(times[corner - 1]!, stretch.from)
      if (lasts > 0 && places[corner]! - places[corner - 1]! < hair)
        stood[item]!.set(piece, (stood[item]!.get(piece) ?? 0) + lasts)
    }
  return stretch.cases.map(({ id, kind, came: [source, time], path }, item) => {
    const { name, whenFull } = stretch.sources[source]!
    const came = `Case ${id} (${layout.cases[kind]!.name}) came from ${name} at ${clockOf(time, true)}`
    if (whenFull === 'turn-away' && path.length === 0) return `${came}; it was turned away.`
    const before = Math.min(path[0]?.[1] ?? stretch.to, stretch.to) - Math.max(time, stretch.from)
    const places = [
      ...(before >= least ? [`${lasting(before)} before the line`] : []),
      ...[...stood[item]!].flatMap(([piece, lasts]) =>
        lasts >= least ? [`${lasting(lasts)} on ${layout.pieces[piece]!.name}`] : [],
      ),
    ]
    return `${came}; ${places.length > 0 ? `it stood ${places.join(', ')}` : 'it stood nowhere'}.`
  })
}
