/** Marks in a response curve: levels across it, points that are named, what lies beyond enough. */
import type { Plugin } from 'chart.js'
import { type Context, palette, widthOf, written } from './chart.js'

/** A level across the picture, with where the curve meets it, in the units of the axes. */
export interface Level {
  y: number
  text: string
  at: readonly number[]
}

/** Least distance of two names of levels, px. */
const line = 14

/** Dashed lines across, named at the right, with a dot where the curve meets them. */
export function levelLines(levels: readonly Level[]): Plugin<'scatter'> {
  return {
    id: 'levels',
    afterDatasetsDraw({ ctx, chartArea, scales }) {
      let free = Number.NEGATIVE_INFINITY
      for (const { y, text, at } of [...levels].sort((a, b) => b.y - a.y)) {
        const height = scales.y!.getPixelForValue(y)
        ctx.save()
        ctx.strokeStyle = palette.target
        ctx.lineWidth = 1.2
        ctx.setLineDash([6, 4])
        ctx.beginPath()
        ctx.moveTo(chartArea.left, height)
        ctx.lineTo(chartArea.right, height)
        ctx.stroke()
        ctx.setLineDash([])
        ctx.fillStyle = palette.target
        for (const value of at) {
          ctx.beginPath()
          ctx.arc(scales.x!.getPixelForValue(value), height, 3.5, 0, 2 * Math.PI)
          ctx.fill()
        }
        ctx.restore()
        // names that would stand on one another move down
        const base = Math.max(height + 4, free)
        free = base + line
        written(ctx, text, chartArea.right + 8, base, { size: 12, colour: palette.ink })
      }
    },
  }
}

/** A point with a name. */
interface Mark {
  x: number
  y: number
  words: readonly string[]
  isBelow: boolean
}

type Spot = Readonly<Record<'x' | 'y', number>>

/** Rings around points, each with its name where the curve through `line` leaves room. */
export function marks(all: readonly Mark[], line: readonly Spot[]): Plugin<'scatter'> {
  return {
    id: 'marks',
    afterDatasetsDraw({ ctx, chartArea, scales }) {
      const pixel = ({ x, y }: Spot): Spot => ({
        x: scales.x!.getPixelForValue(x),
        y: scales.y!.getPixelForValue(y),
      })
      const curve = along(line.map(pixel))
      for (const mark of all) {
        const { x, y } = pixel(mark)
        const lettering = { size: 12, colour: palette.ink, isBold: true }
        const half = Math.max(...mark.words.map((each) => widthOf(ctx, each, lettering))) / 2
        const height = mark.words.length * 15
        const boxes = [34, 70, 110].flatMap((far) =>
          [mark.isBelow, !mark.isBelow].flatMap((isDown) =>
            [half - 6, 6 - half, 0].map((shift) => ({
              isDown,
              far,
              x: Math.max(chartArea.left + half + 4, Math.min(chartArea.right - half - 4, x + shift)),
              top: isDown ? y + far : y - far - height,
            })),
          ),
        )
        const isFree = (box: (typeof boxes)[number]) =>
          box.top > chartArea.top &&
          box.top + height < chartArea.bottom &&
          !curve.some(
            (spot) =>
              Math.abs(spot.x - box.x) < half + 6 && spot.y > box.top - 5 && spot.y < box.top + height + 5,
          )
        const box = boxes.find(isFree) ?? boxes[0]!
        ctx.save()
        ctx.strokeStyle = palette.ink
        ctx.lineWidth = 1.6
        ctx.beginPath()
        ctx.arc(x, y, 7, 0, 2 * Math.PI)
        ctx.moveTo(x, box.isDown ? y + 8 : y - 8)
        ctx.lineTo(x, box.isDown ? box.top - 1 : box.top + height + 3)
        ctx.stroke()
        ctx.restore()
        for (const [index, each] of mark.words.entries()) {
          const base = box.top + 12 + index * 15
          haloed(ctx, box.x, base, half)
          written(ctx, each, box.x, base, { ...lettering, align: 'center' })
        }
      }
    },
  }
}

/** Spots along a line, a few px apart. */
function along(points: readonly Spot[]): Spot[] {
  return points.slice(1).flatMap((to, index) => {
    const from = points[index]!
    const count = Math.max(1, Math.ceil(Math.hypot(to.x - from.x, to.y - from.y) / 4))
    return Array.from({ length: count + 1 }, (_, part) => ({
      x: from.x + ((to.x - from.x) * part) / count,
      y: from.y + ((to.y - from.y) * part) / count,
    }))
  })
}

/** A strip of paper under a text, so that no line runs through its letters. */
function haloed(ctx: Context, x: number, y: number, half: number): void {
  ctx.save()
  ctx.fillStyle = palette.paper
  ctx.globalAlpha = 0.85
  ctx.fillRect(x - half - 3, y - 12, 2 * half + 6, 16)
  ctx.restore()
}

/** Greys what lies beyond a value, with words above the plot. */
export function regionBeyond(from: number, text: string): Plugin<'scatter'> {
  return {
    id: 'beyond',
    beforeDraw({ ctx, chartArea, scales }) {
      const left = scales.x!.getPixelForValue(from)
      ctx.save()
      ctx.fillStyle = palette.pause
      ctx.fillRect(left, chartArea.top, chartArea.right - left, chartArea.bottom - chartArea.top)
      ctx.restore()
    },
    afterDatasetsDraw({ ctx, chartArea, scales }) {
      const lettering = { size: 12, colour: palette.quietInk }
      const width = widthOf(ctx, text, lettering)
      const left = Math.min(scales.x!.getPixelForValue(from), chartArea.right - width)
      written(ctx, text, Math.max(chartArea.left, left), chartArea.top - 25, lettering)
    },
  }
}

/** Marks the value that the scenario has. */
export function ownValue(x: number, text: string): Plugin<'scatter'> {
  return {
    id: 'own-value',
    beforeDatasetsDraw({ ctx, chartArea, scales }) {
      const left = scales.x!.getPixelForValue(x)
      if (left < chartArea.left || left > chartArea.right) return
      ctx.save()
      ctx.strokeStyle = palette.frame
      ctx.lineWidth = 1.2
      ctx.beginPath()
      ctx.moveTo(left, chartArea.top - 4)
      ctx.lineTo(left, chartArea.bottom)
      ctx.stroke()
      ctx.restore()
    },
    afterDatasetsDraw({ ctx, chartArea, scales }) {
      const left = scales.x!.getPixelForValue(x)
      if (left < chartArea.left || left > chartArea.right) return
      const lettering = { size: 12, colour: palette.ink }
      const half = widthOf(ctx, text, lettering) / 2
      const centre = Math.max(chartArea.left + half, Math.min(chartArea.right - half, left))
      written(ctx, text, centre, chartArea.top - 8, { ...lettering, align: 'center' })
    },
  }
}
