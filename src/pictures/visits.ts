/** Which case was on which piece and when, with who came before it and where it went on to. */

import type { Stretch } from '../shifts/stretch.js'
import type { Polyline } from './polyline.js'

/** A case on a piece. */
export interface Stay {
  /** Place of the case in the stretch. */
  item: number
  kind: number
  /** Outside, m, where its kind varies. */
  size?: { length: number; width: number } | undefined
  /** Place of the piece in the layout. */
  piece: number
  /** Of a station with several places beside one another the place, from 0. */
  lane: number
  /** When it comes and goes, s; infinite where it is still there at the end of the stretch. */
  in: number
  out: number
}

/** The same while its path is being worked out. */
export interface Visit extends Stay {
  /** Going onto the belts of a sealer. */
  belts: number
  isLost: boolean
  /** The piece where it was before, or -1. */
  before: number
  /** Where this case is next. */
  next: Visit | null
  /** Who came to this piece just before. */
  ahead: Visit | null
  /** Who comes there next. */
  behind: Visit | null
  /** While its tail is held: begin and end, s. */
  held: Held
  /** Path by the rule of the piece alone, where it depends on others there: on a conveyor with its own length. */
  free: Polyline | null
  path: Polyline | null
  isBeingMade: boolean
}

type Held = readonly (readonly [begin: number, end: number])[]

/** One for all whose tail nobody holds: they are nearly all. */
const never: Held = []

const heldOn = (held: NonNullable<Stretch['cases'][number]['held']>, index: number): Held =>
  held.flatMap(([at, begin, end]) => (at === index ? [[begin, end ?? Infinity] as const] : []))

/** All visits in order of coming. */
export function visitsOf({ pieces, cases }: Stretch): Visit[] {
  const visits = cases.flatMap(({ kind, size, path, belts = [], held = [], lost }, item) => {
    const entries = belts.values()
    const own = path.map(([piece, from, out], index): Visit => {
      const isSealer = pieces[piece]!.moves === 'sealer'
      return {
        ...{ item, kind, size, piece, in: from, out: out ?? Infinity, isLost: false, lane: 0, next: null },
        ...{ ahead: null, behind: null, free: null, path: null, isBeingMade: false },
        before: path[index - 1]?.[0] ?? -1,
        held: held.length === 0 ? never : heldOn(held, index),
        belts: isSealer ? (entries.next().value ?? Infinity) : Infinity,
      }
    })
    for (const [index, visit] of own.entries()) visit.next = own[index + 1] ?? null
    if (lost && own.length > 0) own.at(-1)!.isLost = true
    return own
  })
  visits.sort((a, b) => a.in - b.in || order(a.belts, b.belts) || order(a.out, b.out) || a.item - b.item)
  const lastAt = new Map<number, Visit>()
  for (const visit of visits) {
    visit.ahead = lastAt.get(visit.piece) ?? null
    if (visit.ahead) visit.ahead.behind = visit
    lastAt.set(visit.piece, visit)
  }
  return visits
}

/** Which comes first of two times that may be infinite: who comes at one instant goes in that order too. */
const order = (a: number, b: number) => (a < b ? -1 : a > b ? 1 : 0)
