/** The chart of the warm-up: its words, what it shades, and where the cut stands in the picture. */
import { createCanvas, loadImage } from 'canvas'
import type { ChartConfiguration } from 'chart.js'
import { describe, expect, it } from 'vitest'
import type { RunResult } from '../../src/questions/run/document.js'
import { settlingChart } from '../../src/questions/run/settling-chart.js'
import { type Chart, pixelRatio } from '../../src/report/marks/chart.js'
import { palette } from '../../src/report/marks/inks.js'
import { renderPng } from '../../src/report/png.js'
import type { WarmUp } from '../../src/shifts/steady.js'

/** Ten hours in which the cases in the line rise to 20 in the first two and stay there. */
const end = 36_000
const warmUp: WarmUp = {
  countFrom: 7200,
  cut: 7200,
  isSettled: true,
  runs: 20,
  at: Array.from({ length: 1000 }, (_, index) => ((index + 1) / 1000) * end),
  cases: Array.from({ length: 1000 }, (_, index) => Math.min(20, index / 10)),
}

/** What the chart reads of a result. */
function resultOf(start: RunResult['shift']['start'], changes: Partial<WarmUp> = {}): RunResult {
  return {
    made: {
      version: '0.1.0',
      node: 'v20',
      seed: 'chart',
      scenario: { title: 'Chart works', sha256: 'ab'.repeat(32) },
      shifts: 4,
      confidence: 0.95,
      plain: false,
      repeat: 'tapeshift run line.yaml',
    },
    shift: { length: end, runOut: 0, breaks: [], campaign: 1, start },
    warmUp: { ...warmUp, ...changes },
  } as unknown as RunResult
}

const steady = settlingChart(resultOf('steady'))!
const campaign = settlingChart(resultOf('steady', { cut: 7200, countFrom: 14_400 }))!
const settled = settlingChart(resultOf('carry-over', { countFrom: 0 }))!
const unsettled = settlingChart(resultOf('carry-over', { countFrom: 0, cut: 18_000, isSettled: false }))!

const subtitleOf = (chart: Chart) => (chart.config.options!.plugins!.subtitle!.text as string[]).join(' ')

describe('the words of the chart of the warm-up', () => {
  it('of a line that is counted in its stride: from where on', () => {
    expect(steady.title).toBe('Warm-up: counted from 2 h on')
    expect(steady.alt).toBe(
      'Cases in the line from an empty start, mean of 20 runs of 10 h: MSER-5 cuts at 2 h.',
    )
    expect(subtitleOf(steady)).toBe(
      'Cases in the line and in front of it, mean of 20 runs from empty. Cut by MSER-5 at 2 h.',
    )
  })

  it('of one that loses whole shifts: both instants', () => {
    expect(campaign.title).toBe('Warm-up: counted from 4 h on')
    expect(campaign.alt).toContain('MSER-5 cuts at 2 h.')
    expect(subtitleOf(campaign)).toContain('Cut by MSER-5 at 2 h, counted from the next whole shift.')
  })

  it('of one that is counted from empty and settles: after what time', () => {
    expect(settled.title).toBe('From empty the line reaches a steady state after 2 h')
    expect(settled.alt).toContain('MSER-5 cuts at 2 h.')
    expect(subtitleOf(settled)).not.toContain('counted')
  })

  it('of one that does not settle: that no cut was found', () => {
    expect(unsettled.title).toBe('The line does not reach a steady state in this time')
    expect(unsettled.alt).toBe(
      'Cases in the line from an empty start, mean of 20 runs of 10 h: MSER-5 finds no cut in the first half.',
    )
  })

  it('stand over an axis in hours, or in minutes where the run is short; over none without a warm-up', () => {
    const { x, y } = steady.config.options!.scales as Record<
      string,
      { max: number; min: number; title: { text: string } }
    >
    expect([x!.min, x!.max, x!.title.text]).toEqual([0, 10, 'hours since the start'])
    // 15 % above the fullest
    expect([y!.min, y!.max]).toEqual([0, 23])
    const [{ data }] = steady.config.data.datasets as [{ data: { x: number; y: number }[] }]
    expect(data).toHaveLength(1000)
    expect(data[99]).toEqual({ x: 1, y: 9.9 })
    const at = warmUp.at.map((time) => time / 6)
    const short = settlingChart(resultOf('steady', { at, cut: 1200, countFrom: 1200 }))!
    expect(short.config.options!.scales!.x).toMatchObject({
      max: 100,
      title: { text: 'minutes since the start' },
    })
    expect(settlingChart({ ...resultOf('empty'), warmUp: null })).toBeNull()
  })
})

/** The picture, and what of it lies where: instants of the run as dots, and the rows between top and bottom of the axes. */
async function drawn(chart: Chart) {
  const area = { left: 0, right: 0, top: 0, bottom: 0 }
  // the chart says itself where it put its axes
  const config = {
    ...chart.config,
    plugins: [
      ...(chart.config.plugins ?? []),
      {
        id: 'area',
        afterDraw: ({ chartArea }: { chartArea: typeof area }) => {
          Object.assign(area, chartArea)
        },
      },
    ],
  } as ChartConfiguration
  const image = await loadImage(await renderPng({ ...chart, config }))
  const context = createCanvas(image.width, image.height).getContext('2d')
  context.drawImage(image, 0, 0)
  const dot = (x: number, y: number) => [...context.getImageData(x, y, 1, 1).data.subarray(0, 3)]
  const { left, right, top, bottom } = area
  const { max } = chart.config.options!.scales!.x as { max: number }
  return {
    dot,
    /** Column of dots at so many hours. */
    column: (hours: number) => Math.round((left + (hours / max) * (right - left)) * pixelRatio),
    /** Row of dots at a share of the height, from the top. */
    row: (share: number) => Math.round((top + share * (bottom - top)) * pixelRatio),
  }
}

type Drawn = Awaited<ReturnType<typeof drawn>>

/** The three parts of a colour such as `#1c2430`. */
const parts = (colour: string) => [1, 3, 5].map((at) => Number.parseInt(colour.slice(at, at + 2), 16))

/** Share of the dots in a column from 20 to 80 % of the height that are as dark as the mark of the cut; the darkest of two columns beside. */
function dark({ dot, column, row }: Drawn, hours: number): number {
  const rows = Array.from({ length: row(0.8) - row(0.2) }, (_, index) => row(0.2) + index)
  const [red] = parts(palette.target)
  const shares = [-2, -1, 0, 1].map(
    (beside) => rows.filter((y) => dot(column(hours) + beside, y)[0]! <= red! + 8).length / rows.length,
  )
  return Math.max(...shares)
}

/** Colour of the ground at so many hours, between the lines of the grid and above the curve. */
const ground = ({ dot, column, row }: Drawn, hours: number) => dot(column(hours), row(0.07))

describe('the picture of the warm-up', () => {
  it('has a dashed mark at the cut, six dots drawn to four left out, and none elsewhere', async () => {
    for (const [chart, cut] of [
      [steady, 2],
      [campaign, 2],
      [settled, 2],
      [unsettled, 5],
    ] as const) {
      const picture = await drawn(chart)
      expect(dark(picture, cut), chart.title).toBeGreaterThan(0.5)
      expect(dark(picture, cut), chart.title).toBeLessThan(0.7)
      for (const elsewhere of [1, 3, 4, 7, 9]) expect(dark(picture, elsewhere), chart.title).toBe(0)
    }
  })

  it('is shaded up to where counting begins, and only where something is not counted', async () => {
    const [shade, paper] = [parts(palette.pause), parts(palette.paper)]
    const grounds = async (chart: Chart) => {
      const picture = await drawn(chart)
      return [0.5, 1.8, 3.7, 4.3, 9].map((hours) => ground(picture, hours))
    }
    expect(await grounds(steady)).toEqual([shade, shade, paper, paper, paper])
    expect(await grounds(campaign)).toEqual([shade, shade, shade, paper, paper])
    expect(await grounds(settled)).toEqual([paper, paper, paper, paper, paper])
    expect(await grounds(unsettled)).toEqual([paper, paper, paper, paper, paper])
  })

  it('names the cut on its right, on its left where there is no room', async () => {
    const late = settlingChart(resultOf('carry-over', { cut: 34_920, countFrom: 0, isSettled: false }))!
    const beside = async (chart: Chart, hours: number) => {
      const { dot, column, row } = await drawn(chart)
      // letters stand 5 to 14 px below the top, 8 px beside the mark; capitals are some 40 px wide
      const isInk = (away: number) => {
        for (let y = row(0) + 10; y < row(0) + 28; y++) if (dot(column(hours) + away, y)[0]! < 80) return true
        return false
      }
      const count = (side: number) =>
        Array.from({ length: 80 }, (_, away) => isInk(side * (14 + away))).filter(Boolean).length
      return { right: count(1), left: count(-1) }
    }
    const usual = await beside(settled, 2)
    expect(usual.right).toBeGreaterThan(30)
    expect(usual.left).toBe(0)
    const turned = await beside(late, 9.7)
    expect(turned.left).toBeGreaterThan(30)
    expect(turned.right).toBe(0)
  })
})
