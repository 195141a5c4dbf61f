/** What a picture says of one case: its number and kind, and where it stood while it is seen. */
import type { Stretch } from '../shifts/stretch.js'
import type { Layout } from './layout.js'
import type { Move } from './motion.js'
import { clockOf, lasting } from './stops.js'

/** Shorter standing is not told, s. */
const least = 2
/** Ways shorter than this in a piece of a path are standing, m. */
const hair = 1e-3

/** Of each case of the stretch, in their order, a sentence; `moves` are all its moves. */
export function caseWords(stretch: Stretch, layout: Layout, moves: readonly Move[]): string[] {
  const stood = stretch.cases.map(() => new Map<number, number>())
  for (const { item, piece, times, places } of moves)
    for (let corner = 1; corner < times.length; corner++) {
      const lasts = times[corner]! - Math.max(times[corner - 1]!, stretch.from)
      if (lasts > 0 && places[corner]! - places[corner - 1]! < hair)
        stood[item]!.set(piece, (stood[item]!.get(piece) ?? 0) + lasts)
    }
  return stretch.cases.map(({ id, kind, came: [source, time], path }, item) => {
    const before = Math.min(path[0]?.[1] ?? stretch.to, stretch.to) - Math.max(time, stretch.from)
    const places = [
      ...(before >= least ? [`${lasting(before)} before the line`] : []),
      ...[...stood[item]!].flatMap(([piece, lasts]) =>
        lasts >= least ? [`${lasting(lasts)} on ${layout.pieces[piece]!.name}`] : [],
      ),
    ]
    const came = `Case ${id} (${layout.cases[kind]!.name}) came from ${stretch.sources[source]!.name} at ${clockOf(time, true)}`
    return `${came}; ${places.length > 0 ? `it stood ${places.join(', ')}` : 'it stood nowhere'}.`
  })
}
