/** Cases that lie on two pieces while they cross, worked by hand from the rules of `line/tail`: each log is all that happens. */
import { describe, expect, it } from 'vitest'
import { State } from '../../src/line/states.js'
import { trial } from '../line/gate.js'

// 600 mm cases, conveyors of 1 m at 0.5 m/s: 2 s from end to end
const cases = '{a: {length: 600 mm, width: 300 mm, height: 300 mm}}'
const roller = 'type: conveyor, length: 1 m, speed: 30 m/min, spacing: 0 mm'
const belt = `${roller}, carries: belt`
const at = (...times: number[]): [number, number][] => times.map((time) => [time, 0])

describe('two accumulating conveyors of 1 m', () => {
  it('hold three cases of 600 mm as one of 2 m does: the second stands across the joint', () => {
    const log = [
      [0, 'case 0 in'],
      [3, 'case 0 in'],
      // stands 1.2 m behind the end, on the first conveyor; 0.2 m are left behind it
      [6, 'case 0 in'],
      [50, 'case 0 out'],
      // it moved up by 0.6 m: 0.8 m are free to its tail, but the fourth is taken as the first leaves, for then it fits
      [50, 'case 0 in'],
      [51.2, 'case 0 out'],
      [52.4, 'case 0 out'],
      [54, 'case 0 out'],
    ]
    const [arrivals, turns] = [at(0, 3, 6, 9), [1, 50]]
    expect(trial({ cases, line: `{p: {${roller}}, q: {${roller}}}`, arrivals, turns }).log).toEqual(log)
    const one = `{p: {${roller.replace('1 m', '2 m')}}}`
    expect(trial({ cases, line: one, arrivals, turns }).log).toEqual(log)
  })

  it('close up across the joint when it is the second that has broken down', () => {
    // the second stands from 3 to 13 s; the first case is 0.5 m in then, with 0.1 m of its tail behind the joint. The next,
    // 0.7 m behind, comes to that tail at 3.2 s and waits 0.9 m in: it crosses when the first has gone 0.6 m, at 13.2 s
    const fails = ', breakdowns: {after: 3 s, counted-in: calendar-time, repair: 10 s}'
    const line = `{p: {${roller}}, q: {${roller}${fails}}}`
    const { log } = trial({ cases, line, arrivals: at(0, 1.4), until: 15.5 })
    expect(log).toEqual([
      [0, 'case 0 in'],
      [1.4, 'case 0 in'],
      [14, 'case 0 out'],
      [15.2, 'case 0 out'],
    ])
  })
})

describe('a belt', () => {
  it('stands with the belt ahead while it holds a tail, and runs again with it', () => {
    // at 4 s the first comes to the shut gate; the second, 0.7 m behind, is 0.3 m over the joint; the third stays 0.5 m in
    const line = `{p: {${belt}}, q: {${belt}}}`
    const { log, equipment } = trial({ cases, line, arrivals: at(0, 1.4, 3), turns: [1, 20] })
    expect(log).toEqual([
      [0, 'case 0 in'],
      [1.4, 'case 0 in'],
      [3, 'case 0 in'],
      [20, 'case 0 out'],
      [21.4, 'case 0 out'],
      [23, 'case 0 out'],
    ])
    for (const piece of equipment) expect(piece.stateTimes[State.blocked]).toBeCloseTo(16, 9)
  })

  it('stands while a case ahead has closed up and its tail lies on it', () => {
    // the second crosses at 3.5 s and stands behind the first at 4.3 s, 0.4 m over the joint; the third is 0.65 m in
    const line = `{p: {${belt}}, q: {${roller}}}`
    const { log, equipment } = trial({ cases, line, arrivals: at(0, 1.5, 3), turns: [1, 20] })
    expect(log.slice(3)).toEqual([
      [20, 'case 0 out'],
      [21.2, 'case 0 out'],
      [22.7, 'case 0 out'],
    ])
    expect(equipment[0]!.stateTimes[State.blocked]).toBeCloseTo(20 - 4.3, 9)
  })

  it('keeps to the pace of a slower one ahead from when the next case touches the tail', () => {
    // ahead 0.25 m/s. The first crosses at 2 s and has crossed at 4.4 s. The second, 0.8 m behind, touches it at 2.8 s; from
    // then until 4.4 s the belt runs half as fast, and stands until 4.8 s, when the entrance ahead is clear by 0.1 m more
    const slow = belt.replace('30 m/min', '15 m/min').replace('spacing: 0 mm', 'spacing: 100 mm')
    const line = `{p: {${belt}}, q: {${slow}}}`
    const { log, equipment } = trial({ cases, line, arrivals: at(0, 1.6, 3.2) })
    expect(log.filter(([, what]) => what.endsWith('in')).map(([time]) => time)).toEqual([0, 1.6, 3.2])
    // the third comes when the second has gone 0.6 + 0.1 m. So it is 0.1 m behind its tail at 4.8 s and touches it at 5.2 s,
    // is at the end at 7.2 s and stands there until 7.6 s
    expect(equipment[0]!.stateTimes[State.blocked]).toBeCloseTo(0.4 + 0.4, 9)
    expect(log.filter(([, what]) => what.endsWith('out')).map(([time]) => time)).toEqual([6, 8.8, 11.6])
  })
})

describe('a sealer', () => {
  // belts of 1.9 m at 0.4 m/s, the first head at 0.9 m; cases of 400 mm; what follows runs at 0.5 m/s
  const sealer = 'type: sealer, belt-speed: 24 m/min, minimum-gap: 300 mm'
  const rest = 'crew: {o: {walk: 0 s, does: [jams, roll-change, size-setting]}}'

  it.each(['accumulating', 'belt'])('holds a case that it has not let go of: %s ahead slips', (carries) => {
    const after = `{type: conveyor, carries: ${carries}, length: 2 m, speed: 30 m/min}`
    const line = `{s: {${sealer}, jams: {chance: 100 %, clear: 60 s}}, q: ${after}}`
    const { log } = trial({ line, rest, arrivals: at(0, 63) })
    // the first jams at 2.25 s, moves on at 62.25 s and crosses at 64.75 s. The second, 1.2 m behind, jams at 65.25 s: the
    // first stands 0.25 m over the joint until 125.25 s, and has 1.75 m to go: 3.5 s. The second has 1 m of belts: 2.5 s,
    // and 4 s more
    expect(log.filter(([, what]) => what.endsWith('out')).map(([time]) => time)).toEqual([128.75, 131.75])
  })

  it('stands while its last case stands half out', () => {
    // 1 m ahead for cases of 400 mm, no spacing: the first is at the shut gate, the second behind it, the third 0.2 m over the
    // joint. They come 2 s apart, cross at 4.75, 6.75 and 8.75 s, and the third stands from 9.15 s on
    const after = '{type: conveyor, length: 1 m, speed: 30 m/min, spacing: 0 mm}'
    const line = `{s: {${sealer}}, q: ${after}}`
    const { log, equipment } = trial({ line, rest, arrivals: at(0, 2, 4), turns: [1, 100] })
    expect(equipment[0]!.stateTimes[State.blocked]).toBeCloseTo(100 - 9.15, 9)
    expect(log.filter(([, what]) => what.endsWith('out')).map(([time]) => time)).toEqual([100, 100.8, 101.6])
  })

  it('set by hand waits until the tail of the last case is out', () => {
    const two = '{a: {length: 400 mm, width: 1 m, height: 1 m}, b: {length: 400 mm, width: 1 m, height: 1 m}}'
    const after = '{type: conveyor, length: 2 m, speed: 30 m/min}'
    const line = `{s: {${sealer}, size-setting: {by: crew, time: 20 s}}, q: ${after}}`
    const arrivals: [number, number][] = [
      [0, 0],
      [0, 1],
    ]
    const { log } = trial({ cases: two, line, rest, arrivals })
    // crosses from 4.75 to 5.55 s; set from then to 25.55 s; 4.75 s on the belts and 4 s on the conveyor
    expect(log.slice(2)).toEqual([
      [8.75, 'case 0 out'],
      [34.3, 'case 1 out'],
    ])
  })
})
