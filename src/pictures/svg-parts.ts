/** What drawings in SVG are made of: numbers as markup has them, and lines, rectangles and words in the inks of the page. */
import { inks } from '../report/marks/inks.js'
import { type Content, type Markup, svg } from '../report/markup.js'

/** A number of a drawing that is scaled: two decimals are finer than any screen. */
export const n = (value: number): string => String(Math.round(value * 100) / 100)

/** Pixels to a tenth. */
export const px = (value: number): string => String(Math.round(value * 10) / 10)

export interface TextLook {
  size?: number
  weight?: 'bold'
  quiet?: boolean
  anchor?: 'start' | 'middle' | 'end'
  /** Paper around the letters, so that they are read above lines. */
  halo?: boolean
}

/** Paper around letters. */
export const halo = svg` stroke="${inks.paper}" stroke-width="4" stroke-linejoin="round" paint-order="stroke"`

/** Words at a place; any text. */
export function text(x: number, y: number, words: string, look: TextLook = {}): Markup {
  const { size, weight, quiet, anchor, halo: isHaloed } = look
  const more = [
    size ? svg` font-size="${size}"` : '',
    weight ? svg` font-weight="${weight}"` : '',
    anchor ? svg` text-anchor="${anchor}"` : '',
    isHaloed ? halo : '',
  ]
  return svg`<text x="${px(x)}" y="${px(y)}" fill="${quiet ? inks.quiet : inks.ink}"${more}>${words}</text>`
}

/** A rectangle; `more` holds further attributes. */
export const rect = (x: number, y: number, width: number, height: number, fill: string, more: Content = '') =>
  svg`<rect x="${px(x)}" y="${px(y)}" width="${px(Math.max(0, width))}" height="${px(height)}" fill="${fill}"${more}/>`

/** A line along `d`, without anything inside it; `more` holds further attributes. */
export const line = (d: Content, colour: string, width: number, more: Content = '') =>
  svg`<path d="${d}" fill="none" stroke="${colour}" stroke-width="${width}"${more}/>`
