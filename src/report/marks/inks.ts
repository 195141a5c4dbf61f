/** The colours of all charts and drawings. */

/**
 * Colours that people with any kind of colour vision tell apart: M. Okabe & K. Ito, Color Universal Design (2008), fig.
 * 16, by their names there (values from memory).
 */
export const okabeIto = {
  black: '#000000',
  orange: '#e69f00',
  skyBlue: '#56b4e9',
  bluishGreen: '#009e73',
  yellow: '#f0e442',
  blue: '#0072b2',
  vermillion: '#d55e00',
  reddishPurple: '#cc79a7',
}

export const palette = {
  ink: '#1c2430',
  quietInk: '#55606e',
  grid: '#e4e8ec',
  frame: '#aab2bc',
  paper: '#ffffff',
  pause: '#eef0f3',
  /** What went well, or simply what is counted. */
  main: '#2c85db',
  band: 'rgba(44, 133, 219, 0.25)',
  /** What fell short or was lost. */
  short: '#ea9b5f',
  target: '#1c2430',
  /** Letters on a light fill, by day and by night. */
  onLight: '#1d2531',
  lost: '#b34218',
}

/** Colours that a page sets and dark mode turns, by the names of its variables; these stand in where a page sets none. */
export const pageColours = {
  ink: palette.ink,
  quiet: palette.quietInk,
  paper: palette.paper,
  accent: okabeIto.blue,
  band: '#f1f3f6',
  pause: '#e0e3e8',
}

const variable = (name: keyof typeof pageColours) => `var(--${name}, ${pageColours[name]})`

/** What drawings inside a page are drawn with. */
export const inks = {
  ink: variable('ink'),
  quiet: variable('quiet'),
  paper: variable('paper'),
  accent: variable('accent'),
  band: variable('band'),
  pause: variable('pause'),
}

/** The colour of letters on `colour`, #rrggbb: paper where that is dark, by its luminance (IEC 61966-2-1, from memory). */
export function lettersOn(colour: string): string {
  const [red, green, blue] = [1, 3, 5].map((at) => {
    const part = Number.parseInt(colour.slice(at, at + 2), 16) / 255
    return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4
  }) as [number, number, number]
  // white letters keep a contrast of 3.2 to 1
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue < 0.28 ? palette.paper : palette.onLight
}
