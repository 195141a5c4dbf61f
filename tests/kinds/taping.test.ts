/** Tape on the floor, worked by hand: running out unnoticed, changing early, breaks, standing under a head. */
import { describe, expect, it } from 'vitest'
import type { Sealer } from '../../src/kinds/sealer/model.js'
import { State } from '../../src/line/states.js'
import { trial } from '../line/gate.js'
import { simulate } from '../line/shift.js'

// belts of 1.9 m at 0.4 m/s, one head at 1.2 m: 3 s to the head, 4.75 s to the end; gap 0.35 m: headway 1.875 s
const sealer = (more: string) =>
  `{s: {type: sealer, belt-speed: 24 m/min, minimum-gap: 350 mm, heads: {top: {}}, ${more}}}`
const outs = (log: [number, string][]) => log.filter(([, what]) => what.endsWith('out')).map(([time]) => time)
const four: [number, number][] = [
  [0, 0],
  [0, 0],
  [0, 0],
  [0, 0],
]

describe('a roll that runs out', () => {
  const roll = 'tape: {roll: 1 m, lost-per-roll: 0 m, stretch: 0 %}'

  it('unnoticed lets two cases pass, then is changed before the next', () => {
    const line = sealer('roll-change: {time: 30 s, low-tape-warning: none, noticed-after: 2}')
    const { log, equipment, floor } = trial({ line, rest: roll, arrivals: four })
    // one strip of 0.54 m is on the roll; the fourth case meets the head at 5.625 + 3 s
    expect(outs(log)).toEqual([4.75, 6.625, 8.5, 40.375])
    const [head] = (equipment[0]!.mechanism as Sealer).heads
    expect([head!.strips, head!.missed, head!.changes]).toEqual([2, 2, 1])
    expect([...floor.cases.unsealed.subarray(0, 4)]).toEqual([0, 1, 1, 0])
  })

  it('and its unsealed cases are no good cases: they escape', () => {
    const text = `cases: {a: {length: 400 mm, width: 300 mm, height: 300 mm}}
arrivals: {p: {time-between: 10 s}}
line: ${sealer('roll-change: {time: 30 s, low-tape-warning: none, noticed-after: 2}')}
${roll}
shift: {length: 46 s}`
    // four come at 10 to 40 s: the first and the fourth would be good, the fourth waits for its roll
    const read = simulate(text)
    expect([read('measures.output'), read('measures.unsealed')]).toEqual([1, 2])
  })

  it('with a warning is changed once the machine is empty', () => {
    const line = sealer('roll-change: {time: 30 s, low-tape-warning: 1.2 m, change: at-warning-when-idle}')
    const rest = 'tape: {roll: 2 m, lost-per-roll: 0 m, stretch: 0 %}'
    const { log, equipment } = trial({
      line,
      rest,
      arrivals: [
        [0, 0],
        [20, 0],
        [30, 0],
      ],
    })
    // after the second strip 0.92 m are left; the machine is empty at 24.75 s and stands to 54.75 s
    expect(outs(log)).toEqual([4.75, 24.75, 59.5])
    expect((equipment[0]!.mechanism as Sealer).heads[0]!.lost).toBeCloseTo(0.92, 9)
  })

  it('is changed when a break begins, before the crew goes', () => {
    const text = `cases: {a: {length: 400 mm, width: 300 mm, height: 300 mm}}
arrivals: {p: {time-between: 20 s}}
line: ${sealer('roll-change: {time: 30 s, low-tape-warning: 1.2 m, change: at-break}')}
tape: {roll: 2 m, lost-per-roll: 0 m, stretch: 0 %}
shift: {length: 100 s, breaks: [{at: 50 s, for: 40 s}]}`
    const read = simulate(text)
    expect(read('equipment.s.measures.roll-changes')).toBe(1)
    expect(read('equipment.s.states.tape-being-changed')).toBeCloseTo(0.3, 9)
    // away only from 80 to 90 s
    expect(read('crew.operators.busy')).toBeCloseTo(30 / 90, 9)
  })
})

describe('tape that breaks', () => {
  it('spoils its strip, stands for the fix, and lays the strip again', () => {
    const line = sealer('tape-breaks: {chance: 30 %, fix: 20 s}')
    const arrivals = Array.from({ length: 30 }, (_, index): [number, number] => [index * 10, 0])
    const { equipment, log } = trial({ line, rest: 'tape: {stretch: 0 %}', arrivals, until: 5000 })
    const [head] = (equipment[0]!.mechanism as Sealer).heads
    expect(outs(log)).toHaveLength(30)
    expect(head!.strips).toBe(30)
    expect(head!.breaks).toBeGreaterThan(0)
    expect(head!.spoilt).toBeCloseTo(head!.breaks * 0.54, 9)
    expect(equipment[0]!.stateTimes[State.tapeChanging]).toBeCloseTo(head!.breaks * 20, 9)
    expect(head!.imbalance()).toBeCloseTo(0, 9)
  })
})

describe('a case that stands under a head', () => {
  it('needs taping again; one that has passed it or not come to it does not', () => {
    // gap 0.1 + 0.4 x 0.45 = 0.28 m: the second case enters 0.68 m behind. When the first stands at the end of the belts the
    // second is 0.02 m past the head, the third 0.66 m before it
    const line = sealer('dwell-spoils: 100 %').replace('350 mm', '200 mm')
    const { floor } = trial({ line, arrivals: four.slice(0, 3), turns: [4, 10] })
    expect([...floor.cases.unsealed.subarray(0, 3)]).toEqual([0, 1, 0])
  })
})
