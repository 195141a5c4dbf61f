/** Bars from nothing to an effect, with its interval: filled where it is shown, with an arrow where it goes far beyond the axis. */
import { palette } from './inks.js'
import type { Context } from './letters.js'
import { byHand, type Drawing, type Mark, within } from './mark.js'
import { level, stroked, upright } from './pen.js'

/** A bar, its numbers in the unit of the axis; a row may hold two, a little above and below its place. */
export interface EffectBar {
  row: number
  mean: number
  low: number
  high: number
  colour: string
  isShown: boolean
  /** Does it go on beyond the axis? */
  isFar: boolean
}

const height = 13
/** An arrow takes so much of the end of its bar, px. */
const tip = 9

/** Bars with the line at 0; they can be pointed at where their ends are. */
export const effectBars = (bars: readonly EffectBar[]): Mark[] => [
  // points that are not drawn: the bars are drawn by hand
  { label: 'difference', data: bars.map(({ mean, row }) => ({ x: mean, y: row })), pointRadius: 0 },
  byHand({
    over(drawing) {
      const { ctx, area, x } = drawing
      for (const bar of bars) if (Number.isFinite(bar.mean)) drawBar(drawing, bar)
      stroked(ctx, { colour: palette.ink, width: 1.5 }, upright(x(0), area.top, area.bottom))
    },
  }),
]

function drawBar({ ctx, area, x, y }: Drawing, bar: EffectBar): void {
  const { mean, low, high, row, colour, isShown, isFar } = bar
  const spare = isFar ? tip : 0
  const inside = (value: number) => within(area.left + spare, area.right - spare, x(value))
  const end = inside(mean)
  box(ctx, x(0), end, y(row), colour, isShown)
  if (isFar && end !== x(mean)) arrow(ctx, end, y(row), mean < 0 ? -tip : tip, colour)
  else interval(ctx, inside(low), inside(high), y(row))
}

function box(ctx: Context, from: number, to: number, y: number, colour: string, isShown: boolean): void {
  ctx.save()
  ctx.fillStyle = isShown ? colour : palette.paper
  ctx.strokeStyle = colour
  ctx.lineWidth = 1.5
  ctx.beginPath()
  ctx.rect(Math.min(from, to), y - height / 2, Math.abs(to - from), height)
  ctx.fill()
  ctx.stroke()
  ctx.restore()
}

function interval(ctx: Context, from: number, to: number, y: number): void {
  const ends = [from, to].map((end) => upright(end, y - 3, y + 3))
  stroked(ctx, { colour: palette.ink, width: 1.2 }, level(y, from, to), ...ends)
}

/** The tip of a bar that goes on, `length` px to the right of where it is cut. */
function arrow(ctx: Context, x: number, y: number, length: number, colour: string): void {
  ctx.save()
  ctx.fillStyle = colour
  ctx.beginPath()
  ctx.moveTo(x, y - height / 2)
  ctx.lineTo(x + length, y)
  ctx.lineTo(x, y + height / 2)
  ctx.fill()
  ctx.restore()
}
