/** What is drawn into a chart by hand: lines, dots, strips of colour, and words. */

import { palette } from './inks.js'
import { type Context, fontOf, type Lettering, widthOf } from './letters.js'

/** A place in the picture, px. */
export type Place = readonly [x: number, y: number]

export interface Stroke {
  colour: string
  width?: number
  dash?: readonly number[]
}

/** A line straight up or down, and one straight across. */
export const upright = (x: number, from: number, to: number): Place[] => [
  [x, from],
  [x, to],
]
export const level = (y: number, from: number, to: number): Place[] => [
  [from, y],
  [to, y],
]

/** Draws broken lines, each from place to place, and a circle where one is given. */
export function stroked(
  ctx: Context,
  { colour, width = 1, dash = [], circle }: Stroke & { circle?: { middle: Place; radius: number } },
  ...lines: Place[][]
): void {
  ctx.save()
  ctx.strokeStyle = colour
  ctx.lineWidth = width
  ctx.setLineDash([...dash])
  ctx.beginPath()
  if (circle) ctx.arc(...circle.middle, circle.radius, 0, 2 * Math.PI)
  for (const [first, ...others] of lines) {
    ctx.moveTo(...first!)
    for (const place of others) ctx.lineTo(...place)
  }
  ctx.stroke()
  ctx.restore()
}

/** Fills the shape that `outline` describes, with an edge where one is given. */
export function shape(ctx: Context, fill: string, edge: Stroke | undefined, outline: () => void): void {
  ctx.save()
  ctx.beginPath()
  outline()
  ctx.fillStyle = fill
  ctx.fill()
  if (edge) {
    ctx.strokeStyle = edge.colour
    ctx.lineWidth = edge.width ?? 1
    ctx.stroke()
  }
  ctx.restore()
}

/** A disc, with an edge where one is given. */
export const dot = (ctx: Context, [x, y]: Place, radius: number, fill: string, edge?: Stroke): void =>
  shape(ctx, fill, edge, () => ctx.arc(x, y, radius, 0, 2 * Math.PI))

/** A box of colour, on what is there or, with `isShade`, so that what is there shows through. */
export function filled(
  ctx: Context,
  [left, top, width, height]: readonly [number, number, number, number],
  colour: string,
  { alpha = 1, isShade = false }: { alpha?: number; isShade?: boolean } = {},
): void {
  ctx.save()
  if (isShade) ctx.globalCompositeOperation = 'multiply'
  ctx.globalAlpha = alpha
  ctx.fillStyle = colour
  ctx.fillRect(left, top, width, height)
  ctx.restore()
}

/** Writes `text` into the picture; `y` is its base line. */
export function written(ctx: Context, text: string, x: number, y: number, lettering: Lettering): void {
  ctx.save()
  ctx.font = fontOf(lettering)
  ctx.fillStyle = lettering.colour
  ctx.textAlign = lettering.align ?? 'left'
  ctx.textBaseline = 'alphabetic'
  ctx.fillText(text, x, y)
  ctx.restore()
}

/** A strip of paper under a text, px: beside it, from its base line up, and its whole height. */
export interface Strip {
  beside: number
  up: number
  height: number
  alpha?: number
  /** Where several texts have strips of one width. */
  width?: number
}

/** Writes on a strip of paper, so that no line runs through the letters. */
export function haloed(
  ctx: Context,
  text: string,
  [x, y]: Place,
  lettering: Lettering,
  { beside, up, height, alpha = 1, width = widthOf(ctx, text, lettering) }: Strip,
): void {
  const left = x - { left: 0, center: width / 2, right: width }[lettering.align ?? 'left']
  filled(ctx, [left - beside, y - up, width + 2 * beside, height], palette.paper, { alpha })
  written(ctx, text, x, y, lettering)
}

/** Places along a broken line, each part of it, by its length in px, in so many steps; without the last place of all. */
export const along = (corners: readonly Place[], stepsOf: (length: number) => number): Place[] =>
  corners.slice(1).flatMap((to, index) => {
    const from = corners[index]!
    const [right, down] = [to[0] - from[0], to[1] - from[1]]
    const count = stepsOf(Math.hypot(right, down))
    return Array.from(
      { length: count },
      (_, step): Place => [from[0] + (right * step) / count, from[1] + (down * step) / count],
    )
  })
