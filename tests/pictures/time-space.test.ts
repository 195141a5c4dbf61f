/** Time-space diagram: its words, its geometry by hand, and that no name becomes markup. */
import { describe, expect, it } from 'vitest'
import type { StateKey } from '../../src/catalogue/states.js'
import type { Kind } from '../../src/kinds/keys.js'
import { Line } from '../../src/line/line.js'
import { findingOf, numbersOf } from '../../src/pictures/finding.js'
import type { Layout } from '../../src/pictures/layout.js'
import { momentOf } from '../../src/pictures/moment.js'
import { clockOf, lasting, stopsOf, totalOf, waitsOf } from '../../src/pictures/stops.js'
import { timeSpaceSvg } from '../../src/pictures/time-space.js'
import { loadScenario } from '../../src/scenario/load.js'
import { recordStretch, type Stretch } from '../../src/shifts/stretch.js'
import { demos, loadDemo } from '../demo.js'
import { plainLayout } from './plain-layout.js'

const piece = (name: string, x: number, length: number, type: Kind = 'conveyor') => ({
  name,
  type,
  x,
  y: 0,
  length,
  width: 0.5,
  speed: 0.5,
  heads: [],
  next: [],
})

const layout: Layout = {
  pieces: [piece('infeed', 0, 5), piece('sealer', 5, 2.4, 'sealer')],
  arrivals: [{ name: 'packing', next: 'infeed' }],
  cases: [{ name: 'box', length: 0.4, width: 0.3 }],
  crews: [],
  length: 7.4,
  width: 0.5,
}

// 20 minutes from 2 h 36 min; a jam from 2 h 42 min on, of 2 min 10 s; packing waits from 2 h 42 min 30 s for 3 min
const from = 9360
const jam = 9720
const stretch: Stretch = {
  shift: 7,
  from,
  to: from + 1200,
  why: '',
  cases: [
    {
      id: 1,
      kind: 0,
      path: [
        [0, from, 9370],
        [1, 9370, 9376],
      ],
      came: [0, from],
      belts: [9371],
    },
    { id: 2, kind: 0, path: [[0, 9930, null]], came: [0, 9750] },
  ],
  drives: [
    [[from, 0.5]],
    [
      [from, 0.5],
      [jam, 0],
      [jam + 130, 0.5],
    ],
  ],
  states: [
    [
      [from, 'working'],
      [jam, 'blocked'],
      [jam + 130, 'working'],
    ],
    [
      [from, 'working'],
      [jam, 'jam-waiting-for-crew'],
      [jam + 40, 'jam-being-cleared'],
      [jam + 130, 'working'],
    ],
  ],
  breaks: [],
  held: [
    [from, 3],
    [jam, 4],
    [jam + 100, 17],
    [jam + 200, 6],
  ],
  pieces: [
    { moves: 'accumulating', length: 5, speed: 0.5, pitches: [0.5], startDelay: 0, servers: 1 },
    { moves: 'sealer', length: 2, speed: 0.5, pitches: [], startDelay: 0, servers: 1 },
  ],
  sources: [{ name: 'packing', whenFull: 'wait' }],
}

describe('what a stretch shows', () => {
  it('is told in a sentence', () => {
    expect(findingOf(stretch, layout)).toBe(
      'A jam of 2 min 10 s on sealer at 2:42 h: the line fills from 4 to 17 cases; in all, packing waits for room for 3 min of these 20 min.',
    )
  })

  it('is told in numbers', () => {
    expect(numbersOf(stretch, layout)).toBe(
      'Shift 7 from 2:36:00 to 2:56:00 after its start. Stops: sealer: jam at 2:42:00 for 2 min 10 s, including 40 s until somebody arrives. packing waits for room for 3 min. Cases in the line: 17 at most, at 2:43:40. 1 case left the line.',
    )
  })

  it('claims nothing of a stop after which the line is not fuller', () => {
    const held: [number, number][] = [
      [from, 17],
      [jam, 16],
      [jam + 200, 6],
    ]
    expect(findingOf({ ...stretch, held }, layout)).toContain(
      'A jam of 2 min 10 s on sealer at 2:42 h; the line is fullest at 2:36 h, with 17 cases',
    )
    expect(findingOf({ ...stretch, states: [[], []] }, layout)).toContain(
      'No machine stops; the line is fullest',
    )
  })

  it('counts stops that follow each other apart, what a break interrupts twice, and no setting of a machine between two cases', () => {
    const states: [number, StateKey][] = [
      [from - 5, 'jam-being-cleared'],
      [from + 5, 'jam-waiting-for-crew'],
      [from + 8, 'jam-being-cleared'],
      [from + 20, 'size-being-set'],
      [from + 21, 'tape-being-changed'],
      [from + 50, 'working'],
      [from + 60, 'planned-stop'],
      [from + 65, 'on-break'],
      [from + 70, 'planned-stop'],
      [from + 75, 'waiting'],
    ]
    expect(stopsOf({ ...stretch, states: [states] })).toMatchObject([
      { kind: 'jam', from, to: from + 5, isCut: true },
      { kind: 'jam', from: from + 5, workFrom: from + 8, to: from + 20, isCut: false },
      { kind: 'tape', from: from + 21, workFrom: from + 21, to: from + 50 },
      { kind: 'planned', from: from + 60, workFrom: from + 60, to: from + 65 },
      { kind: 'planned', from: from + 70, workFrom: from + 70, to: from + 75 },
    ])
  })

  it('leaves breaks out of waiting', () => {
    expect(waitsOf(stretch)).toEqual([[[9750, 9930]]])
    const [waits] = waitsOf({ ...stretch, breaks: [[9800, 9900]] })
    expect(waits).toEqual([
      [9750, 9800],
      [9900, 9930],
    ])
    expect(totalOf(waits!)).toBe(80)
  })

  it('times are read at a glance', () => {
    expect([0.4, 59.6, 60, 130, 3600, 3900, 7325].map(lasting)).toEqual([
      '0 s',
      '1 min',
      '1 min',
      '2 min 10 s',
      '1 h',
      '1 h 5 min',
      '2 h 2 min',
    ])
    expect([clockOf(9720), clockOf(9779.9), clockOf(65.2, true)]).toEqual(['2:42', '2:42', '0:01:05'])
  })
})

/** Names of open elements that are never closed, or closed without being open. */
function unbalanced(svg: string): string[] {
  const open: string[] = []
  for (const [, close, name, empty] of svg.matchAll(/<(\/?)([a-z]+)(?:\s[^<>]*?)?(\/?)>/g)) {
    if (close) {
      if (open.pop() !== name) return [`</${name}>`]
    } else if (!empty) open.push(name!)
  }
  return open
}

describe('the drawing', () => {
  const svg = timeSpaceSvg(layout, stretch).toString()

  it('has its finding as title and its numbers as description', () => {
    expect(svg).toContain(`<title id="time-space-title">${findingOf(stretch, layout)}</title>`)
    expect(svg).toContain(`<desc id="time-space-desc">${numbersOf(stretch, layout)}</desc>`)
    expect(svg).toMatch(/^<svg [^>]*role="img" aria-labelledby="time-space-title time-space-desc"/)
    expect(unbalanced(svg)).toEqual([])
  })

  it('draws a case at its times and places', () => {
    // 960 px wide, 118 px of names and 14 px of edge: 828 px for 1200 s; 430 px for 7.4 m
    const [path] = [...svg.matchAll(/<path d="(M[^"]*)" data-says/g)].map(([, d]) => d!)
    const [x, y] = [...path!.matchAll(/-?[\d.]+/g)].map(Number)
    const bands = [
      ...svg.matchAll(/<rect x="118" y="([\d.]+)" width="828" height="([\d.]+)" fill="var\(--band/g),
    ]
    expect(bands.length).toBe(2)
    expect([x, y]).toEqual([118, Number(bands[0]![1])])
    expect(Number(bands[0]![2])).toBeCloseTo((430 / 7.4) * 5, 1)
    // 10 s later, at the end of the infeed, relative to that
    const [, , across, down] = [...path!.matchAll(/-?[\d.]+/g)].map(Number)
    expect(across).toBeCloseTo((10 / 1200) * 828, 1)
    expect(down).toBeCloseTo((430 / 7.4) * 5, 1)
  })

  it('says of each case its number, its kind and where it stood', () => {
    // case 1 is on the belts from 9371 on for 5 s; case 2 came at 2:42:30, waited for 3 min and is still there 626 s later
    const says = [...svg.matchAll(/data-says="([^"]*)"/g)].map(([, words]) => words)
    expect(says[0]).toBe('Case 1 (box) came from packing at 2:36:00; it stood nowhere.')
    expect(says[1]).toBe(
      'Case 2 (box) came from packing at 2:42:30; it stood 3 min before the line, 10 min 20 s on infeed.',
    )
  })

  it('shows five minutes around the longest queue, of what the stretch knows', () => {
    // fullest at jam + 100: three fifths of 300 s before that and two after
    const moment = momentOf(stretch)
    expect([moment.from, moment.to]).toEqual([jam - 80, jam + 220])
    expect(moment.held).toEqual([
      [jam - 80, 3],
      [jam, 4],
      [jam + 100, 17],
      [jam + 200, 6],
    ])
    expect(moment.cases[1]).toMatchObject({ id: 2, path: [[0, 9930, null]] })
    expect(timeSpaceSvg(layout, moment).toString()).toContain('2:40:40 to 2:45:40')
    expect(momentOf({ ...stretch, to: from + 200, held: [[from, 3]] })).toMatchObject({
      from,
      to: from + 200,
    })
  })

  it('draws the jam where it is, in two parts that hatch and edge tell apart', () => {
    const bars = [
      ...svg.matchAll(
        /<rect x="([\d.]+)" y="[\d.]+" width="([\d.]+)" height="[\d.]+" fill="url\(#time-space-jam\)"([^>]*)\/>/g,
      ),
    ]
    const [waiting, work] = bars
    expect(Number(waiting![1])).toBeCloseTo(118 + (360 / 1200) * 828, 1)
    expect(Number(waiting![2])).toBeCloseTo((40 / 1200) * 828, 1)
    expect(waiting![3]).toContain('stroke-dasharray')
    expect(Number(work![2])).toBeCloseTo((90 / 1200) * 828, 1)
    expect(work![3]).not.toContain('stroke-dasharray')
    expect(svg).toContain('jam 2 min 10 s')
  })

  it('keeps names as text, and ids apart where a page has two', () => {
    const name = `<script>alert("1")</script>&'`
    const hostile = { ...layout, pieces: layout.pieces.map((each) => ({ ...each, name })) }
    const sources = [{ name, whenFull: 'wait' }]
    const drawn = timeSpaceSvg(hostile, { ...stretch, sources }, { id: 'second' }).toString()
    expect(drawn).not.toContain('<script')
    expect(unbalanced(drawn)).toEqual([])
    expect(drawn).not.toContain('time-space-')
  })

  it('says lengths in the units of the scenario', () => {
    expect(svg).toContain('>5.0 m<')
    expect(timeSpaceSvg(layout, stretch, { display: 'us' }).toString()).toContain('>16.4 ft<')
  })
})

it('a shift to which no case comes has a drawing too', () => {
  const text = `
cases: {box: {length: 400 mm, width: 300 mm, height: 300 mm}}
arrivals: {table: {time-between: 1000 h}}
line: {feed: {type: conveyor, length: 3 m}}
shift: {length: 400 s}`
  const { scenario } = loadScenario(text)
  const empty = recordStretch(new Line(scenario), scenario, 'test', 1, { length: 1200 })
  const svg = timeSpaceSvg(plainLayout(scenario), empty).toString()
  expect(svg).not.toMatch(/NaN|undefined|Infinity/)
  expect(svg).toContain('No machine stops; the line is fullest at 0:00 h, with 0 cases.')
})

describe.each(demos)('the drawing of %s', (demo) => {
  it('stands within its frame and is no larger than a picture', { timeout: 120_000 }, async () => {
    const scenario = await loadDemo(demo)
    const recorded = recordStretch(new Line(scenario), scenario, scenario.study.seed, 3, { length: 1200 })
    const svg = timeSpaceSvg(plainLayout(scenario), recorded, { display: scenario.display }).toString()
    expect(unbalanced(svg)).toEqual([])
    expect(svg).not.toMatch(/NaN|undefined|Infinity/)
    expect(svg.length).toBeLessThan(600_000)
    const [, width, height] = /viewBox="0 0 ([\d.]+) ([\d.]+)"/.exec(svg)!.map(Number)
    const outside = [
      ...svg.matchAll(/<rect x="(-?[\d.]+)" y="(-?[\d.]+)" width="([\d.]+)" height="([\d.]+)"/g),
    ]
      .map((match) => match.slice(1).map(Number) as [number, number, number, number])
      .filter(([x, y, wide, tall]) => x < 0 || y < 0 || x + wide > width! + 0.2 || y + tall > height! + 0.2)
    expect(outside).toEqual([])
  })
})
