/** The letters of charts and drawings: which they are, and how wide a text is, measured or guessed. */
import type { Chart as DrawnChart } from 'chart.js'

/** Name of the letters that a file is drawn with: none that a machine may have, so that all draw the same. */
export const ownFont = 'Tapeshift Sans'

/** The own letters, and in a browser what stands in for them. */
export const fontFamily = `"${ownFont}", "DejaVu Sans", system-ui, sans-serif`

/** Letters of axes and legends, which do not take those of the chart. */
export const plainFont = { family: fontFamily, size: 12 }

/** How a text is written by hand. */
export interface Lettering {
  size: number
  colour: string
  align?: 'left' | 'center' | 'right'
  isBold?: boolean
}

/** What a chart is drawn on. */
export type Context = DrawnChart['ctx']

export const fontOf = ({ size, isBold }: Pick<Lettering, 'size' | 'isBold'>): string =>
  `${isBold ? 'bold ' : ''}${size}px ${fontFamily}`

/** Width of `text` in the picture, px. */
export function widthOf(ctx: Context, text: string, lettering: Pick<Lettering, 'size' | 'isBold'>): number {
  ctx.save()
  ctx.font = fontOf(lettering)
  const { width } = ctx.measureText(text)
  ctx.restore()
  return width
}

/** Usual width of a letter of size 11 and 12, and at most in a bold one, px: where room is made before there is a canvas to measure on. */
export const letterWidth = { small: 6.7, plain: 7.3, figures: 8.4, bold: 8.6 }

/** The same in drawings of a page, whose letters are those of the reader's system, px. */
export const pageLetterWidth = { plain: 6.3, bold: 7.2, subtitle: 6.8, title: 9.4 }

/** Width of `text` by the usual width of its letters: wide scripts take nearly a square each. */
export function guessedWidth(text: string, size: number): number {
  let width = 0
  for (const letter of text)
    width += /[\u2e80-\u{10ffff}]/u.test(letter) ? 1.05 : /[WMwm@%]/u.test(letter) ? 0.9 : 0.6
  return width * size
}

/** How many of the first letters of `text` fit where `room` usual ones do: names may be of wide letters only. */
export function lettersThatFit(text: string, room: number): number {
  let left = room
  let count = 0
  for (const letter of text) {
    left -= /[WMwm@%\u2e80-\u{10ffff}]/u.test(letter) ? 1.9 : /\p{Lu}/u.test(letter) ? 1.3 : 1
    if (left < 0) break
    count += letter.length
  }
  return Math.max(count, 1)
}
