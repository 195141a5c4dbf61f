/** Size settings by how far sizes differ and by which follows which, and rolls that are changed along with another: worked by hand. */
import { describe, expect, it } from 'vitest'
import { handCalculation } from '../../src/hand/hand.js'
import { stopsPerShift } from '../../src/hand/stop-counts.js'
import type { Sealer } from '../../src/kinds/sealer/model.js'
import { State } from '../../src/line/states.js'
import { loadScenario } from '../../src/scenario/load.js'
import { trial } from '../line/gate.js'

/** The hand calculation of a scenario and its sealer in it. */
function byHand(text: string) {
  const { scenario } = loadScenario(text)
  const { line } = handCalculation(scenario)
  return { scenario, line, sealer: line.pieces[0]! }
}

const outs = (log: [number, string][]) => log.filter(([, what]) => what.endsWith('out')).map(([time]) => time)
const sealer = (more: string) => `{s: {type: sealer, belt-speed: 24 m/min, minimum-gap: 300 mm${more}}}`
// low 200 mm high, tall 500 mm high and 100 mm wider
const cases =
  '{low: {length: 400 mm, width: 300 mm, height: 200 mm}, tall: {length: 400 mm, width: 400 mm, height: 500 mm}}'
const lowTallLow: [number, number][] = [
  [0, 0],
  [0, 1],
  [0, 0],
]

describe('time to set another size', () => {
  it('grows with how far height and width differ: 2 s + 300 mm x 0.01 s + 100 mm x 0.02 s = 7 s either way', () => {
    const line = sealer(', size-setting: {time: 2 s, per-mm: {height: 0.01 s, width: 0.02 s}}')
    const { log, equipment } = trial({ cases, line, arrivals: lowTallLow })
    // each follows at the headway of 1.75 s and 7 s of setting; 4.75 s on the belts
    expect(outs(log)).toEqual([4.75, 1.75 + 7 + 4.75, 2 * (1.75 + 7) + 4.75].map((t) => expect.closeTo(t, 9)))
    expect(equipment[0]!.stateTimes[State.sizeSetting]).toBeCloseTo(14, 9)
  })

  it('is another up than down: 4 s from low to tall, 1 s back', () => {
    const line = sealer(', size-setting: {between: {low: {tall: 4 s}, tall: {low: 1 s}}}')
    const { log } = trial({ cases, line, arrivals: lowTallLow })
    expect(outs(log)).toEqual(
      [4.75, 1.75 + 4 + 4.75, 2 * 1.75 + 4 + 1 + 4.75].map((t) => expect.closeTo(t, 9)),
    )
  })

  it('by the crew, once the belts are empty: 20 s + 4 s, then 20 s + 1 s', () => {
    const line = sealer(
      ', size-setting: {by: crew, time: 20 s, between: {low: {tall: 4 s}, tall: {low: 1 s}}}',
    )
    const { log } = trial({ cases, line, arrivals: lowTallLow })
    expect(outs(log)).toEqual(
      [4.75, 4.75 + 24 + 4.75, 2 * 4.75 + 24 + 4.75 + 21].map((t) => expect.closeTo(t, 9)),
    )
  })

  it('by hand: orders change up once and down once, 2.5 s on average; drawn cases as often up as down', () => {
    const text = (arrivals: string) => `cases: ${cases}
arrivals: {packing: ${arrivals}}
line: ${sealer(', flaps: {time: 3 s}, size-setting: {time: 20 s, between: {low: {tall: 4 s}, tall: {low: 1 s}}}')}
shift: {length: 8 h}
`
    const orders = [100, 100, 100]
      .map(
        (quantity, index) =>
          `{case: ${['low', 'tall', 'low'][index]}, quantity: ${quantity}, time-between: 5 s}`,
      )
      .join(', ')
    // two changes in 300 cases, one up and one down
    const cycle = (arrivals: string) => byHand(text(arrivals)).sealer.cycle
    expect(cycle(`{orders: [${orders}]}`)).toBeCloseTo(3 + (2 / 300) * (20 + 2.5), 12)
    expect(cycle('{time-between: 5 s}')).toBeCloseTo(3 + 0.5 * (20 + 2.5), 12)
  })
})

describe('a table of changes that is not whole', () => {
  const read = (between: string) => () =>
    loadScenario(`cases: ${cases.replace('}}', '}, wide: {length: 1 m, width: 1 m, height: 1 m}}')}
arrivals: {packing: {time-between: 5 s}}
line: ${sealer(`, size-setting: {between: ${between}}`)}
shift: {length: 8 h}
`)

  it('names the changes that are missing', () => {
    expect(read('{low: {tall: 4 s, wide: 1 s}, tall: {low: 1 s, wide: 2 s}, wide: {low: 1 s}}')).toThrow(
      /between.*every change needs its time: wide to tall is missing/s,
    )
  })

  it('names cases that are none, and a change that is none', () => {
    const wrong = read('{low: {tall: 4 s, wide: 1 s, low: 3 s}, tal: {low: 1 s}}')
    expect(wrong).toThrow(/`tal` is not a case of this scenario.*did you mean `tall`/s)
    expect(wrong).toThrow(/`low` to `low` is not a change/)
  })
})

describe('a roll that is nearly empty is changed along with the empty one', () => {
  // as the two-roll case of the sealer: strips of 0.54 m on rolls of 1 m, and the top roll has laid one strip, 0.46 m left
  const line = (below: string) =>
    `{s: {type: sealer, belt-speed: 24 m/min, minimum-gap: 350 mm, roll-change: {time: 30 s${below}}}}`
  const rest = 'tape: {roll: 1 m, leg: 70 mm, lost-per-roll: 0 m, stretch: 0 %}'
  const twoCases: [number, number][] = [
    [0, 0],
    [0, 0],
  ]

  it('in one visit of 60 s: the second case meets the bottom head at 4.125 s and passes the top head without a stop', () => {
    const { log, equipment } = trial({ line: line(', also-below: 50 cm'), rest, arrivals: twoCases })
    // the first case leaves at 1.90 m of travel, the second at 2.65 m, both after 60 s
    expect(outs(log)).toEqual([64.75, 66.625])
    const { heads } = equipment[0]!.mechanism as Sealer
    expect(heads.map((head) => [head.name, head.changes, head.strips])).toEqual([
      ['bottom', 1, 2],
      ['top', 1, 2],
    ])
    for (const head of heads) expect(head.imbalance()).toBeCloseTo(0, 9)
  })

  it('but not one that has more left', () => {
    const { log } = trial({ line: line(', also-below: 45 cm'), rest, arrivals: twoCases })
    expect(outs(log)).toEqual([34.75, 66.625])
  })

  it('by hand: full rolls end together, one visit for two; part-used ones as often as the other is within it', () => {
    const visits = (rolls: string, below: string) => {
      const { scenario, line, sealer } = byHand(`cases: ${cases}
arrivals: {packing: {time-between: 5 s}}
line: {s: {type: sealer, roll-change: {time: 30 s${below}}}}
tape: {roll: 105 m, lost-per-roll: 5 m}
shift: {length: 8 h, rolls-start: ${rolls}}
`)
      const { count, work } = stopsPerShift(scenario, line, sealer).find(({ key }) => key === 'roll-changes')!
      return { count, work }
    }
    const full = visits('full', '')
    expect(visits('full', ', also-below: 20 m')).toEqual({ count: full.count / 2, work: 60 })
    // a roll gives 100 m: the other has less than 20 m left, or had so little more, in 40 of 100; of 10 changes 8 visits
    const used = visits('part-used', '')
    const along = visits('part-used', ', also-below: 20 m')
    expect(along.work).toBeCloseTo(30 / 0.8, 9)
    // and what is left on them, 4 x 20 / 2 of 200 m, is lost
    expect(along.count / used.count).toBeCloseTo(0.8 * (100 / (100 - 2)), 1)
  })
})
