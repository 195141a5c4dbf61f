/** Jams worked by hand, on every kind of equipment that handles cases: where a case jams, what stands, who comes, what is lost. */
import { describe, expect, it } from 'vitest'
import { equipmentMeasures } from '../../src/line/equipment-measures.js'
import { Line } from '../../src/line/line.js'
import { State } from '../../src/line/states.js'
import { loadScenario } from '../../src/scenario/load.js'
import { trial } from '../line/gate.js'
import { into, tell } from '../line/story.js'

const crew = 'crew: {o: {walk: 10 s, does: [jams]}}'
/** Only `bad` jams, and always. */
const cases =
  '{bad: {length: 400 mm, width: 300 mm, height: 300 mm}, good: {length: 400 mm, width: 300 mm, height: 300 mm, jam-factor: 0}}'
const [bad, good] = [0, 1]
const jams = (more = '') => `jams: {chance: 100 %, clear: 60 s${more}}`
const lost = ', case-lost: 100 %'

const run = (line: string, arrivals: [number, number][], rest = crew) =>
  trial({ line, arrivals, cases, rest })
const outs = (log: [number, string][]) => log.filter(([, what]) => what.endsWith('out'))
const ins = (log: [number, string][]) => log.filter(([, what]) => what.endsWith('in')).map(([time]) => time)

describe.each(['accumulating', 'gravity', 'belt'])('a conveyor that is %s, 6 m at 1 m/s', (carries) => {
  const conveyor = (more = '') =>
    `{c: {type: conveyor, carries: ${carries}, length: 6 m, speed: 1 m/s, ${jams(more)}}}`

  it('jams at its end: walk 10 s, clear 60 s, then the case goes on', () => {
    const { log, equipment } = run(conveyor(), [[0, bad]])
    expect(outs(log)).toEqual([[76, 'case 0 out']])
    const [{ stateTimes, stopCounts }] = equipment as [(typeof equipment)[0]]
    expect(stateTimes[State.jamWaiting]).toBeCloseTo(10, 9)
    expect(stateTimes[State.jamClearing]).toBeCloseTo(60, 9)
    expect(stateTimes[State.working]).toBeCloseTo(6, 9)
    expect(stopCounts[0]).toBe(1)
  })

  it('stands with all that is on it, and takes nothing meanwhile', () => {
    const arrivals: [number, number][] = [
      [0, bad],
      [3, good],
      [50, good],
    ]
    const { log } = run(conveyor(), arrivals)
    // the second has 3 m to go when the first jams at 6; the third comes on when it runs again
    expect(outs(log)).toEqual([
      [76, 'case 0 out'],
      [79, 'case 1 out'],
      [82, 'case 1 out'],
    ])
    expect(ins(log)).toEqual([0, 3, 76])
  })

  it('a case that is spoilt is gone when it runs again, and those behind come to the end as they would have', () => {
    const arrivals: [number, number][] = [
      [0, bad],
      [3, good],
      [5, bad],
      [6, good],
    ]
    const { log, equipment, floor } = run(conveyor(lost), arrivals)
    // the third jams at 81, 1 m behind the second; the fourth came on at 76
    expect(outs(log)).toEqual([
      [79, 'case 1 out'],
      [152, 'case 1 out'],
    ])
    expect(equipment[0]!.mechanism.jams!.casesLost).toBe(2)
    // the gate takes none out of the pool
    expect(floor.cases.inUse).toBe(2)
  })

  it('jams once at most, whatever stops it in front', () => {
    const line = `{c: {type: conveyor, carries: ${carries}, length: 6 m, speed: 1 m/s, ${jams()}}}`
    const { log } = trial({ line, cases, rest: crew, arrivals: [[0, bad]], turns: [70, 100] })
    expect(outs(log)).toEqual([[100, 'case 0 out']])
  })
})

/** A case that jams comes at 1 s, one that does not at 2 s. */
const orders =
  '{packer: {orders: [{case: bad, quantity: 1, time-between: 1 s}, {case: good, quantity: 1, time-between: 1 s}]}}'

describe.each([
  ['station', '{p: {type: station, time: 5 s, JAMS}}'],
  ['inspection', '{p: {type: inspect, time: 5 s, JAMS}}'],
  [
    'divert',
    '{p: {type: divert, time: 5 s, to: [a, b], JAMS}, a: {type: station, time: 0 s, to: exit}, b: {type: station, time: 0 s}}',
  ],
])('a piece of kind %s that takes 5 s', (_, line) => {
  const story = (more = '') =>
    tell(
      `cases: ${cases}\narrivals: ${orders}\nline: ${line.replace('JAMS', jams(more))}\nshift: {length: 1000 s}\n${crew}`,
    )

  it('jams at the end of its time, and holds the next one up', () => {
    const told = story()
    expect(into(told, 'out')).toEqual([
      [76, 1],
      [81, 2],
    ])
    expect(into(told, 'p')).toEqual([
      [1, 1],
      [76, 2],
    ])
    expect(told.read('equipment.p.measures.jams')).toBe(1)
    expect(told.read('equipment.p.measures.jams-stop')).toBe(70)
    expect(told.read('equipment.p.measures.cases-lost')).toBe(0)
  })

  it('loses a case that is spoilt', () => {
    const told = story(lost)
    expect(into(told, 'out')).toEqual([[81, 2]])
    expect(told.read('measures.output')).toBe(1)
    expect(told.read('equipment.p.measures.cases-lost')).toBe(1)
  })
})

describe('a station with two places', () => {
  const station = (more = '') => `{p: {type: station, time: 5 s, servers: 2, ${jams(more)}}}`

  it('stands with both: the other case goes on with what was left of its time', () => {
    const { log } = run(station(), [
      [0, bad],
      [2, good],
    ])
    expect(outs(log)).toEqual([
      [75, 'case 0 out'],
      [77, 'case 1 out'],
    ])
  })

  it('two that are done at one instant jam one after the other, each once', () => {
    const { log } = run(station(), [
      [0, bad],
      [0, bad],
    ])
    expect(outs(log)).toEqual([
      [75, 'case 0 out'],
      [145, 'case 0 out'],
    ])
  })

  it('counts no place of a spoilt case as at work', () => {
    const { log, equipment, floor } = run(station(lost), [
      [0, bad],
      [2, good],
    ])
    expect(outs(log)).toEqual([[77, 'case 1 out']])
    expect(equipment[0]!.mechanism.held()).toBe(0)
    const busy = equipmentMeasures(equipment[0]!, floor).find(({ path }) => path.at(-1) === 'utilisation')!
    // 5 s and 5 s of 1000 s at two places
    expect(busy.value()).toBeCloseTo(10 / 1000 / 2, 9)
  })
})

describe('several kinds of jam', () => {
  /** Each strikes every case: the chances are half, and the case jams twice as often. */
  const both = (flap = '', crushed = '') =>
    `{p: {type: station, time: 2 s, jams: {flap: {chance: 50 %, clear: 10 s${flap}}, crushed: {chance: 50 %, clear: 100 s${crushed}}}}}`
  const twice = '{a: {length: 400 mm, width: 300 mm, height: 300 mm, jam-factor: 2}}'
  const crews = 'crew: {operators: {walk: 5 s, does: [jams]}, mechanic: {walk: 60 s, does: [breakdowns]}}'
  const of = (line: string) => trial({ line, cases: twice, rest: crews, arrivals: [[0, 0]] })
  const counted = ({ equipment }: ReturnType<typeof of>) =>
    equipment[0]!.mechanism.jams!.kinds.map(({ name, count, time, wait, casesLost }) => ({
      ...{ name, count, time, wait, casesLost },
    }))

  it('come one after the other, in the order of the file, and are told apart', () => {
    const found = of(both())
    // 2 s, then 5 + 10 s, then 5 + 100 s
    expect(outs(found.log)).toEqual([[122, 'case 0 out']])
    expect(counted(found)).toEqual([
      { name: 'flap', count: 1, time: 15, wait: 5, casesLost: 0 },
      { name: 'crushed', count: 1, time: 105, wait: 5, casesLost: 0 },
    ])
    expect(found.equipment[0]!.stopCounts[0]).toBe(2)
    expect(found.equipment[0]!.stopTimes[0]).toBeCloseTo(120, 9)
  })

  it('a case that the first spoils meets no other', () => {
    const found = of(both(lost))
    expect(outs(found.log)).toEqual([])
    expect(counted(found)).toEqual([
      { name: 'flap', count: 1, time: 15, wait: 5, casesLost: 1 },
      { name: 'crushed', count: 0, time: 0, wait: 0, casesLost: 0 },
    ])
  })

  it('one may be for a crew that does no other jams, with the machine isolated before and after', () => {
    const found = of(both('', ', by: mechanic, isolate: 20 s'))
    // 2 s, 5 + 10 s, then 60 s until the mechanic is there and 20 + 100 + 20 s of work
    expect(outs(found.log)).toEqual([[217, 'case 0 out']])
    expect(counted(found)[1]).toEqual({ name: 'crushed', count: 1, time: 200, wait: 60, casesLost: 0 })
  })
})

describe('streams', () => {
  /** Numbers of the cases that jam as `flap`. */
  function flapsWith(more: string): number[] {
    const text = `cases: {a: {length: 400 mm, width: 300 mm, height: 300 mm}}
arrivals: {p: {time-between: 10 s, when-full: queue}}
line: {p: {type: station, time: 2 s, waiting-room: unlimited, jams: {flap: {chance: 10 %, clear: 1 s}${more}}}}
shift: {length: 10000 s}`
    const line = new Line(loadScenario(text).scenario)
    const found: number[] = []
    line.observe(({ event, jam, case: item }) => {
      if (event === 'jams' && jam === 'flap') found.push(item!)
    })
    line.simulate('jams', 1)
    return found
  }

  it('another kind changes no draw of a kind', () => {
    const alone = flapsWith('')
    expect(alone.length).toBeGreaterThan(50)
    expect(flapsWith(', crushed: {chance: 20 %, clear: {exponential: {mean: 2 s}}}')).toEqual(alone)
  })
})
