/** Labels that avoid one another and what is drawn. */
import type { Plugin } from 'chart.js'
import { fitted } from './breaking.js'
import { palette } from './inks.js'
import { type Lettering, widthOf } from './letters.js'
import { byHand, type Point, within } from './mark.js'
import { along, dot, haloed, level, type Place, stroked, upright, written } from './pen.js'
import { dashes } from './rule.js'

/** Names of places along x, above the picture; one that would run into the one before it is left out. */
export const namesAbove = (names: readonly { text: string; at: number }[]): Plugin =>
  byHand({
    behind({ ctx, area, x, chart: { width } }) {
      const lettering = { size: 11, colour: palette.quietInk, align: 'center' as const }
      let free = area.left
      for (const { text, at } of names) {
        const half = widthOf(ctx, text, lettering) / 2
        const middle = Math.min(Math.max(x(at), area.left + half), width - half - 4)
        if (middle - half < free) continue
        free = middle + half + 6
        written(ctx, text, middle, area.top - 4, lettering)
      }
    },
  })

/** A level across the picture, with where a curve meets it, in the units of the axes. */
export interface Level {
  y: number
  text: string
  met: readonly number[]
}

/** Least distance of two names of levels, px. */
const levelLine = 14

/** Dashed lines across, named at the right, with a dot where the curve meets them. */
export const levels = (all: readonly Level[]): Plugin =>
  byHand({
    over({ ctx, area, x, y }) {
      let free = Number.NEGATIVE_INFINITY
      for (const { y: at, text, met } of [...all].sort((a, b) => b.y - a.y)) {
        const height = y(at)
        const look = { colour: palette.target, width: 1.2, dash: dashes }
        stroked(ctx, look, level(height, area.left, area.right))
        for (const value of met) dot(ctx, [x(value), height], 3.5, palette.target)
        // names that would stand on one another move down
        const base = Math.max(height + 4, free)
        free = base + levelLine
        written(ctx, text, area.right + 8, base, { size: 12, colour: palette.ink })
      }
    },
  })

const bold: Lettering = { size: 12, colour: palette.ink, isBold: true }

/** A point with a name. */
export interface NamedPoint extends Point {
  words: readonly string[]
  isBelow: boolean
}

/** Rings around points, each with its name where the curve through `line` leaves room. */
export const namedPoints = (all: readonly NamedPoint[], line: readonly Point[]): Plugin =>
  byHand({
    over({ ctx, area, x: across, y: up }) {
      const corners = line.map(({ x, y }): Place => [across(x), up(y)])
      const curve = [...along(corners, (length) => Math.max(1, Math.ceil(length / 4))), ...corners.slice(-1)]
      for (const { words, isBelow, ...point } of all) {
        const [x, y] = [across(point.x), up(point.y)]
        const width = Math.max(...words.map((each) => widthOf(ctx, each, bold)))
        const half = width / 2
        const height = words.length * 15
        const boxes = [34, 70, 110].flatMap((far) =>
          [isBelow, !isBelow].flatMap((isDown) =>
            [half - 6, 6 - half, 0].map((shift) => ({
              isDown,
              middle: within(area.left + half + 4, area.right - half - 4, x + shift),
              top: isDown ? y + far : y - far - height,
            })),
          ),
        )
        const isFree = ({ middle, top }: (typeof boxes)[number]) =>
          top > area.top &&
          top + height < area.bottom &&
          !curve.some(
            ([left, down]) => Math.abs(left - middle) < half + 6 && down > top - 5 && down < top + height + 5,
          )
        const { isDown, middle, top } = boxes.find(isFree) ?? boxes[0]!
        const circle = { middle: [x, y] as const, radius: 7 }
        const leader = isDown ? upright(x, y + 8, top - 1) : upright(x, y - 8, top + height + 3)
        stroked(ctx, { colour: palette.ink, width: 1.6, circle }, leader)
        const strip = { beside: 3, up: 12, height: 16, alpha: 0.85, width }
        for (const [index, each] of words.entries())
          haloed(ctx, each, [middle, top + 12 + index * 15], { ...bold, align: 'center' }, strip)
      }
    },
  })

/** What a name may not lie on: a point with its interval. */
export interface Obstacle {
  x: number
  low: number
  high: number
}

/** Steps away from the point at which its name may stand, px, the nearest first. */
const strides = [0, 26, -26, 52, -52, 78, -78, 104, -104, 140, -140, 180, -180]

/** Names a point beside it where least else is drawn, a line across at `line` counted, and draws a line from there to it. */
export const nameNear = (
  { x: atX, y: atY }: Point,
  whole: string,
  obstacles: readonly Obstacle[],
  line: number,
): Plugin =>
  byHand({
    over({ ctx, area, x: across, y: up }) {
      const [x, y] = [across(atX), up(atY)]
      const name = fitted(whole, (short) => widthOf(ctx, short, bold) <= area.right - area.left - 8)
      const width = widthOf(ctx, name, bold)
      const boxes = obstacles.map((each) => ({
        x: across(each.x),
        top: up(each.high) - 8,
        bottom: up(each.low) + 8,
      }))
      boxes.push({ x, top: y - 12, bottom: y + 12 })
      const height = up(line)
      const isOut = (left: number, middle: number) =>
        left < area.left + 4 ||
        left + width > area.right - 4 ||
        middle < area.top + 12 ||
        middle > area.bottom - 12
      /** How much a name there would lie on; out of the picture it may not stand. */
      const covered = (left: number, middle: number) =>
        isOut(left, middle)
          ? Infinity
          : boxes.filter(
              (box) =>
                box.x > left - 10 &&
                box.x < left + width + 10 &&
                box.top < middle + 8 &&
                box.bottom > middle - 8,
            ).length + (Math.abs(height - middle) < 12 ? 1 : 0)
      const best = strides
        .flatMap((stride) =>
          [x + 18, x - 18 - width, x - width / 2, area.left + 4, area.right - width - 4].map((left) => ({
            left,
            middle: y + stride,
          })),
        )
        .map((place) => ({ ...place, over: covered(place.left, place.middle) }))
        .reduce((least, each) => (each.over < least.over ? each : least))
      const left = Math.min(Math.max(best.left, area.left + 4), area.right - width - 4)
      const side = best.middle > y ? 1 : -1
      if (best.middle !== y)
        stroked(ctx, { colour: palette.ink }, [
          [x, y + side * 11],
          [Math.min(Math.max(x, left), left + width), best.middle - side * 8],
        ])
      written(ctx, name, left, best.middle + 4, bold)
    },
  })
