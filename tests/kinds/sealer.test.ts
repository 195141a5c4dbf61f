/** The sealer worked by hand: headway, folding, jams, rolls, sizes, blade. */
import { describe, expect, it } from 'vitest'
import type { Sealer } from '../../src/kinds/sealer/model.js'
import { State } from '../../src/line/states.js'
import { trial } from '../line/gate.js'

// belts of 1.9 m at 0.4 m/s: 4.75 s from end to end; heads at 0.9 and 1.2 m; case 0.4 m, gap 0.3 m: headway 1.75 s
const sealer = (more = '') => `{s: {type: sealer, belt-speed: 24 m/min, minimum-gap: 300 mm${more}}}`
const noLoss = 'tape: {lost-per-roll: 0 m, stretch: 0 %}'
const outs = (log: [number, string][]) => log.filter(([, what]) => what.endsWith('out')).map(([time]) => time)

describe('sealer', () => {
  it('lets cases follow at the headway (0.4 + 0.3) / 0.4 = 1.75 s', () => {
    const { log, equipment } = trial({
      line: sealer(),
      arrivals: [
        [0, 0],
        [0, 0],
        [0, 0],
      ],
    })
    expect(outs(log)).toEqual([4.75, 6.5, 8.25])
    // the flap place is free again when its case is on the belts
    expect(log.filter(([, what]) => what.endsWith('in')).map(([time]) => time)).toEqual([0, 0, 1.75])
    expect(equipment[0]!.stateTimes[State.working]).toBeCloseTo(3 * 1.75, 9)
  })

  it('folds while the case before is being taped', () => {
    const { log, equipment } = trial({
      line: sealer(', flaps: {time: 0.8 s}'),
      arrivals: [
        [0, 0],
        [0, 0],
      ],
    })
    // on the belts at 0.8 and at 0.8 + 1.75
    expect(outs(log)).toEqual([5.55, 7.3])
    expect(equipment[0]!.stateTimes[State.working]).toBeCloseTo(0.8 + 1.75 + 1.75, 9)
  })

  it('needs more gap where an arm swings back slowly: 0.1 + 0.4 x 1 s = 0.5 m, headway 2.25 s', () => {
    const heads = ', heads: {top: {cut: {wipe-travel: 100 mm, reset: 1 s}}}'
    expect(
      outs(
        trial({
          line: sealer(heads),
          arrivals: [
            [0, 0],
            [0, 0],
          ],
        }).log,
      ),
    ).toEqual([4.75, 7])
  })

  it('stands for a jam at the first head: walk 10 s, clear 60 s, then the rest of the way', () => {
    const line = sealer(', jams: {chance: 100 %, clear: 60 s}')
    const { log, equipment } = trial({
      line,
      rest: 'crew: {o: {walk: 10 s, does: [jams, roll-change]}}',
      arrivals: [[0, 0]],
    })
    // at the first head after 0.9 / 0.4 = 2.25 s
    expect(outs(log)).toEqual([74.75])
    expect(equipment[0]!.stateTimes[State.jamWaiting]).toBeCloseTo(10, 9)
    expect(equipment[0]!.stateTimes[State.jamClearing]).toBeCloseTo(60, 9)
  })

  it('takes a spoilt case out: it never comes, and no tape lies on it', () => {
    const line = sealer(', jams: {chance: 100 %, clear: 60 s, case-lost: 100 %}')
    const { log, equipment, floor } = trial({
      line,
      arrivals: [
        [0, 0],
        [0, 0],
      ],
    })
    expect(outs(log)).toEqual([])
    const { heads, jams } = equipment[0]!.mechanism as Sealer
    expect(jams!.casesLost).toBe(2)
    expect(heads.map((head) => head.strips)).toEqual([0, 0])
    expect(floor.cases.inUse).toBe(0)
  })

  it('changes a roll before the case that it cannot finish, head by head', () => {
    const line = '{s: {type: sealer, belt-speed: 24 m/min, minimum-gap: 350 mm, roll-change: {time: 30 s}}}'
    const rest = 'tape: {roll: 1 m, leg: 70 mm, lost-per-roll: 0 m, stretch: 0 %}'
    const { log, equipment } = trial({
      line,
      rest,
      arrivals: [
        [0, 0],
        [0, 0],
      ],
    })
    // the second case enters at 0.75 m of travel. At 1.65 m (4.125 s) the bottom roll has 0.46 m for 0.54 m: 30 s.
    // The first case leaves at 1.90 m: 34.125 + 0.625. At 1.95 m the top roll: 30 s more. Out at 2.65 m.
    expect(outs(log)).toEqual([34.75, 66.625])
    const { heads } = equipment[0]!.mechanism as Sealer
    expect(heads.map((head) => [head.name, head.changes, head.strips])).toEqual([
      ['bottom', 1, 2],
      ['top', 1, 2],
    ])
    expect(heads[0]!.lost).toBeCloseTo(0.46, 9)
    expect(heads[0]!.imbalance()).toBeCloseTo(0, 9)
  })

  it('draws less off the roll when it stretches the tape', () => {
    const { equipment } = trial({ line: sealer(), rest: 'tape: {stretch: 8 %}', arrivals: [[0, 0]] })
    expect((equipment[0]!.mechanism as Sealer).heads[0]!.laid).toBeCloseTo(0.54 / 1.08, 12)
  })

  const twoKinds =
    '{a: {length: 400 mm, width: 1 m, height: 1 m}, b: {length: 400 mm, width: 1 m, height: 1 m}}'

  it('sets itself for another size in 3 s once the headway is over', () => {
    const line = sealer(', size-setting: {by: machine, time: 3 s}')
    const { log, equipment } = trial({
      cases: twoKinds,
      line,
      arrivals: [
        [0, 0],
        [0, 1],
        [0, 1],
      ],
    })
    // b enters at 1.75 + 3, the next b at one headway later
    expect(outs(log)).toEqual([4.75, 9.5, 11.25])
    expect(equipment[0]!.stateTimes[State.sizeSetting]).toBeCloseTo(3, 9)
  })

  it('set by hand runs empty first: the crew begins when the last case is off the belts', () => {
    const line = sealer(', size-setting: {by: crew, time: 20 s}')
    const { log, equipment } = trial({
      cases: twoKinds,
      line,
      rest: noLoss,
      arrivals: [
        [0, 0],
        [0, 1],
      ],
    })
    expect(outs(log)).toEqual([4.75, 4.75 + 20 + 4.75])
    expect(equipment[0]!.stateTimes[State.sizeSetting]).toBeCloseTo(20, 9)
  })

  it('services the blade after its cuts', () => {
    const line = sealer(', heads: {top: {}}, blade: {service-after: 2 cuts, time: 100 s}').replace(
      '300 mm',
      '350 mm',
    )
    const { log, equipment } = trial({
      line,
      arrivals: [
        [0, 0],
        [0, 0],
        [0, 0],
      ],
    })
    // cases enter at 0, 0.75 and 1.5 m of travel; the third meets the head at 2.7 m, 6.75 s, when the second has left
    expect(outs(log)).toEqual([4.75, 6.625, 108.5])
    expect(equipment[0]!.stateTimes[State.blade]).toBeCloseTo(100, 9)
  })

  it('stands blocked while its exit is shut, and goes on from there', () => {
    const { log, equipment } = trial({
      line: sealer(),
      arrivals: [
        [0, 0],
        [0, 0],
      ],
      turns: [1, 10],
    })
    expect(outs(log)).toEqual([10, 11.75])
    expect(equipment[0]!.stateTimes[State.blocked]).toBeCloseTo(10 - 4.75, 9)
  })
})
