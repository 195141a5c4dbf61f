/** The colours of charts on a dark ground, by those on paper. */
import { okabeIto, palette } from './inks.js'

/**
 * What letters and lines are on paper they are by night with the contrast the other way round; fills keep their hue, and those that are too
 * dark to be told from the ground are lighter.
 */
const nightInks: Readonly<Record<string, string>> = {
  [palette.ink]: '#e8ebef',
  [palette.quietInk]: '#a5afba',
  [palette.grid]: '#2a323b',
  [palette.frame]: '#7f8a96',
  [palette.paper]: '#14181d',
  [palette.pause]: '#262e37',
  [palette.lost]: '#d9592b',
  [okabeIto.black]: '#f2f4f6',
  [okabeIto.blue]: '#2f8fd6',
  // states of machines: full hues that are dark on paper, and greys
  '#005e43': '#1f9a72',
  '#631e76': '#b866cf',
  '#2c150b': '#a5826e',
  '#4632aa': '#8b7bea',
  '#6d7783': '#7d8894',
  '#d3d7dc': '#b4bdc7',
}

/** A colour as it is drawn by night. */
export const atNight = (colour: string): string => nightInks[colour.toLowerCase()] ?? colour
