/** Colours of charts on a dark page: what is drawn is seen, and letters are read. */
import { describe, expect, it } from 'vitest'
import { themes } from '../../src/page/style.js'
import { lettersOn, okabeIto, palette } from '../../src/report/marks/inks.js'
import { atNight } from '../../src/report/marks/night-inks.js'

/** Relative luminance and contrast of WCAG 2.2 (from memory). */
function luminance(colour: string): number {
  const [red, green, blue] = [1, 3, 5].map((at) => {
    const part = Number.parseInt(colour.slice(at, at + 2), 16) / 255
    return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4
  }) as [number, number, number]
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue
}
function contrast(one: string, other: string): number {
  const [low, high] = [luminance(one), luminance(other)].sort((a, b) => a - b) as [number, number]
  return (high + 0.05) / (low + 0.05)
}

const paper = atNight(palette.paper)
/** Of the states of machines, as their chart has them. */
const states = [
  '#b34218',
  '#ea9b5f',
  '#f8de6b',
  '#b6a100',
  '#77ca99',
  '#005e43',
  '#efa0eb',
  '#631e76',
  '#2c150b',
  '#4632aa',
  '#6d7783',
  '#d3d7dc',
]
const fills = [...Object.values(okabeIto), ...states, palette.main, palette.short, palette.lost]

describe('a chart by night', () => {
  it('is black and white on paper', () => {
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 6)
  })

  it.each(fills)('shows %s with a contrast of 3 to 1', (fill) => {
    expect(contrast(atNight(fill), paper)).toBeGreaterThanOrEqual(3)
  })

  it.each(fills)('has letters on %s with a contrast of 4.5 to 1', (fill) => {
    expect(contrast(atNight(lettersOn(fill)), atNight(fill))).toBeGreaterThanOrEqual(4.5)
  })

  it('has letters on its ground with a contrast of 4.5 to 1', () => {
    for (const ink of [palette.ink, palette.quietInk, palette.target])
      expect(contrast(atNight(ink), paper)).toBeGreaterThanOrEqual(4.5)
  })
})

describe.each(Object.entries(themes))('the %s page', (_, theme) => {
  const colours = Object.fromEntries(
    [...theme.matchAll(/--([a-z]+): (#[0-9a-f]{6})/g)].map(([, name, colour]) => [name!, colour!]),
  )

  it('has letters with a contrast of 4.5 to 1 on all its grounds', () => {
    for (const ground of ['paper', 'card', 'warned'])
      for (const ink of ['ink', 'quiet', 'accent', 'warning', 'good', 'error', 'open'])
        expect(contrast(colours[ink]!, colours[ground]!), `${ink} on ${ground}`).toBeGreaterThanOrEqual(4.5)
  })
})
