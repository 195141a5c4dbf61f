/** Names the lines of designs beside them: who reaches which output with which share of the shifts. */
import type { Plugin } from 'chart.js'
import { fitted, shortened } from '../../report/marks/breaking.js'
import { palette } from '../../report/marks/inks.js'
import { letterWidth, widthOf } from '../../report/marks/letters.js'
import { byHand } from '../../report/marks/mark.js'
import { dot, haloed, level, type Stroke, stroked } from '../../report/marks/pen.js'

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
  stroke: Stroke & { dash: number[] }
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
  Math.min(
    mostLabelWidth,
    Math.max([...name].length * letterWidth.bold, [...figures].length * letterWidth.small),
  ) +
  labelGap +
  10

const nameLettering = { size: 12, colour: palette.ink, isBold: true }
const figuresLettering = { size: 11, colour: palette.quietInk }

/** The strip of paper under a name. */
const strip = { beside: 2, up: 11, height: 14 }

/** Names each line: a label beside it where no line is, and a thin line from there to a dot on the design's own. */
export const designNames = (designs: readonly Design[], labels: readonly Label[]): Plugin =>
  byHand({
    over({ ctx, x: pixel, y: up }) {
      for (const { design, side, share, lines } of labels) {
        const y = up(share * 100)
        const name = fitted(lines[0], (short) => widthOf(ctx, short, nameLettering) <= mostLabelWidth)
        const width = Math.max(widthOf(ctx, name, nameLettering), widthOf(ctx, lines[1], figuresLettering))
        // what each line takes of the height of the label
        const taken = designs.map(({ outputs }): [number, number] => [
          pixel(putOutAtLeast(outputs, share + halfLabel)),
          pixel(putOutAtLeast(outputs, share - halfLabel)),
        ])
        const own = pixel(putOutAtLeast(design.outputs, share))
        const x = freePlace(own, side, width, taken)
        const { colour } = design.stroke
        stroked(ctx, { colour }, level(y, x, own))
        dot(ctx, [own, y], 4.5, colour, { colour: palette.paper, width: 1.5 })
        const align = side === 'left' ? 'right' : 'left'
        const beside = x + (side === 'left' ? -4 : 4)
        haloed(ctx, name, [beside, y - 1], { ...nameLettering, align }, strip)
        haloed(ctx, lines[1], [beside, y + 13], { ...figuresLettering, align }, strip)
      }
    },
  })

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
