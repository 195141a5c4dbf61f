/** Kinds of cases that a document tells of: all where they are few, else those that its recorded stretch shows. */
import type { Stretch } from '../shifts/stretch.js'
import type { Layout } from './layout.js'

/** More kinds are told only as far as they occur: of 10 000 kinds a page would hold little else. Project rule. */
const mostKindsTold = 100

/** What pictures are made of. */
export interface Drawn {
  layout: Layout
  /** Null where none was recorded. */
  stretch: Stretch | null
}

/** The same line and cases with no more kinds than are seen; without a stretch the first ones. Kinds are numbered anew, in their order. */
export function withKindsTold({ layout, stretch }: Drawn): Drawn {
  if (layout.cases.length <= mostKindsTold) return { layout, stretch }
  const first = Array.from({ length: mostKindsTold }, (_, kind) => kind)
  const seen = new Set(stretch ? stretch.cases.map(({ kind }) => kind) : first)
  const told = [...(seen.size > 0 ? seen : first)].sort((a, b) => a - b)
  const places = new Map(told.map((kind, place) => [kind, place]))
  return {
    layout: { ...layout, cases: told.map((kind) => layout.cases[kind]!) },
    stretch: stretch && {
      ...stretch,
      cases: stretch.cases.map((each) => ({ ...each, kind: places.get(each.kind)! })),
      pieces: stretch.pieces.map((piece) => ({
        ...piece,
        pitches: piece.pitches.length > 0 ? told.map((kind) => piece.pitches[kind]!) : [],
      })),
    },
  }
}
