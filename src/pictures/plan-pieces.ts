/** The pieces of a plan from above: outlines to scale, heads where they stand, direction of travel, and the ways between pieces. */

import { has, partingOf } from '../kinds/traits.js'
import { escaped } from '../report/markup.js'
import type { Layout, LayoutPiece } from './layout.js'
import { accent, ink, n, paper, quiet } from './plan-ink.js'
import { letters } from './plan-labels.js'

/** Where a row draws what. */
export interface Geometry {
  /** Units a metre. */
  scale: number
  x(metres: number): number
  /** Middle of the lane of a piece. */
  middle(piece: LayoutPiece): number
  /** Height of a piece. */
  across(piece: LayoutPiece): number
  /** Room above and below a lane that ways lead through. */
  gap: number
}

const line = (d: string, colour: string, width: number, more = ''): string =>
  `<path d="${d}" fill="none" stroke="${colour}" stroke-width="${width}"${more}/>`

/** Inside length of the fold place, m: what a sealer is longer than its belts. */
const foldOf = ({ cases }: Pick<Layout, 'cases'>) => Math.max(0, ...cases.map(({ length }) => length))

/** Draws one piece. The limiting one has an outline that is thicker, not only of another colour. */
export function drawPiece(
  piece: LayoutPiece,
  layout: Layout,
  geometry: Geometry,
  isLimiting: boolean,
): string {
  const { scale } = geometry
  const [left, long, wide] = [geometry.x(piece.x), piece.length * scale, geometry.across(piece)]
  const middle = geometry.middle(piece)
  const top = middle - wide / 2
  const outline = isLimiting ? `stroke="${accent}" stroke-width="3.5"` : `stroke="${ink}" stroke-width="1.2"`
  const parts = [
    `<rect data-piece="${escaped(piece.name)}" x="${n(left)}" y="${n(top)}" width="${n(long)}" height="${n(wide)}" fill="${paper}" ${outline}/>`,
  ]
  if (has(piece, 'conveys')) parts.push(conveyorMarks(piece, left, long, top, wide))
  if (has(piece, 'tapes')) {
    const fold = left + foldOf(layout) * scale
    parts.push(line(`M${n(fold)} ${n(top)}V${n(top + wide)}`, ink, 0.8, ' stroke-dasharray="2 2"'))
    for (const { name, at } of piece.heads) parts.push(headMark(name, left + at * scale, top, wide))
  }
  if (partingOf(piece) === 'apart') {
    const [from, to] = [n(left + 2), n(left + long - 2)]
    const spread = wide / 3
    parts.push(
      line(
        `M${from} ${n(middle)}L${to} ${n(middle - spread)}M${from} ${n(middle)}L${to} ${n(middle + spread)}`,
        ink,
        1,
      ),
    )
  }
  if (partingOf(piece) === 'aside')
    parts.push(
      `<circle cx="${n(left + long / 2)}" cy="${n(middle)}" r="${n(Math.min(long, wide) / 4)}" fill="none" stroke="${ink}"/>`,
    )
  if (piece.places) parts.push(placeMarks(piece, piece.places, left, long, top, wide))
  if (has(piece, 'conveys') || has(piece, 'tapes')) parts.push(travelMarks(piece, geometry))
  return parts.join('')
}

/** Rollers across where cases can close up, two lines along where a belt carries, dots where they roll by themselves. */
function conveyorMarks(
  { carries }: LayoutPiece,
  left: number,
  long: number,
  top: number,
  wide: number,
): string {
  if (carries === 'belt') {
    const inset = Math.min(1.8, wide / 5)
    return line(
      `M${n(left)} ${n(top + inset)}h${n(long)}M${n(left)} ${n(top + wide - inset)}h${n(long)}`,
      quiet,
      0.6,
    )
  }
  const rollers = Math.max(1, Math.min(400, Math.round(long / 5)))
  const marks = Array.from(
    { length: rollers - 1 },
    (_, index) => `M${n(left + ((index + 1) * long) / rollers)} ${n(top)}v${n(wide)}`,
  )
  return line(marks.join(''), quiet, 0.5, carries === 'gravity' ? ' stroke-dasharray="1 1.6"' : '')
}

/** A head: across for those above and below the case, filled above; at its edge for those beside it. */
function headMark(name: string, x: number, top: number, wide: number): string {
  const size = 4
  const at = name === 'left' ? top : name === 'right' ? top + wide - size : top + wide / 2 - size / 2
  const fill = name === 'bottom' ? paper : ink
  return `<rect data-head="${escaped(name)}" x="${n(x - size / 2)}" y="${n(at)}" width="${size}" height="${size}" fill="${fill}" stroke="${ink}"/>`
}

/** Places to wait are dashed, places to work are not. */
function placeMarks(
  { places }: LayoutPiece,
  { work, wait }: NonNullable<LayoutPiece['places']>,
  left: number,
  long: number,
  top: number,
  wide: number,
): string {
  if (!places || (work === 1 && wait === 0)) return ''
  const one = long / (wait + 1)
  const across = Array.from(
    { length: wait },
    (_, index) => `M${n(left + (index + 1) * one)} ${n(top)}v${n(wide)}`,
  )
  const along = Array.from(
    { length: work - 1 },
    (_, index) => `M${n(left + wait * one)} ${n(top + ((index + 1) * wide) / work)}h${n(one)}`,
  )
  return (
    (wait > 0 ? line(across.join(''), quiet, 0.8, ' stroke-dasharray="2 2"') : '') +
    (work > 1 ? line(along.join(''), ink, 0.8) : '')
  )
}

/** Arrow heads along a piece that carries, one for some metres. */
function travelMarks(piece: LayoutPiece, geometry: Geometry): string {
  const from = geometry.x(piece.x)
  const long = piece.length * geometry.scale
  const middle = geometry.middle(piece)
  const half = Math.min(3.2, geometry.across(piece) / 3)
  const count = Math.max(1, Math.min(40, Math.floor(long / 70)))
  // in a sealer the fold place is free of heads
  const places = has(piece, 'tapes')
    ? [from + Math.min(6, long / 8)]
    : Array.from({ length: count }, (_, index) => from + (long * (index + 0.5)) / count)
  const d = places.map(
    (x) => `M${n(x - half)} ${n(middle - half)}l${n(half * 1.4)} ${n(half)}l${n(-half * 1.4)} ${n(half)}`,
  )
  return line(d.join(''), paper, 3.6) + line(d.join(''), ink, 1.6)
}

/** Letters of the heads, below the sealer, together where they would touch. */
export function headLetters(piece: LayoutPiece, geometry: Geometry): string {
  const below = geometry.middle(piece) + geometry.across(piece) / 2 + letters.small + 2
  const groups: { xs: number[]; text: string }[] = []
  for (const { name, at } of piece.heads) {
    const x = geometry.x(piece.x + at)
    const last = groups.at(-1)
    if (last && x - last.xs.at(-1)! < 10) {
      last.xs.push(x)
      last.text += ` ${headLetter(name)}`
    } else groups.push({ xs: [x], text: headLetter(name) })
  }
  return groups
    .map(({ xs, text }) => {
      const x = xs.reduce((sum, each) => sum + each, 0) / xs.length
      return `<text x="${n(x)}" y="${n(below)}" font-size="${letters.small}" text-anchor="middle" fill="${ink}">${escaped(text)}</text>`
    })
    .join('')
}

/** What stands for a head below the sealer; the key says it in words. */
export const headLetter = (name: string): string => name.slice(0, 1).toUpperCase()

/**
 * The way of cases from a piece to one that does not lie straight behind it. Ways are drawn before the pieces, which cover
 * them: out below and on to the lane beside, or on and into the piece from below or above; back, or past others, through the gap.
 */
export function drawWay(
  from: LayoutPiece,
  to: LayoutPiece,
  pieces: readonly LayoutPiece[],
  geometry: Geometry,
): string {
  const [y, targetY] = [geometry.middle(from), geometry.middle(to)]
  const [end, start] = [geometry.x(from.x + from.length), geometry.x(to.x)]
  const inset = Math.min(6, (Math.min(from.length, to.length) * geometry.scale) / 2)
  if (start >= end - 0.01 && y === targetY) {
    const isFree = pieces.every(
      (each) =>
        geometry.middle(each) !== y ||
        each.x + each.length <= from.x + from.length + 1e-9 ||
        each.x >= to.x - 1e-9,
    )
    if (start - end < 0.5) return ''
    if (isFree) return arrow(`M${n(end)} ${n(y)}H${n(start)}`, start, y, 'right')
  } else if (start >= end - 0.01) {
    const edge = geometry.across(to) / 2
    if (targetY > y)
      return arrow(`M${n(end - inset)} ${n(y)}V${n(targetY)}H${n(start)}`, start, targetY, 'right')
    return arrow(
      `M${n(end)} ${n(y)}H${n(start + inset)}V${n(targetY + edge)}`,
      start + inset,
      targetY + edge,
      'up',
    )
  }
  const by = Math.max(y + geometry.across(from) / 2, targetY + geometry.across(to) / 2) + geometry.gap / 2
  return arrow(
    `M${n(end - inset)} ${n(y)}V${n(by)}H${n(start + inset)}V${n(targetY + geometry.across(to) / 2)}`,
    start + inset,
    targetY + geometry.across(to) / 2,
    'up',
  )
}

/** A way with its arrow head at the end. */
export function arrow(d: string, x: number, y: number, to: 'right' | 'up' | 'down'): string {
  const head =
    to === 'right'
      ? `M${n(x - 5)} ${n(y - 3)}L${n(x)} ${n(y)}L${n(x - 5)} ${n(y + 3)}`
      : `M${n(x - 3)} ${n(y + (to === 'up' ? 5 : -5))}L${n(x)} ${n(y)}L${n(x + 3)} ${n(y + (to === 'up' ? 5 : -5))}`
  return line(d + head, ink, 1.2, ' data-way=""')
}
