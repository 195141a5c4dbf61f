/** Recorded stretches: what they keep of a shift, by hand and against the line's own count. */
import { describe, expect, it } from 'vitest'
import { Line } from '../../src/line/line.js'
import { loadScenario } from '../../src/scenario/load.js'
import { ordinaryShift, recordStretch } from '../../src/shifts/stretch.js'
import { demos, loadDemo } from '../demo.js'

// a case every 10 s; 6 s on the conveyor, 2 s at the station; after every third one it stands for 40 s
const text = `
cases: {box: {length: 400 mm, width: 300 mm, height: 300 mm}}
arrivals: {table: {time-between: 10 s, when-full: wait}}
line:
  feed: {type: conveyor, length: 3 m, speed: 0.5 m/s, spacing: 100 mm}
  stacker: {type: station, time: 2 s, every: {cases: 3, stop: 40 s}}
shift: {length: 400 s, breaks: [{at: 200 s, for: 100 s}]}
`

const record = (length: number, more = '') => {
  const { scenario } = loadScenario(text + more)
  return recordStretch(new Line(scenario), scenario, 'test', 1, { length })
}

describe('a stretch by hand', () => {
  it('keeps when each case comes to each piece and goes', () => {
    const { cases, states } = record(400)
    expect(cases.slice(0, 4)).toEqual([
      {
        id: 1,
        kind: 0,
        path: [
          [0, 10, 16],
          [1, 16, 18],
        ],
        came: [0, 10],
      },
      {
        id: 2,
        kind: 0,
        path: [
          [0, 20, 26],
          [1, 26, 28],
        ],
        came: [0, 20],
      },
      {
        id: 3,
        kind: 0,
        path: [
          [0, 30, 36],
          [1, 36, 38],
        ],
        came: [0, 30],
      },
      // taken by the station, which stands from 38 to 78 s and then works for 2 s
      {
        id: 4,
        kind: 0,
        path: [
          [0, 40, 46],
          [1, 46, 80],
        ],
        came: [0, 40],
      },
    ])
    expect(states[1]!.slice(0, 8)).toEqual([
      [0, 'waiting'],
      [16, 'working'],
      [18, 'waiting'],
      [26, 'working'],
      [28, 'waiting'],
      [36, 'working'],
      [38, 'planned-stop'],
      [78, 'working'],
    ])
  })

  it('takes the whole of a shorter shift, and says at each instant how many cases are inside', () => {
    const { from, to, held, breaks } = record(1200)
    expect([from, to]).toEqual([0, 400])
    expect(held.slice(0, 7)).toEqual([
      [0, 0],
      [10, 1],
      [18, 0],
      [20, 1],
      [28, 0],
      [30, 1],
      [38, 0],
    ])
    expect(breaks).toEqual([[200, 300]])
  })

  it('lies around the longest queue, with what is on the line then', () => {
    const all = record(400).held
    const most = Math.max(...all.map(([, count]) => count))
    const first = all.find(([, count]) => count === most)![0]
    const { from, to, cases, held, states } = record(100)
    expect((from + to) / 2).toBe(Math.min(Math.max(first, 50), 350))
    expect(Math.max(...held.map(([, count]) => count))).toBe(most)
    expect(held[0]![0]).toBe(from)
    for (const { path } of cases) expect(path.every(([, begin]) => begin <= to)).toBe(true)
    // states reach back to the coming of whoever is on the line at the beginning
    const earliest = Math.min(...cases.map(({ path }) => path[0]![1]))
    for (const each of states) expect(each[0]![0]).toBeLessThanOrEqual(Math.min(earliest, from))
  })

  it('knows nothing of what comes after its end', () => {
    const { to, cases } = record(100)
    const open = cases.filter(({ path }) => path.at(-1)![2] === null)
    expect(open.length).toBeGreaterThan(0)
    for (const { path } of cases) for (const [, , out] of path) expect(out ?? 0).toBeLessThanOrEqual(to)
  })

  it('does not look for the queue in a break', () => {
    const { scenario } = loadScenario(text)
    const { from, to } = recordStretch(new Line(scenario), scenario, 'test', 1, { length: 10 })
    const middle = (from + to) / 2
    expect(middle < 200 || middle >= 300).toBe(true)
  })
})

describe('the shift to record', () => {
  const of = (...outputs: number[]) =>
    ordinaryShift(outputs.map((each) => ({ outputs: Float64Array.of(each) })))

  it('is the one whose output is nearest the median, the first of equals', () => {
    expect(of(5, 9, 7).shift).toBe(3)
    expect(of(1, 2, 3, 10).shift).toBe(2)
    expect(of(4).shift).toBe(1)
    expect(of(5, 9, 7).why).toContain('Shift 3 of 3')
  })

  it('counts all shifts of a campaign', () => {
    const campaigns = [
      [1, 9],
      [4, 4],
      [2, 3],
    ].map((each) => ({ outputs: Float64Array.from(each) }))
    expect(ordinaryShift(campaigns).shift).toBe(2)
  })
})

describe.each(demos)('the stretch of %s', (demo) => {
  it('agrees with the count of the line, and changes nothing of the shift', {
    timeout: 120_000,
  }, async () => {
    const scenario = await loadDemo(demo)
    const line = new Line(scenario)
    const { seed } = scenario.study
    const before = line.simulate(seed, 2)
    const stretch = recordStretch(line, scenario, seed, 2, { length: line.end })
    expect(line.simulate(seed, 2)).toEqual(before)

    const heldAt = (time: number) => stretch.held.findLast(([from]) => from <= time)![1]
    const shift = line.simulateInSteps(seed, 2, 60)
    const wrong: string[] = []
    for (let time = 60; !shift.next().done; time += 60)
      if (heldAt(time) !== line.casesInside)
        wrong.push(`${time}: ${heldAt(time)} and not ${line.casesInside}`)
    expect(wrong.slice(0, 5)).toEqual([])
    for (const { path, came } of stretch.cases) {
      expect(path[0]?.[1] ?? came[1]).toBeGreaterThanOrEqual(came[1])
      for (let index = 1; index < path.length; index++) expect(path[index]![1]).toBe(path[index - 1]![2])
    }
  })
})
