/** Charts of a sizing: where each design stands, with which sign, and what is said of it. */
import { describe, expect, it } from 'vitest'
import { chartsOf } from '../../src/questions/charts-of-document.js'
import { sizeCostChart } from '../../src/questions/size/costs-chart.js'
import type { SizeResult } from '../../src/questions/size/document.js'
import { sizeMapChart } from '../../src/questions/size/map-chart.js'
import { clashes, colourAt, drawn, hostile, pointsOf, scaleOf, subtitleOf, textsOf } from './compared.js'
import { afresh, refusedResult, sizedResult as result, sized } from './sized.js'

const datasetOf = (chart: NonNullable<ReturnType<typeof sizeCostChart>>, label: string) =>
  chart.config.data.datasets.find((dataset) => dataset.label === label) as unknown as Record<string, unknown>

describe('the chart of what designs cost and keep', () => {
  const chart = sizeCostChart(result)!

  it('sets each simulated design at its cost and its share, and none of like cost aside', () => {
    expect(pointsOf(chart, 'holds')).toEqual([{ x: expect.any(Number), y: 94 }])
    expect(pointsOf(chart, 'fails').map(({ y }) => y)).toEqual([40, 60, 70])
    expect(pointsOf(chart, 'undecided').map(({ y }) => y)).toEqual([90])
    const [one, other, last] = pointsOf(chart, 'fails').map(({ x }) => x)
    expect([one, other, last]).toEqual([100, 100, 102])
    expect(pointsOf(chart, 'the pick')).toEqual(pointsOf(chart, 'holds'))
  })

  it('has the interval of the pick on fresh shifts, and none of designs that a test stopped', () => {
    const intervals = pointsOf(chart, 'interval')
    expect(intervals).toHaveLength(3)
    expect(intervals.slice(0, 2).map(({ y }) => Math.round(y * 1e6) / 1e6)).toEqual([90, 96])
    // beside its share in the search, which leans
    const { x } = pointsOf(chart, 'the pick')[0]!
    expect(pointsOf(chart, 'fresh shifts')).toEqual([{ x, y: 93 }])
    expect(intervals[0]!.x).toBe(x)
  })

  it('has that of each, with a gap after it, where all were simulated to the end', () => {
    const designs = result.designs.map((each) => ({
      ...each,
      promises: each.promises.map(({ mean }) => ({
        ...{ mean, low: mean && mean - 0.05, high: mean && mean + 0.05 },
      })),
    }))
    const full = sizeCostChart({ ...result, designs, isFull: true })!
    const intervals = pointsOf(full, 'interval')
    expect(intervals).toHaveLength((5 + 1) * 3)
    expect(intervals.slice(0, 2).map(({ y }) => Math.round(y * 1e6) / 1e6)).toEqual([35, 45])
    expect(intervals[2]!.x).toBeNaN()
    expect(subtitleOf(full)).toContain(
      '△ undecided, with the 95 % interval; ◆ the pick in 200 fresh shifts, with their 95 % interval. Dashed',
    )
  })

  it('rings and names the nearest where none holds', () => {
    const none = sizeCostChart(refusedResult)!
    expect(pointsOf(none, 'the nearest')).toEqual([{ x: 102, y: 70 }])
    expect(pointsOf(none, 'fresh shifts')).toEqual([{ x: 102, y: 72 }])
    expect(textsOf(none).map(({ text }) => text)).toContain('the nearest: 8 m, 10 m/min')
    expect(subtitleOf(none)).toContain(
      '○ fails; ◆ the nearest in 200 fresh shifts, with their 95 % interval.',
    )
    expect(none.alt).toContain('8 m, 10 m/min: 70 %, fails, the nearest.')
  })

  it('fills what holds, leaves hollow what fails, and gives what is not told another shape', () => {
    expect(datasetOf(chart, 'holds')).toMatchObject({ pointStyle: 'circle', pointBackgroundColor: '#2c85db' })
    expect(datasetOf(chart, 'fails')).toMatchObject({ pointStyle: 'circle', pointBackgroundColor: '#ffffff' })
    expect(datasetOf(chart, 'undecided')).toMatchObject({ pointStyle: 'triangle' })
    expect(subtitleOf(chart)).toContain(
      '● holds, ○ fails, △ undecided; ◆ the pick in 200 fresh shifts, with their 95 % interval. Dashed',
    )
    expect(subtitleOf(chart)).toContain('Not drawn: 2 rejected without simulation.')
  })

  it('names the pick and what is asked for', () => {
    const texts = textsOf(chart).map(({ text }) => text)
    expect(texts).toContain('the pick: 6 m, 30 m/min')
    expect(texts).toContain('promise: at least 90 %')
    expect(chart.title).toBe('The cheapest that holds 9 cases/min in 90 % of shifts: 101.00 EUR a shift')
    expect(chart.alt).toBe(
      '9 cases/min in 90 % of shifts, designs in order of cost: 4 m, 20 m/min: 40 %, fails; 4 m, 30 m/min: 60 %, fails; 6 m, 20 m/min: 90 %, undecided; 6 m, 30 m/min: 94 %, the pick; 8 m, 10 m/min: 70 %, fails. 2 more designs were rejected without simulation. In 200 fresh shifts the pick has 93 %.',
    )
  })

  it('shades what may go either way, from 88 to 92 %, and nothing of it where every design was simulated to the end', async () => {
    const shadeOf = async (of: SizeResult) => {
      const at: [number, number][] = []
      const picture = sizeCostChart(of)!
      const png = await drawn(picture, ({ scales, chartArea }) => {
        // away from every design and from the grid
        for (const y of [86.7, 88.7, 91.3, 93.3])
          at.push([chartArea.right - 4, scales.y!.getPixelForValue(y)])
      })
      return Promise.all(at.slice(0, 4).map(([x, y]) => colourAt(png, x, y)))
    }
    const [paper, shade] = [
      [255, 255, 255],
      [238, 240, 243],
    ]
    expect(await shadeOf(result)).toEqual([paper, shade, shade, paper])
    expect(await shadeOf({ ...result, isFull: true })).toEqual([paper, paper, paper, paper])
    expect(subtitleOf(sizeCostChart({ ...result, isFull: true })!)).not.toContain('shaded')
  })

  it('keeps the axis between 0 and 100 %, with room for half a sign', () => {
    const designs = [sized(1, { a: 1 }, 1, 0, 'refused'), sized(2, { a: 2 }, 2, 1, 'accepted')]
    const picked = afresh(1, 'kept')
    picked.promises[0]!.high = 1
    const { min, max } = scaleOf(sizeCostChart({ ...result, designs, pick: 1, picked })!, 'y')
    expect([min, max]).toEqual([-3, 103])
  })

  it('stands by the place in the order where nothing is priced', () => {
    const designs = result.designs.map((each) => ({ ...each, cost: null }))
    const free = sizeCostChart({ ...result, designs })!
    expect(pointsOf(free, 'fails').map(({ x }) => x)).toEqual([2, 3, 7])
    expect(free.title).toBe('The first design that holds 9 cases/min in 90 % of shifts is number 6 of 9')
    expect(subtitleOf(free)).not.toContain('like cost')
  })

  it('of a mean: in its unit, at most where that is asked', () => {
    const promises = [
      {
        ...{ promise: 'time-in-system <= 5 min', measure: 'time-in-system', label: 'Time in the line' },
        ...{ unit: 's', value: 300, isLeast: false, near: 20 },
      },
    ]
    const designs = result.designs.map((each) => ({
      ...each,
      promises: each.promises.map(({ mean }) => ({
        mean: mean === null ? null : 400 * mean,
        low: mean === null ? null : 400 * mean - 10,
        high: mean === null ? null : 400 * mean + 10,
      })),
    }))
    const picked = {
      ...afresh(0.9, 'kept'),
      promises: [{ mean: 376, low: 370, high: 382, shown: 'missed' as const }],
    }
    const mean = sizeCostChart({ ...result, promises, designs, picked })!
    expect(pointsOf(mean, 'fails').map(({ y }) => y)).toEqual([160, 240, 280])
    expect(textsOf(mean).map(({ text }) => text)).toContain('promise: at most 300 s')
    expect(scaleOf(mean, 'y').max).toBeGreaterThan(370)
    expect(mean.alt).toContain('4 m, 20 m/min: 160 s, fails')
  })

  it('says where none holds, and that verdicts are of all promises', () => {
    const designs = result.designs.slice(0, 3)
    const none = sizeCostChart({
      ...result,
      ...{ designs, pick: null, promises: [result.promises[0]!, result.promises[0]!] },
    })!
    expect(none.title).toContain('None of 9 designs is shown to hold')
    expect(pointsOf(none, 'the pick')).toBeUndefined()
    expect(subtitleOf(none)).toContain('Verdicts are for all 2 promises.')
  })

  it('is not there where nothing was simulated', () => {
    expect(sizeCostChart({ ...result, designs: [result.designs[0]!], pick: null })).toBeNull()
  })
})

describe('the map of two choices', () => {
  const map = sizeMapChart(result)!

  it('sets every combination in its place with its sign', () => {
    expect(pointsOf(map, 'the pick')).toEqual([{ x: 1, y: 2 }])
    expect(pointsOf(map, 'holds')).toEqual([{ x: 1, y: 2 }])
    expect(pointsOf(map, 'fails')).toEqual([
      { x: 0, y: 1 },
      { x: 0, y: 2 },
      { x: 2, y: 0 },
    ])
    expect(pointsOf(map, 'undecided')).toEqual([{ x: 1, y: 1 }])
    expect(pointsOf(map, 'rejected without simulation')).toEqual([
      { x: 0, y: 0 },
      { x: 1, y: 0 },
    ])
    expect(pointsOf(map, 'not tried')).toEqual([
      { x: 2, y: 1 },
      { x: 2, y: 2 },
    ])
  })

  it('names values and verdicts, and writes the shares beside the signs', () => {
    const texts = textsOf(map).map(({ text }) => text)
    expect(texts).toEqual(expect.arrayContaining(['4 m', '8 m', '10 m/min', '30 m/min', '40', '94']))
    expect(map.title).toBe('Which combinations of line.infeed.length and line.sealer.belt-speed hold')
    expect(subtitleOf(map)).toBe(
      '● holds, ○ fails, △ undecided, × rejected without simulation, · not tried, or no scenario; ring: the pick. Beside the signs: % of the shifts.',
    )
    expect(map.alt).toBe(
      'line.infeed.length against line.sealer.belt-speed: the pick: 6 m and 30 m/min; fails: 4 m and 20 m/min, 4 m and 30 m/min, 8 m and 10 m/min; undecided: 6 m and 20 m/min; rejected without simulation: 4 m and 10 m/min, 6 m and 10 m/min; the others were not tried.',
    )
  })

  const third = (values: unknown[], designs: SizeResult['designs']): SizeResult => ({
    ...result,
    choices: [...result.choices, { path: 'crew.operator.people', values }],
    designs,
  })

  it('stands at the values of the pick, and leaves out designs with others', () => {
    const one = result.designs.map((each) => ({ ...each, set: { ...each.set, 'crew.operator.people': 1 } }))
    const two = sized(8, { ...result.designs[1]!.set, 'crew.operator.people': 2 }, 103, 0.99, 'accepted')
    const some = sizeMapChart(third([1, 2], [...one, two]))!
    expect(subtitleOf(some)).toContain('At crew.operator.people = 1.')
    expect(pointsOf(some, 'fails')).toHaveLength(3)
    expect(pointsOf(some, 'holds')).toHaveLength(1)
    // without a pick at those of the nearest; without that there is nothing at which the third could stand
    const none = { ...third([1, 2], one), ...{ pick: null, picked: null } }
    const nearest = sizeMapChart({ ...none, nearest: { ...refusedResult.nearest!, design: 6 } })!
    expect(subtitleOf(nearest)).toMatch(/^At crew\.operator\.people = 1\..*ring: the nearest\./)
    expect(pointsOf(nearest, 'the nearest')).toEqual([{ x: 2, y: 0 }])
    expect(nearest.alt).toContain('the nearest: 8 m and 10 m/min; ')
    expect(sizeMapChart(none)).toBeNull()
  })

  it('of three choices of numbers takes the two of which most is told', () => {
    const one = result.designs.map((each) => ({ ...each, set: { ...each.set, 'crew.operator.people': 2 } }))
    expect(sizeMapChart(third([1, 2, 3], one))!.title).toBe(map.title)
  })

  it('needs two choices of three numbers or more', () => {
    const choices = (values: unknown[]) => [result.choices[0]!, { path: 'line.sealer.belt-speed', values }]
    expect(sizeMapChart({ ...result, choices: choices(['10 m/min', '20 m/min']) })).toBeNull()
    expect(sizeMapChart({ ...result, choices: choices(['base', 'wide', 'long']) })).toBeNull()
    expect(sizeMapChart({ ...result, choices: [result.choices[0]!] })).toBeNull()
    // also without a pick where these are all choices
    expect(sizeMapChart({ ...result, pick: null })).not.toBeNull()
  })
})

describe('both', () => {
  it('come in one order, or not at all', () => {
    expect(chartsOf(result).map(({ name }) => name)).toEqual(['designs', 'map'])
    const ruledOut = { ...result, pick: null, choices: [result.choices[0]!], designs: [result.designs[0]!] }
    expect(chartsOf(ruledOut)).toEqual([])
  })

  it('write nothing over one another and nothing out of the picture, and keep hostile values as text', () => {
    const long = 'W'.repeat(60)
    const odd = (text: string): SizeResult => ({
      ...result,
      promises: [{ ...result.promises[0]!, promise: text }],
      choices: result.choices.map(({ path, values }, index) => ({
        path: index === 0 ? path : `line.${text.slice(0, 40)}.length`,
        values,
      })),
      designs: result.designs.map((each) => ({
        ...each,
        set: { ...each.set, title: text, [`line.${text.slice(0, 40)}.length`]: '10 m' },
      })),
    })
    const many = Array.from({ length: 60 }, (_, index) =>
      sized(
        index + 1,
        { a: `${index} m` },
        100 + (index % 7) / 100 + Math.floor(index / 7),
        index / 60,
        'refused',
      ),
    )
    const crowded: SizeResult = {
      ...result,
      choices: [{ path: 'a', values: many.map(({ set }) => set.a) }],
      designs: [...many, sized(61, { a: '70 m' }, 109, 0.95, 'accepted')],
      pick: 60,
    }
    const first = {
      ...result,
      pick: 1,
      designs: result.designs.map((each, index) =>
        index === 1 ? { ...each, verdict: 'accepted' as const } : each,
      ),
    }
    for (const each of [result, odd(long), odd(hostile), crowded, first, refusedResult])
      for (const chart of chartsOf(each)) expect(clashes(chart)).toEqual([])
    const texts = textsOf(sizeCostChart(odd(hostile))!).map(({ text }) => text)
    expect(texts.join(' ')).toContain(hostile)
    expect(texts).toContain('tapeshift 0.1.0 · 2\u2009000 shifts · seed "chart" · scenario abababababab')
  })
})
