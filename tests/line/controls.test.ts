/** Controls: known-mean sums over what arrivals drew, by hand, against the trace of arrivals, and over many shifts. */
import { mean, sampleVariance } from 'simple-statistics'
import { describe, expect, it } from 'vitest'
import { Line } from '../../src/line/line.js'
import type { ShiftEvent } from '../../src/line/shift-event.js'
import { type Distribution, meanOf } from '../../src/scenario/law.js'
import { loadScenario } from '../../src/scenario/load.js'
import { type Around, build as buildLine, open } from './arriving.js'

/** Kinds of 400 and 600 mm, three to one: 450 mm on the mean. */
const mixed =
  '{a: {share: 3, length: 400 mm, width: 300 mm, height: 300 mm}, b: {share: 1, length: 600 mm, width: 300 mm, height: 300 mm}}'
const alike =
  '{a: {share: 0.1, length: 410 mm, width: 300 mm, height: 300 mm}, b: {share: 0.2, length: 410 mm, width: 300 mm, height: 350 mm}, c: {share: 0, length: 700 mm, width: 300 mm, height: 300 mm}}'

const build = (source: string, shift: string, more: Around = {}) =>
  buildLine(source, shift, { cases: alike, ...more })

function controls(line: Line, from = 0, shift = 1): number[] {
  line.countFrom = from
  return [...line.simulate('controls', shift).controls]
}

function trace(line: Line): ShiftEvent[] {
  const events: ShiftEvent[] = []
  line.observe((event) => events.push(event))
  line.simulate('controls', 1)
  line.observe(null)
  return events
}

/** Times of arrival, each once for a batch, s. */
const arrivalsIn = (events: readonly ShiftEvent[]) => [
  ...new Set(events.filter(({ event }) => event === 'arrives').map(({ time }) => time)),
]

describe('where nothing is random', () => {
  it.each([
    '{time-between: 7 s}',
    '{rate: 11 cases/min, batch: 2}',
    '{by-hour: {cases: [500 cases/h, 700 cases/h], spaced: evenly}}',
    '{orders: [{case: a, quantity: 9, time-between: 3 s}, {case: b, quantity: 9, time-between: 4 s}]}',
    '{time-between: {lognormal: {mean: 5.3 s, cv: 0}}}',
    '{time-between: {uniform: {low: 5.3 s, high: 5.3 s}}}',
    '{time-between: {normal: {mean: 5.3 s, sd: 0 s}}}',
    '{time-between: {normal: {mean: 5.3 s, sd: 0 s, at-least: 6.1 s}}}',
  ])('both are exactly 0: %s', (source) => {
    const line = build(source, '{length: 2 h, breaks: [{at: 20 min, for: 9 min}]}')
    expect(controls(line)).toEqual([0, 0])
    expect(controls(line, 3000)).toEqual([0, 0])
  })

  it('both are exactly 0: a log that names its cases, and times before an order', () => {
    const log = '{log: {file: l.csv, time: t, case: k, unit: s}}'
    const rows = [
      ['t', 'k'],
      ['3', 'a'],
      ['17.2', 'b'],
    ]
    expect(controls(build(log, '{length: 1 min}', { cases: mixed, rows }))).toEqual([0, 0])
    const orders =
      '{orders: [{case: b, quantity: 5, time-between: 3 s, before: {exponential: {mean: 60 s}}}]}'
    expect(controls(build(orders, '{length: 1 h}', { cases: mixed }))).toEqual([0, 0])
  })

  it('recorded intervals that are all the same say nothing', () => {
    const { scenario } = loadScenario(
      `cases: ${alike}\narrivals: {p: {time-between: {observed: {file: x.csv, column: c, unit: s}}}}\nline: ${open}\nshift: {length: 1 h}`,
      { readColumn: () => ['0.1', '0.1', '0.1'] },
    )
    // the sum of three tenths over three is not a tenth to the last digit
    expect((0.1 + 0.1 + 0.1) / 3).not.toBe(0.1)
    expect(controls(new Line(scenario))).toEqual([0, 0])
  })
})

describe('the sum over the intervals', () => {
  const source = (more: string) => `{time-between: {exponential: {mean: 12 s}}, batch: 2, ${more}}`

  it('is that of the trace: batches of two on the floor, counted from the start and from a cut', () => {
    // a longer shift draws the same and tells the interval that the end cuts off
    const times = arrivalsIn(trace(build(source('when-full: queue'), '{length: 2 h}')))
    const drawnAt = [0, ...times]
    const sum = (from: number, to: number) =>
      times.reduce(
        (total, time, index) =>
          drawnAt[index]! > from && drawnAt[index]! <= to
            ? total + 2 * (1 - (time - drawnAt[index]!) / 12)
            : total,
        0,
      )
    expect(times.length).toBeGreaterThan(400)
    const line = build(source('when-full: queue'), '{length: 1 h}')
    expect(controls(line)[0]).toBeCloseTo(sum(-1, 3600), 6)
    expect(controls(line, 1800)[0]).toBeCloseTo(sum(1800, 3600), 6)
    // at a cut the interval that runs was drawn before
    const instant = times[50]! + 0.001
    expect(controls(line, instant)[0]).toBeCloseTo(sum(times[50]!, 3600), 6)
  })

  it('is that of the trace where packers wait: an interval begins when both cases are taken; a break holds it', () => {
    const slow = { line: '{s: {type: station, time: 9 s}}' }
    const pause = { at: 1000, for: 400 }
    const shift = (hours: number) =>
      `{length: ${hours} h, breaks: [{at: ${pause.at} s, for: ${pause.for} s}]}`
    const events = trace(build(source('when-full: wait'), shift(2), slow))
    const taken = events.filter(({ event }) => event === 'taken').map(({ time }) => time)
    const times = arrivalsIn(events)
    let sum = 0
    for (const [index, time] of times.entries()) {
      const begun = index === 0 ? 0 : taken[2 * index - 1]!
      if (begun > 3600) break
      const paused = Math.max(0, Math.min(time, pause.at + pause.for) - Math.max(begun, pause.at))
      sum += 2 * (1 - (time - begun - paused) / 12)
    }
    expect(times.length).toBeGreaterThan(150)
    expect(controls(build(source('when-full: wait'), shift(1), slow))[0]).toBeCloseTo(sum, 6)
  })

  it('by hour takes what the rate has summed up to: 360 an hour, then 720', () => {
    const hours = '{by-hour: {cases: [360 cases/h, 720 cases/h], spaced: at-random}, when-full: queue}'
    const times = arrivalsIn(trace(build(hours, '{length: 3 h}')))
    const rated = (time: number) => Math.min(time, 3600) / 10 + Math.max(0, time - 3600) / 5
    let sum = 0
    for (const [index, time] of times.entries()) {
      const begun = index === 0 ? 0 : times[index - 1]!
      if (begun <= 7200) sum += 1 - (rated(time) - rated(begun))
    }
    expect(controls(build(hours, '{length: 2 h}'))[0]).toBeCloseTo(sum, 6)
  })

  it('of orders goes by the law of each, without the time before it', () => {
    const orders = `{orders: [
      {case: a, quantity: 3, time-between: {uniform: {low: 2 s, high: 6 s}}},
      {case: b, quantity: 2, time-between: {exponential: {mean: 10 s}}, before: 100 s}], when-full: queue}`
    const line = build(orders, '{length: 1 h}')
    const [a, b, c, d, e] = arrivalsIn(trace(line)) as [number, number, number, number, number]
    // c is the time of three intervals of mean 4; the other two have mean 10, the first of them 100 s later
    expect(a).toBeLessThan(b)
    expect(d).toBeLessThan(e)
    expect(controls(line)[0]).toBeCloseTo(3 - c / 4 + 2 - (e - c - 100) / 10, 9)
  })

  it('is that of all sources together', () => {
    const p = '{time-between: {exponential: {mean: 5 s}}, when-full: queue}'
    const q = '{time-between: {gamma: {mean: 8 s, cv: 0.5}}, when-full: queue}'
    const both = controls(build(`{p: ${p}, q: ${q}}`, '{length: 1 h}'))[0]!
    // each source draws from streams of its own, by its name
    const alone = (name: string, source: string) =>
      controls(build(`{p: {rate: 1 cases/min, when-full: queue}, ${name}: ${source}}`, '{length: 1 h}'))[0]!
    const first = controls(build(`{p: ${p}, q: {rate: 1 cases/min, when-full: queue}}`, '{length: 1 h}'))[0]!
    expect(both).toBeCloseTo(first + alone('q', q), 9)
  })
})

describe('the sum over the mix', () => {
  it('is that of the trace: 50 mm short of the mean, or 150 mm above it', () => {
    const line = build('{time-between: 5 s, when-full: queue}', '{length: 1 h}', { cases: mixed })
    const kinds = trace(line).filter(({ event }) => event === 'arrives')
    const sum = (from: number) =>
      kinds.reduce(
        (total, { time, kind }) => (time > from ? total + (kind === 'a' ? -0.05 : 0.15) : total),
        0,
      )
    expect(new Set(kinds.map(({ kind }) => kind)).size).toBe(2)
    expect(controls(line)).toEqual([0, expect.closeTo(sum(-1), 9)])
    expect(controls(line, 1802)).toEqual([0, expect.closeTo(sum(1802), 9)])
  })

  it('counts the cases of a log that names none', () => {
    const rows = [['t'], ['3'], ['5'], ['9']]
    const line = build('{log: {file: l.csv, time: t, unit: s}}', '{length: 1 min}', { cases: mixed, rows })
    const kinds = trace(line).filter(({ event }) => event === 'arrives')
    expect(kinds.length).toBe(3)
    expect(controls(line)[1]).toBeCloseTo(
      kinds.reduce((sum, { kind }) => sum + (kind === 'a' ? -0.05 : 0.15), 0),
      12,
    )
  })
})

describe('the mean of both over many shifts', () => {
  const shifts = 600
  const laws: [string, string, number][] = [
    // with the coefficient of variation of the law
    ['exponential', '{exponential: {mean: 5 s}}', 1],
    ['gamma', '{gamma: {mean: 5 s, cv: 1.6}}', 1.6],
    // cut at its mean: a half-normal, whose mean is sd sqrt(2 / pi) and whose variance sd^2 (1 - 2 / pi) (Johnson, Kotz &
    // Balakrishnan, Continuous Univariate Distributions 1, sec. 13.10.2, from memory) above the cut, which is 0 here
    ['normal, cut', '{normal: {mean: 0 s, sd: 6.2666 s, at-least: 0 s}}', Math.sqrt(Math.PI / 2 - 1)],
  ]
  const ways = ['wait', 'queue', 'turn-away']

  it.each(laws.flatMap((law) => ways.map((way) => [...law, way] as const)))(
    'is 0 within 4 standard errors, with a break, on a line that is too slow: %s %s %d %s',
    (_, law, cv, way) => {
      const line = build(
        `{time-between: ${law}, when-full: ${way}}`,
        '{length: 12 min, breaks: [{at: 4 min, for: 3 min}]}',
        { cases: mixed, line: '{s: {type: station, time: {exponential: {mean: 6 s}}}}' },
      )
      const rows: number[][] = []
      let draws = 0
      for (let shift = 1; shift <= shifts; shift++) {
        rows.push(controls(line, 0, shift))
        draws += line.counts.arrived
      }
      for (const index of [0, 1]) {
        const values = rows.map((row) => row[index]!)
        const variance = sampleVariance(values)
        expect(Math.abs(mean(values))).toBeLessThan(4 * Math.sqrt(variance / shifts))
        // no sum of nothing: by Wald's second identity its variance is the mean number of draws times that of one summand:
        // cv^2, or 3/4 x 50^2 + 1/4 x 150^2 mm^2. 25 % are more than 4 standard errors of a variance of 600 values of a
        // law that is nearly normal, which is sqrt(2 / 599)
        const ofOne = index === 0 ? cv * cv : 0.75 * 0.05 ** 2 + 0.25 * 0.15 ** 2
        expect(variance / ((draws / shifts) * ofOne)).toBeGreaterThan(0.75)
        expect(variance / ((draws / shifts) * ofOne)).toBeLessThan(1.25)
      }
    },
  )

  it('is 0 counted from a cut, in the middle of a shift that waits', () => {
    const line = build(
      '{time-between: {exponential: {mean: 5 s}}, when-full: wait}',
      '{length: 12 min, breaks: [{at: 4 min, for: 3 min}]}',
      { cases: mixed, line: '{s: {type: station, time: {exponential: {mean: 6 s}}}}' },
    )
    const values = Array.from({ length: shifts }, (_, index) => controls(line, 301, index + 1))
    for (const index of [0, 1]) {
      const row = values.map((value) => value[index]!)
      const variance = sampleVariance(row)
      expect(variance).toBeGreaterThan(0)
      expect(Math.abs(mean(row))).toBeLessThan(4 * Math.sqrt(variance / shifts))
    }
  })

  it('is not that of arrivals less rate x time: a line that holds the packers up would move it', () => {
    const line = build('{time-between: {exponential: {mean: 5 s}}, when-full: wait}', '{length: 12 min}', {
      line: '{s: {type: station, time: 6 s}}',
    })
    let excess = 0
    for (let shift = 1; shift <= 50; shift++) {
      line.simulate('controls', shift)
      excess += line.counts.arrived - 720 / 5
    }
    expect(excess / 50).toBeLessThan(-20)
  })
})

describe('the mean of a law', () => {
  const normal = (mean: number, sd: number, atLeast: number): Distribution => ({
    law: 'normal',
    mean,
    sd,
    atLeast,
  })

  it('of a normal law cut off below is that of what is left', () => {
    // half of a normal law: sqrt(2 / pi) sd above its mean
    expect(meanOf(normal(0, 1, 0))).toBeCloseTo(Math.sqrt(2 / Math.PI), 12)
    expect(meanOf(normal(10, 3, 10))).toBeCloseTo(10 + 3 * Math.sqrt(2 / Math.PI), 12)
    // one standard deviation above or below the mean: phi(1) = 0.2419707245 and 1 - Phi(1) = 0.1586552539 (Abramowitz & Stegun,
    // Handbook of Mathematical Functions, table 26.1)
    expect(meanOf(normal(0, 1, 1))).toBeCloseTo(0.2419707245 / 0.1586552539, 8)
    expect(meanOf(normal(5, 2, 3))).toBeCloseTo(5 + (2 * 0.2419707245) / (1 - 0.1586552539), 8)
  })

  it('of a normal law that is not cut, or does not vary, is its own', () => {
    expect(meanOf(normal(30, 1, 0))).toBe(30)
    expect(meanOf(normal(3, 0, 1))).toBe(3)
    expect(meanOf(normal(3, 0, 4))).toBe(4)
  })

  it('of a normal law cut five standard deviations up is just above the cut', () => {
    // 1 - Phi(5) = 2.866515719e-7 (Abramowitz & Stegun, Handbook of Mathematical Functions, table 26.2, from memory)
    const density = Math.exp(-12.5) / Math.sqrt(2 * Math.PI)
    expect(meanOf(normal(0, 1, 5))).toBeCloseTo(density / 2.866515719e-7, 6)
  })
})
