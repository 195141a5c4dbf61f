/** Jams by hand: effective process time with several causes, cases that are spoilt, and whose time jams take. */
import { describe, expect, it } from 'vitest'
import { lineByHand } from '../../src/hand/line.js'
import { crewLoads } from '../../src/hand/people.js'
import { stopsPerShift } from '../../src/hand/stop-counts.js'
import { loadScenario } from '../../src/scenario/load.js'
import { checkedWith } from './line.js'

/** 480 cases of one sort in 8 h, one a minute; `press` takes 20 s. */
const text = (press: string, after = '') => `cases: {a: {length: 400 mm, width: 300 mm, height: 300 mm}}
arrivals: {p: {rate: 1 cases/min}}
line:
  press: {type: station, time: 20 s, ${press}}
${after}
crew: {operators: {walk: 10 s, does: [jams, roll-change]}, mechanic: {walk: 1 min, does: [breakdowns]}}
shift: {length: 8 h}`
const kinds =
  'jams: {flap: {chance: 5 %, clear: 40 s}, crushed: {chance: 1 %, clear: 5 min, isolate: 20 s, by: mechanic, case-lost: 50 %}}'

function byHand(yaml: string) {
  const { scenario } = loadScenario(yaml)
  const line = lineByHand(scenario)
  return { scenario, line, pieces: new Map(line.pieces.map((piece) => [piece.name, piece])) }
}

describe('several kinds of jam', () => {
  it('make a case of 20 s one of 26.5 s: 5 % of 10 + 40 s and 1 % of 60 + 20 + 300 + 20 s', () => {
    const { pieces } = byHand(text(kinds))
    expect(pieces.get('press')!.rateAfterStops).toBeCloseTo(1 / (20 + 2.5 + 4), 12)
  })

  it('come 24 and 4.8 times in 480 cases, for 20 min and 32 min', () => {
    const { scenario, line, pieces } = byHand(text(kinds))
    const stops = stopsPerShift(scenario, line, pieces.get('press')!)
    expect(stops.map(({ jam, skill }) => [jam, skill])).toEqual([
      ['flap', 'jams'],
      ['crushed', 'jams by mechanic'],
    ])
    expect(stops[0]!.count).toBeCloseTo(24, 9)
    expect(stops[0]!.count * stops[0]!.time).toBeCloseTo(20 * 60, 9)
    expect(stops[1]!.count).toBeCloseTo(4.8, 9)
    expect(stops[1]!.count * stops[1]!.time).toBeCloseTo(32 * 60, 9)
  })

  it('take the time of whoever clears them: 24 x 50 s and 4.8 x 400 s of 8 h', () => {
    const { scenario, line } = byHand(text(kinds))
    const [operators, mechanic] = crewLoads(scenario, line)
    expect(operators!.busy).toBeCloseTo((24 * 50) / 28_800, 12)
    expect(mechanic!.busy).toBeCloseTo((4.8 * 400) / 28_800, 12)
  })

  it('leave those that come later fewer cases, where the first spoils some', () => {
    const { scenario, line, pieces } = byHand(
      text('jams: {flap: {chance: 50 %, clear: 1 s, case-lost: 40 %}, other: {chance: 10 %, clear: 1 s}}'),
    )
    const [, other] = stopsPerShift(scenario, line, pieces.get('press')!)
    // of 480 cases 96 are gone before they meet it
    expect(other!.count).toBeCloseTo(38.4, 9)
  })
})

describe.each([
  ['conveyor', '{type: conveyor, length: 5 m'],
  ['divert', '{type: divert, to: [exit, exit], time: 1 s'],
  ['inspection', '{type: inspect, time: 1 s'],
  ['station', '{type: station, time: 1 s'],
])('a %s that spoils 2.5 % of what comes', (_, keys) => {
  it('thins what leaves the line, and stands for its jams', () => {
    const { line, pieces } = byHand(
      text('waiting-room: 1', `  next: ${keys}, jams: {chance: 5 %, clear: 30 s, case-lost: 50 %}}`),
    )
    expect(line.goodShare).toBeCloseTo(0.975, 12)
    const { rate, rateAfterStops } = pieces.get('next')!
    expect(1 / rateAfterStops - 1 / rate).toBeCloseTo(0.05 * 40, 9)
  })
})

describe('a clearing that leaves no room to isolate', () => {
  const hasty = (set: string) =>
    checkedWith([set]).findings.flatMap(({ code, path }) => (code === 'hasty-clearing' ? [path] : []))

  it('is told at its kind, wherever it stands', () => {
    expect(
      hasty('line.infeed.jams={tip: {chance: 0.1 %, clear: 20 s}, edge: {chance: 0.1 %, clear: 40 s}}'),
    ).toEqual(['line.infeed.jams.tip.clear'])
  })

  it('is none where the isolation is told apart', () => {
    expect(hasty('line.infeed.jams={chance: 0.1 %, clear: 20 s, isolate: 30 s}')).toEqual([])
  })
})
