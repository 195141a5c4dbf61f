/** What the layout of a line looks like once it is read back: lengths that can be drawn, and ways that lead somewhere. */
import * as z from 'zod'
import { count, maybe, numberOrNull, shapeOf, text } from '../catalogue/shape.js'
import { type Kind, kindKeys } from '../kinds/keys.js'
import type { Layout, LayoutPiece } from './layout.js'

/** Longer is no line of a plant, m; a picture of it would have no end. Project rule. */
const mostMetres = 100_000
/** More is no line either. */
const mostPieces = 10_000

const metres = z.number().min(0).max(mostMetres)
const across = z.number().min(-mostMetres).max(mostMetres)
const few = z.int().min(0).max(mostPieces)

const piece = shapeOf<LayoutPiece>()({
  type: z.enum(Object.keys(kindKeys) as Kind[]),
  carries: maybe(text),
  length: metres,
  width: metres,
  speed: numberOrNull,
  heads: z.array(shapeOf<LayoutPiece['heads'][number]>()({ name: text, at: across })),
  places: maybe(z.object({ work: few, wait: few })),
  people: maybe(count),
  name: text,
  x: across,
  y: across,
  next: z.array(text),
})

export const layoutShape = shapeOf<Layout>()({
  pieces: z.array(piece).min(1).max(mostPieces),
  arrivals: z.array(shapeOf<Layout['arrivals'][number]>()({ name: text, next: text })),
  cases: z.array(shapeOf<Layout['cases'][number]>()({ name: text, length: metres, width: metres })).min(1),
  crews: z.array(shapeOf<Layout['crews'][number]>()({ name: text, people: count, at: maybe(text) })),
  length: metres,
  width: metres,
}).superRefine(({ pieces, arrivals, crews }, context) => {
  const names = new Set(pieces.map(({ name }) => name))
  const hold = (name: string, ...path: (string | number)[]) => {
    if (!names.has(name)) context.addIssue({ code: 'custom', path, message: 'the name of one of `pieces`' })
  }
  for (const [index, { next }] of pieces.entries())
    for (const [way, name] of next.entries()) if (name !== 'exit') hold(name, 'pieces', index, 'next', way)
  for (const [index, { next }] of arrivals.entries()) hold(next, 'arrivals', index, 'next')
  for (const [index, { at }] of crews.entries()) if (at !== undefined) hold(at, 'crews', index, 'at')
})
