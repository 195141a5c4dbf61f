/** Stops as a plant logged them, by hand: what a piece puts out that stands at their times. */
import { describe, expect, it } from 'vitest'
import { Line } from '../../src/line/line.js'
import type { ShiftEvent } from '../../src/line/shift-event.js'
import { loadScenario } from '../../src/scenario/load.js'
import type { LoggedKind, RecordedStops } from '../../src/scenario/recorded-stops.js'

/** An hour at a station of 60 s a case, which never waits for cases: 60 of them. */
const station = (more = '', shift = '') => `cases: {a: {length: 400 mm, width: 300 mm, height: 300 mm}}
arrivals: {packing: {rate: 2 cases/min, when-full: queue}}
line: {packer: {type: station, time: 60 s${more}}}
shift: {length: 60 min, start-up: 0 s${shift}}
`

type Stop = [begins: number, ends: number, kind?: LoggedKind]

const stopsOf = (instead: LoggedKind[], stops: readonly Stop[]): RecordedStops => ({
  instead,
  begins: stops.map(([begins]) => begins),
  ends: stops.map(([, ends]) => ends),
  kinds: stops.map(([, , kind = 'breakdowns']) => kind),
})

const lineOf = (text: string, recordedStops: Record<string, RecordedStops>) =>
  new Line({ ...loadScenario(text).scenario, recordedStops })

/** Good cases of a shift with these stops of the first piece. */
const good = (text: string, ...stops: Stop[]): number =>
  lineOf(text, { packer: stopsOf(['breakdowns'], stops) }).simulate('s', 1).outputs[0]!

// cases come from 30 s on: the first is done at 90 s, and one each minute after it
const whole = 59

describe('a station of 60 s a case', () => {
  it('puts out 59 cases in an hour without stops', () => {
    expect(good(station())).toBe(whole)
  })

  it.each<[string, Stop[], number]>([
    ['ten minutes at the end of a case', [[630, 1230]], 10],
    ['ten minutes in the middle of a case, which is finished with what was left', [[600, 1200]], 10],
    [
      'two that follow upon one another, as one',
      [
        [630, 900],
        [900, 1230, 'jams'],
      ],
      10,
    ],
    [
      'two apart',
      [
        [630, 930],
        [1500, 1800],
      ],
      10,
    ],
    ['half a minute: the last case is done at the end', [[630, 660]], 0],
    ['a second more', [[630, 661]], 1],
    ['one that lasts to the end of the shift and beyond it', [[3000, 4200]], 10],
    [
      'one that lies beyond the end',
      [
        [3600, 4200],
        [4300, 4400],
      ],
      0,
    ],
    ['the whole shift', [[0, 3600]], whole],
  ])('loses with %s', (_, stops, lost) => {
    expect(good(station(), ...stops)).toBe(whole - lost)
  })

  it('has the stop across a break for as long as it was, whoever rests', () => {
    const breaks = ', breaks: [{at: 30 min, for: 10 min}]'
    const queue = ', waiting-room: unlimited'
    // a machine with cases before it runs on in the break, and stands for 20 minutes
    expect(good(station(queue, breaks))).toBe(whole)
    expect(good(station(queue, breaks), [1530, 2730])).toBe(whole - 20)
    // people have done 25 cases by 1530 s, and from 2700 s on 15 more; without the stop 29 by 1770 s, and from 2430 s on 20
    const manual = station(`${queue}, run-by: people`, breaks)
    expect(good(manual)).toBe(49)
    expect(good(manual, [1530, 2700])).toBe(40)
  })

  it('is told to stand in the state of the cause, and the balance of its time closes', () => {
    const line = lineOf(station(), {
      packer: stopsOf(
        ['breakdowns', 'every'],
        [
          [600, 700],
          [700, 800, 'every'],
        ],
      ),
    })
    const told: [number, string][] = []
    line.observe(({ event, time, state }: ShiftEvent) => {
      if (event === 'state' && time >= 600 && time <= 800) told.push([time, state!])
    })
    line.simulate('s', 1)
    expect(told).toEqual([
      [600, 'breakdown-being-repaired'],
      [700, 'planned-stop'],
      [800, 'working'],
    ])
  })
})

describe('stops that laws bring', () => {
  const sealer = (more: string) => `cases: {a: {length: 400 mm, width: 300 mm, height: 300 mm}}
arrivals: {packing: {rate: 6 cases/min, when-full: wait}}
line: {sealer: {type: sealer${more}}}
crew: {operator: {people: 1, walk: 30 s, does: [jams, breakdowns, roll-change, blade, size-setting]}}
tape: {roll: 50 m}
shift: {length: 60 min}
`
  const outputs = (text: string, instead: LoggedKind[]) =>
    Array.from(
      { length: 3 },
      (_, index) => lineOf(text, { sealer: stopsOf(instead, []) }).simulate('s', index + 1).outputs[0]!,
    )
  const jams = ', jams: {chance: 20 %, clear: 60 s}'
  const failing = ', breakdowns: {after: 5 min, repair: 5 min}'
  const every: LoggedKind[] = ['jams', 'breakdowns', 'roll-change', 'tape-breaks', 'blade', 'size-setting']

  it('take no time and nobody where the log has all of them', () => {
    const free = outputs(sealer(''), ['roll-change'])
    expect(outputs(sealer(jams + failing), every)).toEqual(free)
    // a roll of 50 m lasts some 50 cases
    expect(outputs(sealer(''), [])[0]).toBeLessThan(free[0]!)
  })

  it('of other causes come as ever', () => {
    const line = sealer(jams + failing)
    expect(outputs(line, ['breakdowns', 'roll-change'])).toEqual(
      outputs(sealer(jams), ['breakdowns', 'roll-change']),
    )
    expect(outputs(line, ['jams', 'roll-change'])).toEqual(outputs(sealer(failing), ['jams', 'roll-change']))
    expect(outputs(line, ['jams'])[0]).toBeLessThan(outputs(line, ['jams', 'breakdowns'])[0]!)
  })

  it('and one that lasts goes on beside a stop of the log', () => {
    // a breakdown begins after 5 min at work; its 10 min lie within a stop of the log, or overlap it by half
    const text = station(', breakdowns: {after: 300 s, repair: 600 s}', '').replace('60 min', '20 min')
    const of = (...stops: Stop[]) =>
      lineOf(text, { packer: stopsOf(['jams'], stops) }).simulate('s', 1).outputs[0]!
    // 30 s to 330 s at work: cases at 90, ... 330; on from 930 s, with the case that was begun: 990, 1050, 1110, 1170
    expect(of()).toBe(9)
    expect(of([400, 700, 'jams'])).toBe(9)
    // until 1050 s: then 1110 and 1170
    expect(of([630, 1050, 'jams'])).toBe(7)
  })
})
