/** Cases that are made to measure: each draws its own size, and tape, belts, conveyors and settings go by that. */
import { describe, expect, it } from 'vitest'
import { Line } from '../../src/line/line.js'
import type { ShiftEvent } from '../../src/line/shift-event.js'
import { loadScenario } from '../../src/scenario/load.js'
import { trial } from './gate.js'

const cut = '{length: {uniform: {low: 300 mm, high: 700 mm}}, width: 300 mm, height: 250 mm}'

function told(text: string, shift = 1): ShiftEvent[] {
  const events: ShiftEvent[] = []
  const line = new Line(loadScenario(text).scenario)
  line.observe((event) => events.push(event))
  line.simulate('sizes', shift)
  return events
}

const of = (events: readonly ShiftEvent[], name: ShiftEvent['event']) =>
  events.filter(({ event }) => event === name)

/** Sizes by number of case, from 1. */
const sizesIn = (events: readonly ShiftEvent[]) =>
  of(events, 'arrives').map(({ length, width, height }) => ({
    length: length!,
    width: width!,
    height: height!,
  }))

/** A sealer that always has a case waiting. */
const saturated = (cases: string, sealer = '') => `cases: ${cases}
arrivals: {p: {time-between: 100 ms}}
line:
  sealer: {type: sealer, belt-speed: 20 m/min, minimum-gap: 400 mm, heads: {top: {}}${sealer}}
tape: {leg: 60 mm, stretch: 2 %, roll: 2000 m}
crew: {o: {walk: 0 s, does: [jams, roll-change, size-setting, blade, breakdowns]}}
shift: {length: 20 min}`

describe('a sealer, by hand', () => {
  it('lays on each case its own length and two legs, stretched', () => {
    const events = told(saturated(`{cut: ${cut}}`))
    const sizes = sizesIn(events)
    const strips = of(events, 'strip-laid')
    expect(strips.length).toBeGreaterThan(400)
    for (const { case: item, tape } of strips)
      expect(tape).toBeCloseTo((sizes[item! - 1]!.length + 2 * 0.06) / 1.02, 12)
  })

  it('takes the next case when one has moved on by its own length and the gap', () => {
    const events = told(saturated(`{cut: ${cut}}`))
    const sizes = sizesIn(events)
    const belts = of(events, 'on-belts')
    expect(new Set(sizes.map(({ length }) => length)).size).toBe(sizes.length)
    for (const [index, { time, case: item }] of belts.slice(1).entries()) {
      const { length } = sizes[item! - 2]!
      expect(time - belts[index]!.time).toBeCloseTo((length + 0.4) / (20 / 60), 9)
    }
  })

  it('sets itself for each height and width, by how far they differ', () => {
    const tall = cut.replace(
      'height: 250 mm',
      'height: {triangular: {low: 200 mm, mode: 250 mm, high: 400 mm}}',
    )
    const text = saturated(
      `{cut: ${tall}, stock: {length: 400 mm, width: 350 mm, height: 300 mm}}`,
      ', size-setting: {by: machine, time: 1 s, per-mm: {height: 20 ms, width: 10 ms}}',
    )
    const events = told(text)
    const arrivals = of(events, 'arrives')
    const sizes = arrivals.map(({ kind, length, width, height }) =>
      kind === 'cut'
        ? { kind, length: length!, width: width!, height: height! }
        : { kind, length: 0.4, width: 0.35, height: 0.3 },
    )
    const belts = of(events, 'on-belts')
    let settings = 0
    for (const [index, { time, case: item }] of belts.slice(1).entries()) {
      const [before, now] = [sizes[item! - 2]!, sizes[item! - 1]!]
      const isOther = now.kind === 'cut' || before.kind !== now.kind
      if (isOther) settings++
      const added = 20 * Math.abs(now.height - before.height) + 10 * Math.abs(now.width - before.width)
      const setting = isOther ? 1 + added : 0
      expect(time - belts[index]!.time).toBeCloseTo((before.length + 0.4) / (20 / 60) + setting, 9)
    }
    expect(settings).toBeGreaterThan(100)
    expect(settings).toBeLessThan(belts.length - 50)
  })
})

describe('a conveyor, by hand', () => {
  const arrivals = Array.from({ length: 40 }, (_, index): [number, number] => [index * 20, 0])

  it.each([
    ['closing up, by length and spacing', 'spacing: 50 mm', (length: number) => length + 0.05, 5],
    ['in zones, by whole ones', 'zone: 400 mm', (length: number) => (length > 0.4 ? 0.8 : 0.4), 4.8],
  ])('%s, holds what fits of those that came', (_, keys, pitch, room) => {
    const { equipment, floor } = trial({
      cases: `{cut: ${cut}}`,
      line: `{belt: {type: conveyor, carries: accumulating, length: 5 m, speed: 30 m/min, ${keys}}}`,
      arrivals,
      turns: [0],
    })
    // nobody has left, so that numbers in the pool are in order of arrival
    const lengths = [...floor.cases.length]
    const spacing = room === 5 ? 0.05 : 0
    let held = 0
    let taken = 0
    while (taken + pitch(lengths[held]!) <= room + spacing + 1e-9) taken += pitch(lengths[held++]!)
    expect(held).toBeGreaterThan(5)
    expect(equipment[0]!.mechanism.held()).toBe(held)
  })

  it('with a belt, is clear when a case has moved on by its own length and the spacing', () => {
    const { log, floor } = trial({
      cases: `{cut: ${cut}}`,
      line: '{belt: {type: conveyor, carries: belt, length: 40 m, speed: 30 m/min, spacing: 50 mm}}',
      arrivals: Array.from({ length: 20 }, () => [0, 0]),
      until: 60,
    })
    const times = log.filter(([, what]) => what === 'case 0 in').map(([time]) => time)
    expect(times).toHaveLength(20)
    let at = 0
    for (const [index, time] of times.entries()) {
      expect(time).toBeCloseTo(at, 5)
      at += (floor.cases.length[index]! + 0.05) / 0.5
    }
  })
})

describe('what is drawn', () => {
  const sized = (cases: string) => sizesIn(told(saturated(cases)))
  const lengths = (cases: string) => sized(cases).map(({ length }) => length)

  it('is the same whatever other side varies, and whatever other kind there is that nothing comes of', () => {
    const wide = cut.replace('width: 300 mm', 'width: {uniform: {low: 200 mm, high: 400 mm}}')
    const alone = lengths(`{cut: ${cut}}`)
    expect(lengths(`{cut: ${wide}}`)).toEqual(alone)
    const other = wide.replace('300 mm, high: 700 mm', '200 mm, high: 300 mm')
    expect(lengths(`{other: {share: 0, ${other.slice(1)}, cut: ${cut}}`)).toEqual(alone)
  })

  it('keeps within the ends of its law, and begins anew each shift', () => {
    const narrow = '{normal: {mean: 400 mm, sd: 100 mm, at-least: 350 mm, at-most: 420 mm}}'
    const text = saturated(`{cut: ${cut.replace(/\{uniform.*?\}\}/, narrow)}}`)
    const [first, second] = [1, 2].map((shift) => sizesIn(told(text, shift)).map(({ length }) => length))
    for (const length of first!) {
      expect(length).toBeGreaterThanOrEqual(0.35)
      expect(length).toBeLessThanOrEqual(0.42)
    }
    expect(second![0]).not.toBe(first![0])
  })
})

describe('tape a case', () => {
  it.each([
    ['{uniform: {low: 300 mm, high: 700 mm}}', 0.5, 0.4 / Math.sqrt(12)],
    ['{triangular: {low: 300 mm, mode: 360 mm, high: 600 mm}}', 0.42, 0.0648],
  ])('of lengths %s is that of the mean length: it is linear', (law, mean, sd) => {
    const line = new Line(loadScenario(saturated(`{cut: ${cut.replace(/\{uniform.*?\}\}/, law)}}`)).scenario)
    const [tape, strips] = (['value', 'over'] as const).map((part) =>
      line.columns.findIndex(
        (each) =>
          each.part === part && each.measure.path.join('.') === 'equipment.sealer.heads.top.tape-per-case',
      ),
    )
    let [laid, count] = [0, 0]
    for (let shift = 1; shift <= 10; shift++) {
      const { values } = line.simulate('tape', shift)
      laid += values[tape!]!
      count += values[strips!]!
    }
    expect(count).toBeGreaterThan(3000)
    // four standard errors
    const within = (4 * sd) / 1.02 / Math.sqrt(count)
    expect(Math.abs(laid / count - (mean + 2 * 0.06) / 1.02)).toBeLessThan(within)
  })
})
