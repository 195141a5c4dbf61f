/** Where pieces stand: lengths by hand from what a scenario says, and for lines of any shape no two in one place. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Layout, layoutOf } from '../../src/pictures/layout.js'
import { loadScenario } from '../../src/scenario/load.js'
import { demos, loadDemo } from '../demo.js'
import { lines } from '../line/topology.js'

/** Two cases: the longest is 0.6 m long, the widest 0.4 m wide. */
const layout = (line: string, more = 'crew: {o: {does: [jams, roll-change]}}'): Layout =>
  layoutOf(
    loadScenario(`cases:
  long: {length: 600 mm, width: 300 mm, height: 250 mm}
  wide: {length: 500 mm, width: 400 mm, height: 250 mm}
arrivals: {p: {time-between: 10 s}}
line: {${line}}
shift: {length: 1 h}
${more}`).scenario,
  )

const at = ({ pieces }: Layout, name: string) => pieces.find((piece) => piece.name === name)!

describe('a straight line', () => {
  const straight = layout(`infeed: {type: conveyor, length: 7 m, speed: 18 m/min},
    sealer: {type: sealer, bed: 1.8 m, belt-speed: 24 m/min, heads: {top: {position: 1.2 m}, bottom: {position: 0.9 m}}},
    labeller: {type: station, time: 2 s},
    pallet: {type: station, time: 2 s, servers: 2, waiting-room: 3, run-by: people}`)

  it('has each piece behind the one before, to scale', () => {
    // sealer: 1.8 m of belts and 0.6 m of fold place; stations 0.6 m and 0.2 m; three places to wait before the last
    const expected = { infeed: [0, 7], sealer: [7, 2.4], labeller: [9.4, 0.8], pallet: [10.2, 3.2] }
    for (const [name, [x, length]] of Object.entries(expected)) {
      expect(at(straight, name).x, name).toBeCloseTo(x!, 9)
      expect(at(straight, name).length, name).toBeCloseTo(length!, 9)
    }
    expect(straight.length).toBeCloseTo(13.4, 9)
  })

  it('is as wide as the widest case and 0.1 m, twice that where two work side by side', () => {
    expect(at(straight, 'infeed').width).toBeCloseTo(0.5, 9)
    expect(at(straight, 'pallet').width).toBeCloseTo(1, 9)
    expect(straight.width).toBeCloseTo(1, 9)
    // one middle line
    for (const { y, width } of straight.pieces) expect(y + width / 2).toBeCloseTo(0.5, 9)
  })

  it('has the heads where they stand behind the fold place, in the order of travel', () => {
    expect(at(straight, 'sealer').heads.map(({ name }) => name)).toEqual(['bottom', 'top'])
    expect(at(straight, 'sealer').heads[0]!.at).toBeCloseTo(0.6 + 0.9, 9)
    expect(at(straight, 'sealer').heads[1]!.at).toBeCloseTo(0.6 + 1.2, 9)
  })

  it('tells speeds, ways, sources, cases, and who works where', () => {
    expect(straight.pieces.map(({ speed }) => speed)).toEqual([0.3, 0.4, null, null])
    expect(straight.pieces.map(({ next }) => next)).toEqual([['sealer'], ['labeller'], ['pallet'], ['exit']])
    expect(straight.pieces[0]!.carries).toBe('accumulating')
    expect(straight.arrivals).toEqual([{ name: 'p', next: 'infeed' }])
    expect(straight.cases.map(({ name, length, width }) => [name, length, width])).toEqual([
      ['long', 0.6, 0.3],
      ['wide', 0.5, 0.4],
    ])
    expect(straight.crews).toEqual([{ name: 'o', people: 1 }])
    expect(at(straight, 'pallet')).toMatchObject({ people: 2, places: { work: 2, wait: 3 } })
  })

  it('has somebody at a sealer that people fold for', () => {
    const folded = layout(
      'sealer: {type: sealer, flaps: {folded-by: people, time: 3 s}}',
      'crew: {folder: {people: 2, does: [jams, roll-change], stands-at: sealer}}',
    )
    expect(folded.crews).toEqual([{ name: 'folder', people: 2, at: 'sealer' }])
    expect(at(folded, 'sealer').people).toBe(1)
  })
})

describe('ways that part', () => {
  const parted = layout(`in: {type: conveyor, length: 4 m},
    sort: {type: divert, rule: alternate, to: [short, long]},
    short: {type: conveyor, length: 2 m, to: join},
    long: {type: conveyor, length: 5 m, to: join},
    join: {type: conveyor, length: 3 m}`)

  it('lie side by side, with room to walk between', () => {
    expect(at(parted, 'short').x).toBe(at(parted, 'long').x)
    expect(at(parted, 'long').y - (at(parted, 'short').y + at(parted, 'short').width)).toBeCloseTo(0.8, 9)
    expect(at(parted, 'in').y).toBe(at(parted, 'short').y)
  })

  it('meet behind the longer one', () => {
    expect(at(parted, 'join').x).toBeCloseTo(4 + 0.8 + 5, 9)
    expect(at(parted, 'join').y).toBe(at(parted, 'in').y)
  })

  it('may lead back: a bench from which cases come again stands beside, and moves nothing', () => {
    const loop = layout(`in: {type: conveyor, length: 4 m},
      sealer: {type: sealer, bed: 1.9 m},
      look: {type: inspect, rejects-to: bench, to: out},
      bench: {type: station, time: 9 s, to: in},
      out: {type: conveyor, length: 2 m}`)
    expect(at(loop, 'in').x).toBe(0)
    expect(at(loop, 'out').x).toBeCloseTo(at(loop, 'look').x + 0.8, 9)
    expect(at(loop, 'bench').y).toBeGreaterThan(at(loop, 'out').y)
    expect(at(loop, 'bench').next).toEqual(['in'])
  })

  it('a feeder that nothing leads to stands before the piece that it leads to', () => {
    const text = `cases: {a: {length: 600 mm, width: 300 mm, height: 250 mm}}
arrivals: {p: {time-between: 10 s}, q: {time-between: 20 s, to: side}}
line: {main: {type: conveyor, length: 9 m, to: join}, side: {type: conveyor, length: 2 m, to: join}, join: {type: conveyor, length: 3 m}}
shift: {length: 1 h}`
    const fed = layoutOf(loadScenario(text).scenario)
    expect(at(fed, 'side').x).toBeCloseTo(7, 9)
    expect(at(fed, 'side').y).toBeGreaterThan(at(fed, 'main').y)
  })
})

/** What holds of every layout. */
function expectSound({ pieces, length, width }: Layout): void {
  const hair = 1e-9
  for (const [index, a] of pieces.entries()) {
    expect(a.x).toBeGreaterThanOrEqual(0)
    expect(a.x + a.length).toBeLessThanOrEqual(length + hair)
    expect(a.y).toBeGreaterThanOrEqual(0)
    expect(a.y + a.width).toBeLessThanOrEqual(width + hair)
    for (const b of pieces.slice(index + 1)) {
      const isApart =
        a.x + a.length <= b.x + hair ||
        b.x + b.length <= a.x + hair ||
        a.y + a.width <= b.y + hair ||
        b.y + b.width <= a.y + hair
      expect(isApart, `${a.name} and ${b.name}`).toBe(true)
    }
  }
  expect(Math.min(...pieces.map(({ x }) => x))).toBe(0)
}

it.each(demos)('no two pieces of %s stand in one place', async (name) => {
  const scenario = await loadDemo(name)
  const found = layoutOf(scenario)
  expect(found.pieces.map((piece) => piece.name)).toEqual(Object.keys(scenario.line))
  expectSound(found)
  // a document holds no numbers that are not finite
  expect(JSON.parse(JSON.stringify(found))).toEqual(found)
})

it('no two pieces of a line of any shape stand in one place', () => {
  fc.assert(
    fc.property(lines, (yaml) => {
      expectSound(layoutOf(loadScenario(yaml).scenario))
    }),
    { seed: 1, numRuns: 200 },
  )
})
