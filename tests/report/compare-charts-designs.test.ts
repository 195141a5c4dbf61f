import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { DifferenceFigure } from '../../src/answers/difference-figure.js'
import { costStackChart } from '../../src/questions/compare/cost-chart.js'
import { putOutAtLeast } from '../../src/questions/compare/line-names.js'
import { outputSharesChart } from '../../src/questions/compare/output-chart.js'
import {
  colourAt,
  costs,
  design,
  difference,
  drawn,
  hostile,
  pointsOf,
  result,
  scaleOf,
  subtitleOf,
  textsOf,
  valuesOf,
} from './compared.js'

describe('the chart of the cost', () => {
  const chart = costStackChart(result)!

  it('stacks the elements of each design, the base first, in one order', () => {
    expect(chart.config.data.labels).toEqual([['base'], ['long'], [hostile]])
    expect(chart.config.data.datasets.map(({ label }) => label)).toEqual([
      'tape',
      'labour',
      'downtime',
      'capital',
    ])
    expect(valuesOf(chart, 'labour')).toEqual([60, 50, 0])
    expect(valuesOf(chart, 'downtime')).toEqual([0, 5, 0])
  })

  it('says which costs least, what each costs, and that one is not priced', () => {
    expect(chart.title).toBe('Cost of 1000 good cases: least with long')
    expect(chart.alt).toBe(
      `Cost of 1000 good cases: base: 100.0 ± 1.0 EUR per 1000 cases (tape 30.00, labour 60.00, capital 10.00); long: 95.0 ± 1.0 EUR per 1000 cases (tape 30.00, labour 50.00, downtime 5.00, capital 10.00); ${hostile}: not priced.`,
    )
    const texts = textsOf(chart).map(({ text }) => text)
    expect(texts).toEqual(expect.arrayContaining(['95.0 ± 1.0', '-5.0 ± 1.0 to the base', 'not priced']))
    expect(texts).toEqual(expect.arrayContaining(['labour 60', 'labour 50']))
  })

  it('draws a bar as long as what it stands for, in the colour of the element', async () => {
    const at: [number, number][] = []
    const png = await drawn(chart, ({ scales }) => {
      // of the base: tape to 30, labour to 90, capital to 100
      for (const x of [28, 32, 88, 92, 102])
        at.push([scales.x!.getPixelForValue(x), scales.y!.getPixelForValue(0) + 14])
    })
    const found = await Promise.all(at.slice(0, 5).map(([x, y]) => colourAt(png, x, y)))
    const [orange, blue, yellow, paper] = [
      [230, 159, 0],
      [0, 114, 178],
      [240, 228, 66],
      [255, 255, 255],
    ]
    // as the palette is printed in Okabe & Ito (2008), in parts of red, green and blue (from memory)
    expect(found).toEqual([orange, blue, blue, yellow, paper])
  })

  it('says where the cheapest is not shown to be cheaper', () => {
    const doubted = (figure: DifferenceFigure) =>
      costStackChart({ ...result, differences: { long: { 'cost-per-1000': figure } } })!.title
    const doubt = 'Cost of 1000 good cases: least with long, but not shown to differ from the base'
    expect(doubted(difference(-5, 8, false))).toBe(doubt)
    // judged by its own interval, from -9 to -1, then from -11 to 1
    const alone = { isShown: null, family: null }
    expect(doubted({ ...difference(-5, 8, false), ...alone })).toBe(
      'Cost of 1000 good cases: least with long',
    )
    expect(doubted({ ...difference(-5, 12, false), ...alone })).toBe(doubt)
  })

  it('names what is left out, of all designs or of some, and what is too small to be seen', () => {
    const left = (costLeftOut: string[], tiny = 10) => ({
      ...result.variants.base!,
      costLeftOut,
      measures: costs({ tape: 90, capital: tiny }),
    })
    const variants = { base: left(['energy', 'labour'], 0.1), long: left(['labour'], 0.2) }
    expect(subtitleOf(costStackChart({ ...result, variants })!)).toContain(
      'Without a price in some designs: energy. Without a price: labour. Too small to see: capital.',
    )
  })

  it('is not there where nothing is priced', () => {
    const { base, [hostile]: unpriced } = result.variants
    expect(costStackChart({ ...result, variants: { base: unpriced!, long: unpriced! } })).toBeNull()
    expect(costStackChart({ ...result, variants: { base: unpriced!, long: base! } })!.title).toBe(
      'Cost of 1000 good cases: only long has prices',
    )
  })

  it('keeps elements that often touch apart in a grey print', () => {
    const all = [
      'tape',
      'labour',
      'downtime',
      'energy',
      'maintenance',
      'capital',
      'failures',
      'failure-repair',
    ]
    const full = {
      ...result,
      variants: { base: design([1], costs(Object.fromEntries(all.map((key) => [key, 10])))) },
    }
    const lightness = Object.fromEntries(
      costStackChart(full)!.config.data.datasets.map(({ label, backgroundColor }) => [
        label!,
        lightnessOf(backgroundColor as string),
      ]),
    )
    expect(new Set(Object.values(lightness)).size).toBe(8)
    const neighbours = [...all.slice(1).map((key, index) => [all[index]!, key] as const)]
    // where stops are not priced, or all that is small is too thin to part the two
    neighbours.push(
      ['labour', 'energy'],
      ['labour', 'capital'],
      ['labour', 'failures'],
      ['downtime', 'capital'],
    )
    for (const [one, other] of neighbours)
      expect(Math.abs(lightness[one]! - lightness[other]!)).toBeGreaterThan(15)
  })
})

/** CIE 1976 lightness of an sRGB colour: IEC 61966-2-1 for its luminance, ISO/CIE 11664-4 for L* (from memory). */
function lightnessOf(hex: string): number {
  const [red, green, blue] = [1, 3, 5].map((at) => {
    const part = Number.parseInt(hex.slice(at, at + 2), 16) / 255
    return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4
  }) as [number, number, number]
  const luminance = 0.2126 * red + 0.7152 * green + 0.0722 * blue
  return luminance > (6 / 29) ** 3 ? 116 * Math.cbrt(luminance) - 16 : luminance * (29 / 3) ** 3
}

describe('the chart of what shifts put out at least', () => {
  it('falls by the shifts that lie at each output', () => {
    const chart = outputSharesChart(result)!
    // four shifts of 170, 180, 180 and 191: three of four reach 180, one 191
    expect(pointsOf(chart, 'base').slice(1)).toEqual([
      { x: 170, y: 100 },
      { x: 180, y: 75 },
      { x: 191, y: 25 },
      { x: 191, y: 0 },
    ])
    expect(pointsOf(chart, 'base')[0]).toEqual({ x: scaleOf(chart, 'x').min, y: 100 })
  })

  it('finds the most cases that a share of the shifts reaches', () => {
    // the definition itself: enough shifts reach it, and no higher output of any shift is reached by enough
    fc.assert(
      fc.property(
        fc.array(fc.nat(50), { minLength: 1, maxLength: 60 }),
        fc.integer({ min: 1, max: 100 }),
        (outputs, share) => {
          const found = putOutAtLeast(
            [...outputs].sort((a, b) => a - b),
            share / 100,
          )
          const enough = (least: number) =>
            outputs.filter((output) => output >= least).length * 100 >= share * outputs.length
          expect(enough(found)).toBe(true)
          expect(outputs.filter((output) => output > found && enough(output))).toEqual([])
        },
      ),
      { seed: 1 },
    )
  })

  it('promises by 95 % of the shifts from 20 on, else by all', () => {
    expect(outputSharesChart(result)!.title).toBe(
      'Every shift reaches 175 cases or more with long, 170 with the base',
    )
    const twenty = (from: number) => design(Array.from({ length: 20 }, (_, index) => from + index))
    const more = { ...result, target: null, variants: { base: twenty(100), long: twenty(90) } }
    // of 20 shifts one may be below
    expect(outputSharesChart(more)!.title).toBe(
      '95 % of the shifts reach 101 cases or more with the base, no variant more',
    )
    expect(outputSharesChart(more)!.alt).toBe(
      'Good cases a shift by share of the shifts: base: 95 % reach 101, half reach 110; long: 95 % reach 91, half reach 100.',
    )
  })

  it('marks the target, target rate times working time, and counts what reaches it', () => {
    const chart = outputSharesChart(result)!
    // 2 a minute over 90 min
    expect(pointsOf(chart, 'target')).toEqual([
      { x: 180, y: 0 },
      { x: 180, y: 100 },
    ])
    expect(chart.alt).toContain('base: 100 % reach 170, half reach 180, 75 % reach the target;')
    expect(pointsOf(outputSharesChart({ ...result, target: null })!, 'target')).toBeUndefined()
  })

  it('draws the base and the first seven variants, each with a stroke of its own', () => {
    const many = Object.fromEntries(
      Array.from({ length: 11 }, (_, index) => [`v${index}`, design([index, 9])]),
    )
    const chart = outputSharesChart({ ...result, target: null, variants: { base: design([5, 9]), ...many } })!
    expect(chart.config.data.datasets.map(({ label }) => label)).toEqual([
      'base',
      ...Array.from({ length: 7 }, (_, index) => `v${index}`),
    ])
    expect(subtitleOf(chart)).toContain('Drawn: the base and the first 7 of 11 variants.')
    const strokes = chart.config.data.datasets as unknown as { borderColor: string; borderDash: number[] }[]
    expect(new Set(strokes.map(({ borderColor }) => borderColor)).size).toBe(8)
    expect(new Set(strokes.map(({ borderDash }) => borderDash.join())).size).toBe(8)
  })

  it('is not there without a shift', () => {
    expect(outputSharesChart({ ...result, variants: { base: design([]) } })).toBeNull()
  })
})
