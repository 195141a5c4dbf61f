/** What the picture of a replay must show at the end of a recorded stretch, and what is seen in it. */
import type { Page } from 'playwright-core'
import { motionOf, placeAt } from '../../src/pictures/motion.js'
import { replayFrame } from '../../src/pictures/replay-frame.js'
import type { RunResult } from '../../src/questions/run/document.js'
import { okabeIto } from '../../src/report/marks/inks.js'

/** Colours of the first two kinds of cases, as the picture fills them. */
const colours = [okabeIto.orange, okabeIto.skyBlue]

/** A point of the picture and the colour that is there. */
export interface Spot {
  x: number
  y: number
  colour: string
}

/**
 * A point just behind the leading edge of each case that has not left when the stretch ends, by the recorded paths, in the
 * order in which cases stand along the line. For a line in one row without branches, places side by side, or more than two kinds.
 */
export async function spotsAtEnd(page: Page, { layout, stretch }: RunResult): Promise<Spot[]> {
  const names = layout!.pieces.map(({ name }) => name)
  const { width, letters } = await page.$eval(
    '.replay-picture canvas',
    (canvas, words) => {
      const { context, width } = {
        context: canvas as unknown as HTMLCanvasElement,
        width: canvas.clientWidth,
      }
      const pen = context.getContext('2d')!
      pen.font = 'bold 12px system-ui, "DejaVu Sans", sans-serif'
      return { width, letters: words.map((word) => pen.measureText(word).width) }
    },
    names,
  )
  const frame = replayFrame(layout!, width, (name) => letters[names.indexOf(name)]!)
  const least = Math.min(...layout!.cases.map((each) => each.width))
  return motionOf(stretch!, layout!)
    .filter((move) => move.in <= stretch!.to && move.out > stretch!.to)
    .map((move) => ({
      x: frame.across(0, layout!.pieces[move.piece]!.x + placeAt(move, stretch!.to)) - 3,
      y: frame.middle(0, move.piece) - (least * frame.scale) / 4,
      colour: colours[move.kind]!,
    }))
    .sort((a, b) => a.x - b.x)
}

/** The colours at these points, and how many stretches of the colour of a case a line through them meets. */
export const seenAt = (page: Page, spots: readonly Spot[]): Promise<{ at: string[]; count: number }> =>
  page.$eval(
    '.replay-picture canvas',
    (element, [points, fills]) => {
      const canvas = element as unknown as HTMLCanvasElement
      const y = Math.round(points[0]!.y)
      const { data } = canvas.getContext('2d')!.getImageData(0, y, canvas.width, 1)
      const colourAt = (x: number) =>
        `#${[0, 1, 2].map((part) => data[x * 4 + part]!.toString(16).padStart(2, '0')).join('')}`
      let [count, isIn] = [0, false]
      for (let x = 0; x < canvas.width; x++) {
        const isCase = fills.includes(colourAt(x))
        if (isCase && !isIn) count++
        isIn = isCase
      }
      return { at: points.map(({ x }) => colourAt(Math.floor(x))), count }
    },
    [spots, colours.map((colour) => colour.toLowerCase())] as [Spot[], string[]],
  )
