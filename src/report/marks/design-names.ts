/** Names the lines of designs beside them: who reaches which output with which share of the shifts. */
import type { Plugin } from 'chart.js'
import { type Context, palette, shortened, widthOf, written } from './chart.js'

/** Shares at which lines are named: right of all lines where these leave room there, left of them where that is so. */
const sides = {
  right: { from: 0.88, to: 0.56 },
  left: { from: 0.44, to: 0.1 },
}
/** Half of the height of a label as a share of the axis. */
const halfLabel = 0.05
/** From a label to the nearest line, px. */
const labelGap = 16
const mostLabelWidth = 215

/** A design whose line is drawn. */
export interface Design {
  name: string
  /** Good cases of its shifts, ascending. */
  outputs: number[]
  stroke: { colour: string; dash: number[] }
}

/** Where a design is named. */
export interface Label {
  design: Design
  side: keyof typeof sides
  /** Share of shifts at whose height it stands. */
  share: number
  lines: [string, string]
}

/**
 * The most cases that a share of the shifts, on (0, 1], put out at least. `outputs` ascend; no distribution is assumed.
 */
export function putOutAtLeast(outputs: readonly number[], share: number): number {
  // a product a hair above a whole number is that number
  const shifts = Math.max(1, Math.ceil(outputs.length * share - 1e-9))
  return outputs[outputs.length - shifts]!
}

/** Half of the shifts put out at least so many cases. */
export const medianOf = ({ outputs }: Design) => putOutAtLeast(outputs, 0.5)

/** The better half of the designs is named right of all lines, the other half left of them, each at a height of its own. */
export function labelsOf(designs: readonly Design[], figuresOf: (design: Design) => string): Label[] {
  const ranked = [...designs].sort((a, b) => medianOf(b) - medianOf(a))
  const onRight = Math.ceil(ranked.length / 2)
  return ranked.map((design, rank) => {
    const side = rank < onRight ? 'right' : 'left'
    const [place, places] = side === 'right' ? [rank, onRight] : [rank - onRight, ranked.length - onRight]
    const { from, to } = sides[side]
    return {
      design,
      side,
      share: places === 1 ? (from + to) / 2 : from + ((to - from) * place) / (places - 1),
      lines: [shortened(design.name, 26), figuresOf(design)],
    }
  })
}

/** Where a label may end at the farthest, cases: left of all lines over its whole height, or right of them. */
export function edgeOf(designs: readonly Design[], { side, share }: Label): number {
  return side === 'left'
    ? Math.min(...designs.map(({ outputs }) => putOutAtLeast(outputs, share + halfLabel)))
    : Math.max(...designs.map(({ outputs }) => putOutAtLeast(outputs, share - halfLabel)))
}

/** Width of a label by the usual width of its letters, with the gap to the lines, px. */
export const widthGuess = ({ lines: [name, figures] }: Label) =>
  Math.min(mostLabelWidth, Math.max([...name].length * 8.6, [...figures].length * 6.7)) + labelGap + 10

const nameLettering = { size: 12, colour: palette.ink, isBold: true }
const figuresLettering = { size: 11, colour: palette.quietInk }

/** Names each line: a label beside it where no line is, and a thin line from there to a dot on the design's own. */
export function designNames(designs: readonly Design[], labels: readonly Label[]): Plugin<'line'> {
  return {
    id: 'design-names',
    afterDatasetsDraw({ ctx, scales }) {
      const pixel = (cases: number) => scales.x!.getPixelForValue(cases)
      for (const { design, side, share, lines } of labels) {
        const y = scales.y!.getPixelForValue(share * 100)
        const name = fitted(ctx, lines[0])
        const width = Math.max(widthOf(ctx, name, nameLettering), widthOf(ctx, lines[1], figuresLettering))
        // what each line takes of the height of the label
        const taken = designs.map(({ outputs }): [number, number] => [
          pixel(putOutAtLeast(outputs, share + halfLabel)),
          pixel(putOutAtLeast(outputs, share - halfLabel)),
        ])
        const dot = pixel(putOutAtLeast(design.outputs, share))
        const x = freePlace(dot, side, width, taken)
        leader(ctx, x, dot, y, design.stroke.colour)
        const align = side === 'left' ? 'right' : 'left'
        const beside = x + (side === 'left' ? -4 : 4)
        haloed(ctx, name, beside, y - 1, { ...nameLettering, align })
        haloed(ctx, lines[1], beside, y + 13, { ...figuresLettering, align })
      }
    },
  }
}

/** The nearest place at a side of `dot` where a label of this width stands clear of all that is taken, px. */
function freePlace(
  dot: number,
  side: Label['side'],
  width: number,
  taken: readonly (readonly [number, number])[],
): number {
  // seen from the dot, whichever side that is: distances grow outwards
  const distances = taken.map(([from, to]) =>
    side === 'left' ? [dot - to, dot - from] : [from - dot, to - dot],
  )
  let at = 0
  for (const [near, far] of distances.sort((a, b) => a[0]! - b[0]!))
    if (near! < at + labelGap + width + labelGap && far! > at) at = far!
  return side === 'left' ? dot - at - labelGap : dot + at + labelGap
}

/** A name without its middle where its letters are too wide. */
function fitted(ctx: Context, name: string): string {
  let text = name
  for (let most = [...name].length; most > 1 && widthOf(ctx, text, nameLettering) > mostLabelWidth; most--)
    text = shortened(name, most - 1)
  return text
}

function leader(ctx: Context, from: number, to: number, y: number, colour: string): void {
  ctx.save()
  ctx.strokeStyle = colour
  ctx.lineWidth = 1
  ctx.beginPath()
  ctx.moveTo(from, y)
  ctx.lineTo(to, y)
  ctx.stroke()
  ctx.fillStyle = colour
  ctx.strokeStyle = palette.paper
  ctx.lineWidth = 1.5
  ctx.beginPath()
  ctx.arc(to, y, 4.5, 0, 2 * Math.PI)
  ctx.fill()
  ctx.stroke()
  ctx.restore()
}

/** Writes on a strip of paper, so that no line runs through the letters. */
function haloed(...[ctx, text, x, y, lettering]: Parameters<typeof written>): void {
  const width = widthOf(ctx, text, lettering)
  ctx.save()
  ctx.fillStyle = palette.paper
  ctx.fillRect(lettering.align === 'right' ? x - width - 2 : x - 2, y - 11, width + 4, 14)
  ctx.restore()
  written(ctx, text, x, y, lettering)
}
