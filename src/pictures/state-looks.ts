/** How states look in drawings: a colour for each kind of stop, and a hatch, so that colour is not needed to tell them. */

import type { StopKind } from '../catalogue/states.js'
import { pageColours } from '../report/marks/inks.js'

/** Colour as in the chart of the states, its CSS variable, and the lines of its hatch in a square of 8. */
export const stopLooks: Record<StopKind, { variable: string; light: string; dark: string; hatch: string }> = {
  jam: { variable: '--jam', light: '#b34218', dark: '#ea9b5f', hatch: 'M-2 2L2 -2M0 8L8 0M6 10L10 6' },
  tape: { variable: '--tape', light: '#8f7e00', dark: '#f8de6b', hatch: 'M2 0V8M6 0V8' },
  size: { variable: '--size', light: '#005e43', dark: '#77ca99', hatch: 'M0 4H8' },
  breakdown: {
    variable: '--breakdown',
    light: '#631e76',
    dark: '#efa0eb',
    hatch: 'M0 8L8 0M0 0L8 8M-2 2L2 -2M6 10L10 6M-2 6L2 10M6 -2L10 2',
  },
  planned: { variable: '--planned', light: '#4632aa', dark: '#8877ee', hatch: 'M2 2h1M6 6h1M6 2h1M2 6h1' },
  blade: { variable: '--blade', light: '#2c150b', dark: '#e6d5cb', hatch: 'M1 2H5M3 6H7' },
}

export const stopInk = (kind: StopKind): string =>
  `var(${stopLooks[kind].variable}, ${stopLooks[kind].light})`

const variables = (which: 'light' | 'dark') =>
  Object.values(stopLooks)
    .map((look) => `${look.variable}: ${look[which]};`)
    .join(' ')

/** Style rules with the colours of stops for a page, light and dark. */
export const stopColourRules = `:root { ${variables('light')} --band: ${pageColours.band}; --pause: ${pageColours.pause}; }
@media screen and (prefers-color-scheme: dark) { :root { ${variables('dark')} --band: #2a313b; --pause: #3a434f; } }
`
