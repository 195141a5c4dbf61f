/** Jams on every piece of a line, of several kinds and with cases lost: cases, tape and time stay accounted for. */
import { describe, expect, it } from 'vitest'
import { Line } from '../../src/line/line.js'
import { loadScenario } from '../../src/scenario/load.js'

const text = (shift: string) => `
cases:
  a: {share: 60, length: 400 mm, width: 300 mm, height: 300 mm}
  b: {share: 40, length: 600 mm, width: 300 mm, height: 300 mm, jam-factor: 2}
arrivals: {p: {time-between: {exponential: {mean: 3 s}}}}
line:
  infeed: {type: conveyor, length: 5 m, jams: {chance: 1 %, clear: {exponential: {mean: 20 s}}, case-lost: 50 %}}
  split: {type: divert, rule: shortest, to: [left, right], time: 0.5 s, jams: {skew: {chance: 1 %, clear: 20 s, case-lost: 30 %}}}
  left:
    type: sealer
    jams:
      flap: {chance: 2 %, clear: {exponential: {mean: 20 s}}, case-lost: 20 %}
      crushed: {chance: 0.5 %, clear: 2 min, case-lost: 100 %, by: mechanic, isolate: 30 s}
    breakdowns: {after: 1 h, repair: 2 min}
    to: outfeed
  right: {type: sealer, jams: {chance: 2 %, clear: 15 s, case-lost: 50 %}, to: outfeed}
  outfeed:
    type: conveyor
    carries: belt
    length: 4 m
    jams: {corner: {chance: 1 %, clear: 10 s, case-lost: 50 %}, other: {chance: 1 %, clear: 30 s}}
  look: {type: inspect, time: 1 s, chance: 5 %, rejects-to: bench, jams: {chance: 1 %, clear: 20 s, case-lost: 50 %}}
  palletiser:
    type: station
    time: {exponential: {mean: 4 s}}
    servers: 3
    waiting-room: 2
    every: {cases: 20, stop: 30 s}
    jams: {fall: {chance: 2 %, clear: 20 s, case-lost: 60 %}, wedge: {chance: 1 %, clear: {exponential: {mean: 40 s}}, case-lost: 10 %, by: mechanic}}
    to: exit
  bench: {type: station, time: 20 s, waiting-room: 3, repairs: true, run-by: people, jams: {chance: 5 %, clear: 10 s, case-lost: 50 %}}
crew: {operators: {people: 2, walk: 10 s, does: [jams, roll-change]}, mechanic: {walk: 1 min, does: [breakdowns]}}
shift: {length: 2 h, breaks: [{at: 1 h, for: 10 min}]${shift}}
`

describe('a line that jams everywhere', () => {
  it.each([
    ['', 1],
    [', breaks-stop: everything', 1],
    [', start: carry-over, campaign: 3, run-out: 10 min', 3],
    [', breaks-stop: everything, start: carry-over, campaign: 2', 2],
  ])('closes its balances in a shift of 2 h%s', (shift, shifts) => {
    const line = new Line(loadScenario(text(shift)).scenario)
    const places = new Map(
      line.columns.flatMap(({ measure, part }, index) =>
        part === 'value' ? [[measure.path.join('.'), index] as const] : [],
      ),
    )
    for (let number = 1; number <= 8; number++) {
      // a balance that does not close is thrown
      const { values } = line.simulate('everywhere', number)
      const read = (path: string) => values[places.get(path)!]!
      for (const [piece, kinds] of [
        ['left', ['flap', 'crushed']],
        ['outfeed', ['corner', 'other']],
        ['palletiser', ['fall', 'wedge']],
      ] as const) {
        const sum = (key: string) =>
          kinds.reduce((total, kind) => total + read(`equipment.${piece}.jams.${kind}.${key}`), 0)
        const all = `equipment.${piece}.measures`
        expect(sum('stops')).toBeCloseTo(read(`${all}.jams`), 9)
        expect(sum('cases-lost')).toBeCloseTo(read(`${all}.cases-lost`), 9)
        // a ratio is total over total, and a total is told a shift
        expect(sum('time') * shifts).toBeCloseTo(read(`${all}.jams-stop`), 6)
      }
    }
  })

  it('tells the same events wherever counting begins, and no more of them', () => {
    const { scenario } = loadScenario(text(''))
    const counted = (from: number) => {
      const line = new Line(scenario)
      line.countFrom = from
      const { values } = line.simulate('everywhere', 1)
      const place = line.columns.findIndex(
        ({ measure }) => measure.path.join('.') === 'equipment.left.jams.flap.time',
      )
      // of a part of the shift what is told is a whole shift's worth
      return values[place]! * (from === 0 ? 1 : (6600 - from) / 6600)
    }
    let before = 0
    const line = new Line(scenario)
    let since = Number.NaN
    line.observe(({ time, event, at, cause, jam }) => {
      if (at !== 'left' || time > 3000) return
      if (event === 'stops') since = cause === 'jams' && jam === 'flap' ? time : Number.NaN
      else if (event === 'work-done' && !Number.isNaN(since)) {
        before += time - since
        since = Number.NaN
      }
    })
    line.simulate('everywhere', 1)
    if (!Number.isNaN(since)) before += 3000 - since
    expect(before).toBeGreaterThan(0)
    expect(counted(3000)).toBeCloseTo(counted(0) - before, 6)
  })
})
