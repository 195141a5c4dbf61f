import { createCanvas, GlobalFonts, loadImage } from 'canvas'
import type { ChartDataset } from 'chart.js'
import { build } from 'rolldown'
import { describe, expect, it } from 'vitest'
import type { EquipmentResult, HeldOverShift } from '../../src/answers/line-result.js'
import { shiftTarget } from '../../src/answers/shift-target.js'
import type { Figure } from '../../src/catalogue/figure.js'
import { stateKeys } from '../../src/catalogue/states.js'
import { chartsOf } from '../../src/questions/charts-of-document.js'
import type { RunResult } from '../../src/questions/run/document.js'
import { heldChart } from '../../src/questions/run/held-chart.js'
import { histogram, outputChart } from '../../src/questions/run/output-chart.js'
import { statesChart } from '../../src/questions/run/states-chart.js'
import { tapeChart } from '../../src/questions/run/tape-chart.js'
import { counted, percent } from '../../src/report/format.js'
import { wrapped } from '../../src/report/marks/breaking.js'
import type { Chart } from '../../src/report/marks/chart.js'
import { lettersOn, palette } from '../../src/report/marks/inks.js'
import { renderPng } from '../../src/report/png.js'

const hostile = '<b onload=x>=1+1 & "x"'

function figure(mean: number, unit: string, half = mean * 0.01): Figure {
  return { mean, low: mean - half, high: mean + half, sd: half, n: 4, unit, label: unit }
}

/** All states of a machine: those given, the others never. */
function shares(given: Record<string, number>): Record<string, Figure> {
  return Object.fromEntries(stateKeys.map((key) => [key, figure(given[key] ?? 0, 'share')]))
}

function held(place: string, mean: number[], band = 2): HeldOverShift {
  return {
    place,
    at: mean.map((_, index) => 1800 + index * 3600),
    mean,
    p10: mean.map((value) => Math.max(0, value - band)),
    p90: mean.map((value) => value + band),
  }
}

const sealer: EquipmentResult = {
  type: 'sealer',
  measures: {},
  states: shares({ working: 0.6, 'jam-being-cleared': 0.1, 'tape-being-changed': 0.0004, waiting: 0.2996 }),
  heads: {
    top: { tape: figure(305, 'm'), loss: figure(61, 'm') },
    bottom: { tape: figure(200, 'm'), loss: figure(0, 'm', 0) },
  },
}

/** Two hours with breaks of 10 and 20 min: 90 min of working time, so 2 cases/min are 180 cases. */
const result: RunResult = {
  format: 'tapeshift-result/1',
  command: 'run',
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
  display: 'metric',
  shift: {
    length: 7200,
    runOut: 0,
    breaks: [
      { at: 1800, for: 600 },
      { at: 4000, for: 1200 },
    ],
    campaign: 1,
    start: 'empty',
  },
  target: 2 / 60,
  precision: null,
  requirements: [],
  warmUp: null,
  measures: {
    output: figure(180, 'cases'),
    'target-held': { ...figure(0.5, 'share'), low: 0.15, high: 0.85 },
  },
  costLeftOut: [],
  byHand: null,
  arrivals: {},
  equipment: {
    infeed: {
      type: 'conveyor',
      measures: {},
      states: shares({ working: 0.25, blocked: 0.5, waiting: 0.25 }),
    },
    [hostile]: sealer,
  },
  crew: {},
  outputs: [170, 179, 180, 191],
  held: [held('infeed', [4, 12]), held(hostile, [3, 5])],
  assumed: [],
  notes: [],
  shifts: 'shifts.csv',
}

const labelsOf = (chart: Chart) => (chart.config.data.labels as string[][]).map((lines) => lines.join(' '))
const valuesOf = (dataset: ChartDataset) => dataset.data as number[]
const pointsOf = (dataset: ChartDataset | undefined) => dataset!.data as { x: number; y: number }[]
const scaleOf = (chart: Chart, name: string) => chart.config.options!.scales![name] as Record<string, never>
const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0)

/** Width and height that the header of a PNG states. */
function pngSize(png: Buffer): [number, number] {
  expect([...png.subarray(0, 8)]).toEqual([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a])
  expect(png.toString('latin1', 12, 16)).toBe('IHDR')
  return [png.readUInt32BE(16), png.readUInt32BE(20)]
}

describe('the chart of the states', () => {
  const chart = statesChart(result)!

  it('stacks the shares of each machine to 100 %', () => {
    for (const machine of [0, 1])
      expect(sum(chart.config.data.datasets.map((dataset) => valuesOf(dataset)[machine]!))).toBeCloseTo(
        100,
        9,
      )
    const { x, y } = chart.config.options!.scales as Record<string, { stacked: boolean; max: number }>
    expect([x!.stacked, y!.stacked, x!.max]).toEqual([true, true, 100])
  })

  it('draws the states that occur, under their labels, work first and waiting last', () => {
    expect(chart.config.data.datasets.map(({ label }) => label)).toEqual([
      'working',
      'jam: being cleared',
      'tape: being changed',
      'blocked',
      'starved',
    ])
  })

  it('has no entry in the legend for a state of less than 0.05 % of the shift', () => {
    const { filter } = chart.config.options!.plugins!.legend!.labels!
    const listed = chart.config.data.datasets
      .filter((_, datasetIndex) => filter!({ datasetIndex, text: '' }, chart.config.data))
      .map(({ label }) => label)
    expect(listed).toEqual(['working', 'jam: being cleared', 'blocked', 'starved'])
  })

  it('gives every state a colour of its own', () => {
    const each = shares(Object.fromEntries(stateKeys.map((key) => [key, 1 / stateKeys.length])))
    const full = statesChart({
      ...result,
      equipment: { all: { type: 'sealer', measures: {}, states: each } },
    })!
    expect(full.config.data.datasets).toHaveLength(stateKeys.length)
    expect(new Set(full.config.data.datasets.map((dataset) => dataset.backgroundColor)).size).toBe(
      stateKeys.length,
    )
  })

  it('passes hostile names through as plain text', () => {
    expect(labelsOf(chart)).toEqual(['infeed', hostile])
    expect(chart.alt).toContain(`${hostile}: working 60 %, starved 30 %, jam: being cleared 10 %.`)
  })

  it('grows with the number of machines, and is not there without any', () => {
    const machines = Array.from({ length: 12 }, (_, index) => [`machine ${index}`, sealer] as const)
    const many = statesChart({ ...result, equipment: Object.fromEntries(machines) })!
    expect(many.height - chart.height).toBe(10 * 42)
    expect(statesChart({ ...result, equipment: {} })).toBeNull()
  })
})

describe('the chart of the output', () => {
  it('counts every shift once, in bins of whole cases without a gap', () => {
    const outputs = Array.from({ length: 200 }, (_, index) => 6000 + ((index * 37) % 211))
    const bins = histogram(outputs, 6103)
    expect(sum(bins.map(({ shifts }) => shifts))).toBe(200)
    expect(bins.every(({ from, to }) => Number.isInteger(from) && Number.isInteger(to) && to >= from)).toBe(
      true,
    )
    expect(bins.slice(1).every(({ from }, index) => from === bins[index]!.to + 1)).toBe(true)
    expect(bins.some(({ from }) => from === 6103)).toBe(true)
    expect(bins[0]!.from).toBeLessThanOrEqual(6000)
    expect(bins.at(-1)!.to).toBeGreaterThanOrEqual(6210)
  })

  it('takes its bins from the spread of the shifts', () => {
    // quartiles 2 and 6, 8 shifts: 2 x 4 / cube root of 8 is 4, rounded up to 5
    expect(histogram([0, 2, 2, 2, 6, 6, 6, 9])).toEqual([
      { from: 0, to: 4, shifts: 4 },
      { from: 5, to: 9, shifts: 4 },
    ])
  })

  it('draws the target where target rate times working time lies', () => {
    const chart = outputChart(result)!
    const [bars, line] = chart.config.data.datasets
    expect(pointsOf(line).map(({ x }) => x)).toEqual([180, 180])
    expect(pointsOf(line)[1]!.y).toBe(scaleOf(chart, 'y').max)
    expect(sum(pointsOf(bars).map(({ y }) => y))).toBe(4)
    expect(scaleOf(chart, 'x').min).toBeLessThan(170)
    expect(scaleOf(chart, 'x').max).toBeGreaterThan(191)
  })

  it('says how many shifts reach the target, one at the very edge among them', () => {
    const chart = outputChart(result)!
    expect(chart.title).toBe('Good cases a shift: 2 of 4 shifts reach the target')
    expect(chart.alt).toBe(
      'Good cases of 4 shifts: from 170 to 191, on average 180; 2 of 4 shifts reach the target of 180.',
    )
    expect(chart.config.options!.plugins!.subtitle!.text).toEqual([
      'Target: 180 good cases a shift. Share of shifts that reach it: 50 % ± 35, 95 % confidence.',
    ])
    const none = outputChart({ ...result, outputs: [170, 179] })!
    expect(none.title).toBe('Good cases a shift: none of 2 shifts reaches the target')
    expect(outputChart({ ...result, outputs: [180, 181] })!.title).toContain('all 2 shifts reach')
  })

  it('colours a bin by whether its shifts reach the target', () => {
    const bars = outputChart(result)!.config.data.datasets[0]!
    const colours = bars.backgroundColor as string[]
    const sides = pointsOf(bars).map(({ x }, index) => [x > 179.5, colours[index]] as const)
    expect(new Set(sides.filter(([isRight]) => isRight).map(([, colour]) => colour)).size).toBe(1)
    expect(new Set(sides.map(([, colour]) => colour)).size).toBe(2)
  })

  it('finds the least output that reaches a target that is not whole', () => {
    expect(shiftTarget({ ...result, target: 2.001 / 60 })!.least).toBe(181)
    expect(shiftTarget({ ...result, target: null })).toBeNull()
  })

  it('stands one value only, with the target near, far and absent', async () => {
    const one = { ...result, outputs: [150, 150, 150] }
    for (const target of [2 / 60, 200, null]) {
      const chart = outputChart({ ...one, target })!
      const counts = pointsOf(chart.config.data.datasets[0]).map(({ y }) => y)
      expect(counts).toEqual([0, 3, 0])
      expect(chart.config.data.datasets).toHaveLength(target === null ? 1 : 2)
      expect((await renderPng(chart)).length).toBeGreaterThan(5000)
    }
    expect(outputChart({ ...one, outputs: [] })).toBeNull()
  })
})

describe('the chart of the cases held', () => {
  it('draws a band and a mean for each place, over hours', () => {
    const long = { ...result, shift: { ...result.shift, length: 14_400 } }
    const chart = heldChart(long)!
    const [low, high, mean] = chart.config.data.datasets
    expect(pointsOf(low)).toEqual([
      { x: 0.5, y: 2 },
      { x: 1.5, y: 10 },
    ])
    expect(pointsOf(high).map(({ y }) => y)).toEqual([6, 14])
    expect(pointsOf(mean).map(({ y }) => y)).toEqual([4, 12])
    expect(chart.config.data.datasets).toHaveLength(6)
    expect(scaleOf(chart, 'x').max).toBe(4)
    expect(chart.alt).toBe(
      `Cases held over the 4 h of the shift, mean of the shifts: infeed: 8 on average, 12 at its fullest; ${hostile}: 4 on average, 5 at its fullest.`,
    )
  })

  it('goes over minutes where the shift is short', () => {
    const chart = heldChart({
      ...result,
      shift: { length: 3600, runOut: 600, breaks: [], campaign: 1, start: 'empty' },
    })!
    expect(scaleOf(chart, 'x').max).toBe(70)
    expect(pointsOf(chart.config.data.datasets[0])[0]!.x).toBe(30)
  })

  it('keeps the six fullest of many places, in their order', () => {
    const places = Array.from({ length: 9 }, (_, index) => held(`place ${index}`, [(index * 5) % 9, 10]))
    const labels = heldChart({ ...result, held: places })!.config.data.datasets.map(({ label }) => label)
    // first sample of places 0 to 8: 0 5 1 6 2 7 3 8 4
    const kept = [1, 3, 5, 6, 7, 8].map((index) => `place ${index}, mean`)
    expect(labels.filter((label) => label!.endsWith('mean'))).toEqual(kept)
  })

  it('leaves out a place of one case at most beside fuller ones, not when it is alone', () => {
    const station = held('station', [0.5, 0.8], 0.2)
    expect(heldChart({ ...result, held: [station, ...result.held] })!.alt).not.toContain('station')
    expect(heldChart({ ...result, held: [station] })!.alt).toContain('station: 0.7 on average')
    expect(heldChart({ ...result, held: [] })).toBeNull()
  })
})

describe('the chart of the tape', () => {
  it('stacks what is laid and what is lost, head by head', () => {
    const chart = tapeChart(result)!
    const [laid, lost] = chart.config.data.datasets
    expect(labelsOf(chart)).toEqual([`${hostile}, top`, `${hostile}, bottom`])
    expect(valuesOf(laid!)).toEqual([244, 200])
    expect(valuesOf(lost!)).toEqual([61, 0])
    expect(chart.alt).toContain(`${hostile}, top: 305 ± 3 m, of which 61.0 ± 0.6 m lost`)
  })

  it('is in feet where the scenario asks for that', () => {
    const chart = tapeChart({ ...result, display: 'us' })!
    const [laid, lost] = chart.config.data.datasets
    expect(valuesOf(laid!)[0]).toBeCloseTo(244 / 0.3048, 9)
    expect(valuesOf(lost!)[0]).toBeCloseTo(61 / 0.3048, 9)
    expect(chart.config.options!.scales!.x).toMatchObject({ title: { text: 'tape a shift, ft' } })
  })

  it('is not there without a sealer', () => {
    const { infeed } = result.equipment
    expect(tapeChart({ ...result, equipment: { infeed: infeed! } })).toBeNull()
    expect(chartsOf({ ...result, equipment: { infeed: infeed! } }).map(({ name }) => name)).toEqual([
      'output',
      'states',
      'held',
    ])
  })
})

describe('what the charts share', () => {
  it('breaks long text without losing any', () => {
    expect(wrapped('infeed', 10)).toEqual(['infeed'])
    expect(wrapped('sealer of the hall', 10)).toEqual(['sealer of', 'the hall'])
    expect(wrapped('sealer_in_the_hall', 10)).toEqual(['sealer_in_', 'the_hall'])
    expect(wrapped('W'.repeat(25), 10)).toEqual(['W'.repeat(10), 'W'.repeat(10), 'WWWWW'])
  })

  it('writes numbers as the rest of the report does', () => {
    expect(counted(6300, 'shift')).toBe('6\u2009300 shifts')
    expect(counted(1, 'shift')).toBe('1 shift')
    expect([0, 0.004, 0.043, 1].map(percent)).toEqual(['0 %', '0.4 %', '4 %', '100 %'])
  })

  it('writes on a colour with letters that are told from it', () => {
    // by the contrast of WCAG 2.2, (L1 + 0.05) / (L2 + 0.05): white on black is 21, on #767676 4.54, on #2c85db 3.8
    expect(['#000000', '#767676', '#2c85db'].map(lettersOn)).toEqual(Array(3).fill(palette.paper))
    expect(['#ffffff', '#f0e442', '#cc79a7'].map(lettersOn)).toEqual(Array(3).fill(palette.onLight))
  })

  it('runs in a browser: nothing of Node is asked for', async () => {
    const { output } = await build({
      input: 'src/questions/charts-of-document.ts',
      platform: 'browser',
      output: { format: 'esm' },
      write: false,
      logLevel: 'silent',
    })
    const [bundle] = output
    expect(bundle.imports).toEqual([])
    const inputs = bundle.moduleIds
    expect(inputs.some((file) => file.endsWith('src/questions/run/held-chart.ts'))).toBe(true)
    expect(inputs.filter((file) => /chart\.js|canvas/.test(file))).toEqual([])
  })
})

/** Red, green, blue of each dot in a row of a picture. */
async function rowOf(png: Buffer, y: number): Promise<number[][]> {
  const image = await loadImage(png)
  const context = createCanvas(image.width, image.height).getContext('2d')
  context.drawImage(image, 0, 0)
  const { data } = context.getImageData(0, y, image.width, 1)
  return Array.from({ length: image.width }, (_, x) => [...data.subarray(x * 4, x * 4 + 3)])
}

describe('a picture', () => {
  it('has two dots per CSS pixel each way', async () => {
    for (const chart of chartsOf(result))
      expect(pngSize(await renderPng(chart))).toEqual([chart.width * 2, chart.height * 2])
  })

  it('is the same each time it is drawn', async () => {
    const chart = outputChart(result)!
    expect((await renderPng(chart)).equals(await renderPng(chart))).toBe(true)
  })

  it('is white where nothing is drawn, and has letters from the files of the project', async () => {
    const png = await renderPng(outputChart(result)!)
    const edge = await rowOf(png, 2)
    expect(edge.every((dot) => dot.every((part) => part === 255))).toBe(true)
    expect(GlobalFonts.has('Tapeshift Sans')).toBe(true)
    // through the middle of the title
    expect((await rowOf(png, 42)).filter(([red]) => red! < 80).length).toBeGreaterThan(100)
  })

  it('shows the bars of a histogram side by side, each as wide as its bin', async () => {
    for (const outputs of [
      [0, 1, 0, 2, 0, 1, 1, 3],
      [100, 101, 100, 102, 100, 101, 101, 103],
    ]) {
      const chart = outputChart({ ...result, outputs, target: null })!
      const row = await rowOf(await renderPng(chart), 600)
      const bar = (dot: number[]) => dot[2]! - dot[0]! > 100
      const [first, last] = [row.findIndex(bar), row.findLastIndex(bar)]
      const inside = row.slice(first, last + 1)
      expect(inside.length).toBeGreaterThan(600)
      expect(inside.filter(bar).length / inside.length).toBeGreaterThan(0.98)
    }
  })
})
