/** Reference lines such as the target, with their names, and shades over a part of an axis. */
import type { Plugin } from 'chart.js'
import { palette } from './inks.js'
import { type Lettering, widthOf } from './letters.js'
import { byHand, within } from './mark.js'
import { filled, level, type Stroke, stroked, upright, written } from './pen.js'

/** How a reference line is dashed. */
export const dashes = [6, 4]

const look: Stroke = { colour: palette.target, width: 1.5, dash: dashes }

/** A line straight up at `at`, `beyond` px out of the picture above; none where that is outside. */
export const ruleUp = (
  at: number,
  { beyond = 0, ...stroke }: Partial<Stroke> & { beyond?: number } = {},
): Plugin =>
  byHand({
    behind({ ctx, area: { left, right, top, bottom }, x }) {
      if (x(at) < left || x(at) > right) return
      stroked(ctx, { ...look, ...stroke }, upright(x(at), top - beyond, bottom))
    },
  })

/** A line across at `at`, no farther up or down than the picture. */
export const ruleAcross = (at: number, stroke: Partial<Stroke> = {}): Plugin =>
  byHand({
    behind({ ctx, area: { left, right, top, bottom }, y }) {
      stroked(ctx, { ...look, ...stroke }, level(within(top, bottom, y(at)), left, right))
    },
  })

const lettering: Lettering = { size: 12, colour: palette.target, isBold: true }

/** The name of a line straight up, beside its head: at the right, at the left where there is no room. */
export const nameBeside = (at: number, text: string, down: number): Plugin =>
  byHand({
    over({ ctx, area, x }) {
      const isRoom = x(at) + 8 + widthOf(ctx, text, lettering) <= area.right
      written(ctx, text, isRoom ? x(at) + 8 : x(at) - 8, area.top + down, {
        ...lettering,
        align: isRoom ? 'left' : 'right',
      })
    },
  })

/**
 * The name of a line straight up, `up` px above the picture and over the middle of the line, as far as it stays within
 * the picture, or, with `margin`, so far within the edges of all that is drawn; none where the line is outside.
 */
export const nameAbove = (
  at: number,
  text: string,
  { up, margin, ...more }: { up: number; margin?: number } & Partial<Lettering>,
): Plugin =>
  byHand({
    over({ ctx, area, x, chart }) {
      if (x(at) < area.left || x(at) > area.right) return
      const letters: Lettering = { ...lettering, ...more, align: 'center' }
      const half = widthOf(ctx, text, letters) / 2
      const [from, to] = margin === undefined ? [area.left, area.right] : [margin, chart.width - margin]
      written(ctx, text, within(from + half, to - half, x(at)), area.top - up, letters)
    },
  })

/** Shades what lies from one number to another along an axis; `null` is the edge of the picture. What is there shows through. */
export const shade = (axis: 'x' | 'y', from: number | null, to: number | null): Plugin =>
  byHand({
    behind({ ctx, area: { left, right, top, bottom }, x, y }) {
      if (axis === 'x') {
        const [begin, end] = [from === null ? left : x(from), to === null ? right : x(to)]
        filled(ctx, [begin, top, end - begin, bottom - top], palette.pause, { isShade: true })
      } else {
        const at = (value: number | null, edge: number) =>
          value === null ? edge : within(top, bottom, y(value))
        const [upper, lower] = [at(to, top), at(from, bottom)]
        filled(ctx, [left, upper, right - left, lower - upper], palette.pause, { isShade: true })
      }
    },
  })

/** The name of a line across, at its right end: on it, or above the picture, where nothing can lie. */
export const nameAtEnd = (
  at: number,
  text: string,
  { isAbove, ...more }: { isAbove?: boolean } & Partial<Lettering> = {},
): Plugin =>
  byHand({
    behind({ ctx, area, y }) {
      const [right, down] = isAbove ? [area.right, area.top - 6] : [area.right - 4, y(at) - 4]
      written(ctx, text, right, down, { ...lettering, ...more, align: 'right' })
    },
  })

/** Greys all that lies beyond a value, below the lines of the axes, with words above the picture. */
export const regionBeyond = (from: number, text: string): Plugin =>
  byHand({
    below({ ctx, area: { right, top, bottom }, x }) {
      filled(ctx, [x(from), top, right - x(from), bottom - top], palette.pause)
    },
    over({ ctx, area, x }) {
      const quiet = { size: 12, colour: palette.quietInk }
      const left = Math.min(x(from), area.right - widthOf(ctx, text, quiet))
      written(ctx, text, Math.max(area.left, left), area.top - 25, quiet)
    },
  })
