import { describe, expect, it } from 'vitest'
import { printDifference } from '../../src/answers/difference.js'
import type { DifferenceFigure } from '../../src/answers/difference-figure.js'
import { chartsOf } from '../../src/questions/charts-of-document.js'
import { differenceCharts } from '../../src/questions/compare/differences-chart.js'
import type { CompareResult } from '../../src/questions/compare/document.js'
import { rowLabel, shortened } from '../../src/report/marks/breaking.js'
import type { Chart } from '../../src/report/marks/chart.js'
import {
  clashes,
  colourAt,
  difference,
  drawn,
  figure,
  hostile,
  onlyLong,
  pointsOf,
  result,
  scaleOf,
  subtitleOf,
  textsOf,
  withDifferences,
} from './compared.js'

describe('the charts of the differences', () => {
  const [chart] = differenceCharts(result) as [Chart]

  it('puts each difference with both intervals on a row of its own, in the units of the display', () => {
    // cases a second are shown a minute: times 60
    expect(pointsOf(chart, 'difference').map(({ x }) => Number(x.toFixed(9)))).toEqual([1.2, -0.3])
    expect(pointsOf(chart, 'difference').map(({ y }) => y)).toEqual([0, 1])
    const ends = (label: string) =>
      pointsOf(chart, label)
        .filter(({ x }) => !Number.isNaN(x))
        .map(({ x, y }) => [Number(x.toFixed(9)), y])
    expect(ends('interval')).toEqual([
      [0.6, 0],
      [1.8, 0],
      [-0.9, 1],
      [0.3, 1],
    ])
    expect(ends('interval alone')).toEqual([
      [0.9, 0],
      [1.5, 0],
      [-0.6, 1],
      [0, 1],
    ])
    expect(scaleOf(chart, 'x').min).toBeLessThan(-0.9)
    expect(scaleOf(chart, 'x').max).toBeGreaterThan(1.8)
  })

  it('says in title, subtitle and alt what is shown', () => {
    expect(chart.name).toBe('difference-throughput')
    expect(chart.title).toBe('Throughput of good cases: higher with long')
    expect(subtitleOf(chart)).toBe(
      '● shown to differ from the base, ○ not shown. Thin line: 95 % interval for all 6 comparisons together; thick: for each alone.',
    )
    expect(chart.alt).toBe(
      `Throughput of good cases, difference to the base, cases/min, at 95 % confidence: long: +1.2 ± 0.6, shown; ${hostile}: -0.3 ± 0.6, not shown.`,
    )
  })

  it('names what is lower, and counts what is more than two', () => {
    const five = Object.fromEntries(['a', 'b', 'c', 'd', 'e'].map((name) => [name, difference(1, 0.1, true)]))
    const title = (differences: Record<string, DifferenceFigure>) =>
      differenceCharts(withDifferences(differences))[0]!.title
    expect(title(five)).toBe('Throughput of good cases: higher with all 5 variants')
    expect(title({ ...five, d: difference(-1, 0.1, true), e: difference(-1, 0.1, true) })).toBe(
      'Throughput of good cases: higher with 3 of 5 variants, lower with d and e',
    )
  })

  it('says so where none is shown', () => {
    const none = difference(0.001, 0.01, false)
    expect(differenceCharts(withDifferences({ long: none, short: none }))[0]!.title).toBe(
      'Throughput of good cases: no variant is shown to differ from the base',
    )
    expect(differenceCharts(withDifferences({ long: none }))[0]!.title).toBe(
      'Throughput of good cases: long is not shown to differ from the base',
    )
  })

  it('draws 0 as a line, a shown difference filled and another one hollow', async () => {
    const at: Record<string, [number, number]> = {}
    const png = await drawn(chart, ({ scales }) => {
      const place = (x: number, y: number): [number, number] => [
        scales.x!.getPixelForValue(x),
        scales.y!.getPixelForValue(y),
      ]
      Object.assign(at, { shown: place(1.2, 0), hollow: place(-0.3, 1), zero: place(0, 0.5) })
    })
    const [red, , blue] = await colourAt(png, ...at.shown!)
    expect(blue! - red!).toBeGreaterThan(100)
    expect(await colourAt(png, ...at.hollow!)).toEqual([255, 255, 255])
    const zero = await colourAt(png, ...at.zero!)
    expect(Math.max(...zero)).toBeLessThan(100)
  })

  it('gives shares in percentage points, lengths in feet where the scenario asks for that', () => {
    const share = { ...difference(0.05, 0.02, true, 'share'), low: 0.01 }
    const points = differenceCharts(withDifferences({ long: share }))[0]!
    expect(points.alt).toContain('percentage points, at 95 % confidence: long: +5 (+1 to +7), shown')
    const length = withDifferences({ long: difference(30.48, 3.048, true, 'm') })
    const [feet] = differenceCharts({ ...length, display: 'us' })
    expect(pointsOf(feet!, 'difference')[0]!.x).toBeCloseTo(100, 9)
    expect(feet!.alt).toContain('ft, at 95 % confidence: long: +100 ± 10, shown')
  })

  it('leaves a row without a dot where a variant has no such measure or no interval', () => {
    const [part] = differenceCharts({
      ...result,
      differences: {
        long: { throughput: difference(0.02, 0.01, true) },
        [hostile]: {},
        endless: { throughput: { ...difference(0.02, 0.01, false), low: null, high: null } },
      },
    })
    expect(pointsOf(part!, 'difference')).toHaveLength(1)
    expect(part!.alt).toContain(`${hostile}: not compared; endless: no interval.`)
    expect(differenceCharts({ ...result, differences: { long: {} } })).toEqual([])
  })

  it('points an arrow at a difference that would shrink the others to dots', () => {
    const near = { a: difference(0.02, 0.01, true), b: difference(0.03, 0.01, true) }
    const [far] = differenceCharts(withDifferences({ ...near, c: difference(-9, 0.01, true) }))
    expect(pointsOf(far!, 'difference').map(({ y }) => y)).toEqual([0, 1])
    expect(pointsOf(far!, 'beyond the axis')).toEqual([{ x: scaleOf(far!, 'x').min, y: 2 }])
    expect(subtitleOf(far!)).toContain('Triangle: lies far beyond the axis.')
    expect(far!.alt).toContain('c: -540.0 ± 0.6, shown')
    const [two] = differenceCharts(withDifferences({ a: near.a, c: difference(-9, 0.01, true) }))
    expect(pointsOf(two!, 'beyond the axis')).toBeUndefined()
  })

  it('draws what never differs on 0', () => {
    const [same] = differenceCharts(withDifferences({ long: difference(0, 0, false) }))
    expect(pointsOf(same!, 'difference')).toEqual([{ x: 0, y: 0 }])
    expect([scaleOf(same!, 'x').min, scaleOf(same!, 'x').max]).toEqual([-1, 1])
    expect(same!.alt).toContain('long: 0, not shown')
  })

  it('makes a file of every measure, whatever its name holds', () => {
    const names = ['equipment.sealer.jams', 'equipment.a/b.jams', 'equipment.a-b.jams']
    const each = Object.fromEntries(names.map((name) => [name, difference(1, 0.1, true)]))
    const charts = differenceCharts({ ...result, compared: names, differences: { long: each } })
    expect(charts.map(({ name }) => name)).toEqual([
      'difference-equipment-sealer-jams',
      'difference-equipment-a-b-jams',
      'difference-equipment-a-b-jams-2',
    ])
  })
})

describe('all charts of a comparison', () => {
  it('come in one order, also of one variant only', () => {
    const names = ['difference-throughput', 'cost-stack', 'output-shares']
    expect(chartsOf(result).map(({ name }) => name)).toEqual(names)
    expect(chartsOf(onlyLong).map(({ name }) => name)).toEqual(names)
  })

  it('keep hostile names as text, and say with which seed and scenario they were made', () => {
    for (const chart of chartsOf(result)) {
      const texts = textsOf(chart).map(({ text }) => text)
      expect(texts).toContain(hostile)
      expect(texts).toContain('tapeshift 0.1.0 · 4 shifts · seed "chart" · scenario abababababab')
    }
  })

  it('write nothing over one another, and nothing out of the picture', () => {
    const wide = 'W'.repeat(40)
    const long = (shift: number) => result.variants.long!.outputs.map((output) => output + shift)
    const names = [
      wide,
      `${wide.slice(1)}i`,
      'sealer with wide heads and a long infeed',
      hostile,
      'e',
      'f',
      'g',
    ]
    const crowded: CompareResult = {
      ...result,
      variants: {
        base: result.variants.base!,
        ...Object.fromEntries(
          names.map((name, index) => [name, { ...result.variants.long!, outputs: long(index % 4) }]),
        ),
      },
      differences: Object.fromEntries(names.map((name) => [name, result.differences.long!])),
    }
    const two = Object.fromEntries(Object.entries(crowded.differences).slice(0, 2))
    const lower = { throughput: difference(-0.02, 0.01, true) }
    const four = { ...two, [names[2]!]: lower, [`${wide.slice(2)}ii`]: lower }
    const cases = [
      result,
      onlyLong,
      crowded,
      { ...crowded, target: 9 / 60 },
      { ...crowded, differences: four },
    ]
    for (const each of cases) for (const chart of chartsOf(each)) expect(clashes(chart)).toEqual([])
  })

  it('cut a long name in its middle, and wrap it beside a row', () => {
    expect(shortened('three-inch-long', 9)).toBe('thre…long')
    expect(shortened('short', 9)).toBe('short')
    expect(rowLabel('sealer with wide heads and a long infeed')).toEqual([
      'sealer with wide heads',
      'and a long infeed',
    ])
    expect(rowLabel('x'.repeat(99))).toEqual(['x'.repeat(26), `…${'x'.repeat(25)}`])
    // a W is about twice as wide as most letters: 13 where 26 of those have room
    expect(rowLabel('W'.repeat(40))).toEqual([`${'W'.repeat(13)}…`, 'W'.repeat(13)])
  })
})

describe('a difference in figures', () => {
  it('has its sign, at both ends of an uneven interval too, and none of nothing', () => {
    const print = (mean: number, low: number, high: number) =>
      printDifference({ ...figure(mean, 'cases'), low, high }, 'metric')
    expect(print(12, 9, 15)).toEqual({ value: '+12', interval: '± 3', unit: 'cases' })
    expect(print(-12, -15, -9)).toEqual({ value: '-12', interval: '± 3', unit: 'cases' })
    // the longer side is a quarter longer: plus-minus; twice as long: both ends
    expect(print(1234, 1231, 1240)).toMatchObject({ interval: '(+1\u2009231 to +1\u2009240)' })
    expect(print(1235, 1231, 1240)).toMatchObject({ value: '+1\u2009235', interval: '± 5' })
    expect(print(0.01, -4, 4.02)).toMatchObject({ value: '0' })
    expect(print(0, 0, 0)).toEqual({ value: '0', interval: '', unit: 'cases' })
    expect(printDifference(undefined, 'metric').value).toBe('–')
  })
})
