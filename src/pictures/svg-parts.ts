/** Words and rectangles of a drawing in SVG, in the inks of the page. */
import { inks } from '../report/marks/inks.js'
import { escaped } from '../report/markup.js'

/** Pixels to a tenth. */
export const px = (value: number) => String(Math.round(value * 10) / 10)

interface TextLook {
  size?: number
  weight?: 'bold'
  quiet?: boolean
  anchor?: 'start' | 'middle' | 'end'
  /** Paper around the letters, so that they are read above lines. */
  halo?: boolean
}

/** Words at a place; any text. */
export function text(x: number, y: number, words: string, look: TextLook = {}): string {
  const { size, weight, quiet, anchor, halo } = look
  const more = [
    size ? ` font-size="${size}"` : '',
    weight ? ` font-weight="${weight}"` : '',
    anchor ? ` text-anchor="${anchor}"` : '',
    halo ? ` stroke="${inks.paper}" stroke-width="4" stroke-linejoin="round" paint-order="stroke"` : '',
  ].join('')
  return `<text x="${px(x)}" y="${px(y)}" fill="${quiet ? inks.quiet : inks.ink}"${more}>${escaped(words)}</text>`
}

/** A rectangle; `more` holds further attributes. */
export const rect = (x: number, y: number, width: number, height: number, fill: string, more = '') =>
  `<rect x="${px(x)}" y="${px(y)}" width="${px(Math.max(0, width))}" height="${px(height)}" fill="${fill}"${more}/>`
