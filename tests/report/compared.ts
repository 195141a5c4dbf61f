/** A small result of a comparison, worked out by hand, and ways to look at the charts that are made of it. */
import { createCanvas, loadImage } from 'canvas'
import type { Chart as DrawnChart } from 'chart.js'
import { expect } from 'vitest'
import type { DifferenceFigure } from '../../src/answers/difference-figure.js'
import type { Figure } from '../../src/catalogue/figure.js'
import type { CompareResult, DesignResult } from '../../src/questions/compare/document.js'
import type { Chart } from '../../src/report/marks/chart.js'
import { renderPng } from '../../src/report/png.js'

export const hostile = '<b onload=x>=1+1 & "x"'

export const figure = (mean: number, unit: string, label = unit): Figure => ({
  mean,
  low: mean - 1,
  high: mean + 1,
  sd: 1,
  n: 4,
  unit,
  label,
})

/** A difference in SI; its own interval is half as wide as that of the family of 6. */
export function difference(mean: number, half: number, isShown: boolean, unit = 'cases/s'): DifferenceFigure {
  return {
    ...{ mean, low: mean - half, high: mean + half, n: 4, sd: half, unit, label: 'Throughput of good cases' },
    ...{ family: 6, alone: { low: mean - half / 2, high: mean + half / 2 } },
    ...{ p: isShown ? 0.001 : 0.5, isShown, varianceRatio: 4, matters: null },
  }
}

/** Cost of 1000 good cases by element, and their total. */
export function costs(elements: Record<string, number>): Record<string, Figure> {
  const unit = 'EUR per 1000 cases'
  const total = Object.values(elements).reduce((sum, each) => sum + each, 0)
  return {
    'cost-per-1000': figure(total, unit, 'Cost of 1000 good cases'),
    ...Object.fromEntries(
      Object.entries(elements).map(([key, value]) => [
        `cost-per-1000-${key}`,
        figure(value, unit, `of it ${key}`),
      ]),
    ),
  }
}

export function design(outputs: number[], measures: Record<string, Figure> = {}): DesignResult {
  return {
    ...{ note: '', set: {}, shifts: outputs.length, requirements: [], tapeLayout: null, worth: null },
    measures: { throughput: { ...figure(0.15, 'cases/s'), low: 0.14, high: 0.16 }, ...measures },
    ...{ costLeftOut: [], arrivals: {}, equipment: {}, crew: {}, outputs, held: [] },
  }
}

export const result: CompareResult = {
  format: 'tapeshift-result/1',
  command: 'compare',
  made: {
    version: '0.1.0',
    node: 'v20',
    seed: 'chart',
    scenario: { title: 'Chart works', sha256: 'ab'.repeat(32) },
    shifts: 4,
    confidence: 0.95,
    plain: false,
    repeat: 'tapeshift compare line.yaml',
  },
  display: 'metric',
  shift: { length: 7200, runOut: 0, breaks: [{ at: 1800, for: 1800 }], campaign: 1, start: 'empty' },
  target: 2 / 60,
  currency: 'EUR',
  best: null,
  compared: ['throughput'],
  variants: {
    base: design([170, 180, 180, 191], costs({ tape: 30, labour: 60, capital: 10 })),
    long: design([175, 185, 190, 199], costs({ tape: 30, labour: 50, downtime: 5, capital: 10 })),
    [hostile]: design([160, 170, 185, 190]),
  },
  differences: {
    long: {
      throughput: difference(0.02, 0.01, true),
      'cost-per-1000': difference(-5, 2, true, 'EUR per 1000 cases'),
    },
    [hostile]: { throughput: difference(-0.005, 0.01, false) },
  },
  pairs: [],
  assumed: [],
  notes: [],
  shifts: 'shifts.csv',
}

/** The base and one variant. */
export const onlyLong: CompareResult = {
  ...result,
  variants: { base: result.variants.base!, long: result.variants.long! },
  differences: { long: result.differences.long! },
}

export const withDifferences = (differences: Record<string, DifferenceFigure>): CompareResult => ({
  ...result,
  differences: Object.fromEntries(
    Object.entries(differences).map(([name, each]) => [name, { throughput: each }]),
  ),
})

export const pointsOf = (chart: Chart, label: string) =>
  chart.config.data.datasets.find((dataset) => dataset.label === label)?.data as { x: number; y: number }[]
export const valuesOf = (chart: Chart, label: string) =>
  chart.config.data.datasets.find((dataset) => dataset.label === label)!.data as number[]
export const subtitleOf = (chart: Chart) =>
  (chart.config.options!.plugins!.subtitle!.text as string[]).join(' ')
export const scaleOf = (chart: Chart, axis: 'x' | 'y') =>
  chart.config.options!.scales![axis] as { min: number; max: number }

/** Draws with a look at the drawn chart, once all is drawn. */
export function drawn(chart: Chart, look: (drawing: DrawnChart) => void): Promise<Buffer> {
  const plugins = [...(chart.config.plugins ?? []), { id: 'look', afterDraw: look }]
  return renderPng({ ...chart, config: { ...chart.config, plugins } })
}

export interface Written {
  text: string
  left: number
  right: number
  top: number
  bottom: number
}

/** Every text of a picture with the box that it takes, CSS px: all but those that are turned. */
export function textsOf(chart: Chart): Written[] {
  const texts: Written[] = []
  const listen = {
    id: 'listen',
    beforeDraw({ ctx }: DrawnChart) {
      texts.length = 0
      if (Object.hasOwn(ctx, 'fillText')) return
      const write = ctx.fillText.bind(ctx)
      ctx.fillText = (text, x, y, ...rest) => {
        const { a, b, d, e, f } = ctx.getTransform()
        const size = ctx.measureText(text)
        const shift = { left: 0, start: 0, center: 0.5, right: 1, end: 1 }[ctx.textAlign]
        const left = (a * x + e) / a - shift * size.width
        const middle = (d * y + f) / a
        const top = middle - size.actualBoundingBoxAscent
        if (b === 0)
          texts.push({
            text,
            left,
            right: left + size.width,
            top,
            bottom: middle + size.actualBoundingBoxDescent,
          })
        write(text, x, y, ...rest)
      }
    },
  }
  // drawn at once; the picture itself is not needed
  void renderPng({
    ...chart,
    config: { ...chart.config, plugins: [listen, ...(chart.config.plugins ?? [])] },
  })
  return texts
}

/** Texts that run out of the picture, or into one another. */
export function clashes(chart: Chart): string[] {
  const texts = textsOf(chart)
  expect(texts.length).toBeGreaterThan(8)
  const outside = texts.filter(
    ({ left, right, top, bottom }) => left < 0 || top < 0 || right > chart.width || bottom > chart.height,
  )
  const over = texts.flatMap((one, index) =>
    texts
      .slice(index + 1)
      .filter(
        (other) =>
          one.left < other.right &&
          other.left < one.right &&
          one.top < other.bottom &&
          other.top < one.bottom,
      )
      .map((other) => `${one.text} / ${other.text}`),
  )
  return [...outside.map(({ text }) => text), ...over]
}

/** Red, green and blue of a dot, given in CSS px. */
export async function colourAt(png: Buffer, x: number, y: number): Promise<number[]> {
  const image = await loadImage(png)
  const context = createCanvas(image.width, image.height).getContext('2d')
  context.drawImage(image, 0, 0)
  return [...context.getImageData(Math.round(x * 2), Math.round(y * 2), 1, 1).data.subarray(0, 3)]
}
