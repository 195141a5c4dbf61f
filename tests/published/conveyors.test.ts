/** Conveyors by hand: free travel, rates, and queues that form and dissolve. */
import { describe, expect, it } from 'vitest'
import type { RunResult } from '../../src/questions/run/document.js'
import { type Parts, simulate } from './run.js'

/** 6 m at 0.5 m/s: 12 s of free travel. Cases are 400 mm long where nothing else is said. */
const conveyor = (carries: string, spacing: string, more = '') =>
  `infeed: {type: conveyor, carries: ${carries}, length: 6 m, speed: 30 m/min, spacing: ${spacing}${more}}`

const run = (parts: Omit<Parts, 'shifts'>): Promise<RunResult> => simulate({ ...parts, shifts: 2 })
const everySeconds = (seconds: number | string) => `{packing: {time-between: ${seconds} s, when-full: wait}}`

describe.each(['accumulating', 'belt'])('%s conveyor with a free exit', (carries) => {
  it('one case takes length over speed', async () => {
    const result = await run({
      arrivals: everySeconds(100),
      line: `{${conveyor(carries, '20 mm')}}`,
      length: '150 s',
    })
    expect(result.outputs).toEqual([1, 1])
    expect(result.measures['time-in-system']!.mean).toBeCloseTo(12, 9)
    expect(result.equipment.infeed!.measures.held!.mean).toBeCloseTo(12 / 150, 9)
    expect(result.equipment.infeed!.states.working!.mean).toBeCloseTo(12 / 150, 9)
  })

  it('cases at a steady rate: held = rate x time (Little)', async () => {
    // 100 cases, every 4 s; the 97th is out as the shift ends, two more have been aboard for 8 and 4 s, one
    // for none
    const result = await run({
      arrivals: everySeconds(4),
      line: `{${conveyor(carries, '20 mm')}}`,
      length: '400 s',
    })
    expect(result.outputs).toEqual([97, 97])
    expect(result.measures['time-in-system']!.mean).toBeCloseTo(12, 9)
    expect(result.equipment.infeed!.measures.held!.mean).toBeCloseTo((97 * 12 + 8 + 4) / 400, 9)
    expect(result.equipment.infeed!.measures['held-largest']!.mean).toBe(3)
  })

  it('a second conveyor adds its own time', async () => {
    const line = `{${conveyor(carries, '20 mm')}, outfeed: {type: conveyor, length: 3 m, speed: 20 m/min}}`
    const result = await run({ arrivals: everySeconds(4), line, length: '400 s' })
    expect(result.measures['time-in-system']!.mean).toBeCloseTo(12 + 9, 9)
  })
})

describe('an exit that is shut for a minute: people rest from 30 s to 90 s', () => {
  // Cases come every second up to 30 s, again from 91 s, 60 in all. Cases 1 to 17 are out 12.1 s after they
  // came; 18 is at the station when the break begins and out at 90.1 s; 19 to 30 stand behind it. The first
  // of them leaves the conveyor at 90.1 s and each other one when it has moved up: (length + spacing) / speed
  // + start delay after its leader, by the car-following rule of Newell, Transportation Research B 36 (2002)
  // 195-205. On a belt they keep the second between them. Cases 31 to 60 come through freely.
  const table = 'table: {type: station, time: 0.1 s, run-by: people}'
  const behind = (headway: number) =>
    Array.from({ length: 12 }, (_, place) => 90.2 + place * headway - (19 + place))
  const meanOf = (headway: number) =>
    (47 * 12.1 + 72.1 + behind(headway).reduce((sum, stay) => sum + stay, 0)) / 60
  it.each([
    { carries: 'accumulating', delay: 0, headway: 0.84 },
    { carries: 'accumulating', delay: 0.1, headway: 0.94 },
    { carries: 'belt', delay: 0, headway: 1 },
  ])('$carries, start delay $delay s: one every $headway s', async ({ carries, delay, headway }) => {
    const result = await run({
      arrivals: everySeconds(1),
      line: `{${conveyor(carries, '20 mm', `, start-delay: ${delay} s`)}, ${table}}`,
      length: '120 s',
      shift: 'breaks: [{at: 30 s, for: 60 s}], run-out: 60 s',
    })
    expect(result.outputs).toEqual([60, 60])
    expect(result.measures['time-in-system']!.mean).toBeCloseTo(meanOf(headway), 6)
    expect(result.arrivals.packing!.blocked!.mean).toBe(0)
  })
})

describe('a station of 6 s behind, cases every 4 s', () => {
  it('accumulating conveyor', async () => {
    // case 1 is at the end at 16 s and done at 22 s, case 2 at 20 s, case 3 at 24 s, case 4 not before 28.84
    // s, 0.84 s after case 3 has left: from 28 s on the conveyor moves for 0.84 s of 6 s, twelve times
    const line = `{${conveyor('accumulating', '20 mm')}, loader: {type: station, time: 6 s}}`
    const result = await run({ arrivals: everySeconds(4), line, length: '100 s' })
    const { states } = result.equipment.infeed!
    expect(states.waiting!.mean).toBeCloseTo(4 / 100, 9)
    expect(states.working!.mean).toBeCloseTo((16 + 2 + 12 * 0.84) / 100, 9)
    expect(states.blocked!.mean).toBeCloseTo((2 + 4 + 12 * 5.16) / 100, 9)
    expect(result.equipment.loader!.states.working!.mean).toBeCloseTo(84 / 100, 9)
    expect(result.outputs).toEqual([14, 14])
  })

  it('belt conveyor', async () => {
    // the belt stands from 20 s to 22 s, when case 1 leaves the station, and from then on for 2 s of 6 s; the
    // packers, who bring a case every 4 s of belt time, wait as long. Cases are 2 m apart, so three ride from
    // 12 s on.
    const line = `{${conveyor('belt', '200 mm')}, loader: {type: station, time: 6 s}}`
    const result = await run({ arrivals: everySeconds(4), line, length: '100 s' })
    const { states, measures } = result.equipment.infeed!
    expect(states.blocked!.mean).toBeCloseTo(28 / 100, 9)
    expect(states.working!.mean).toBeCloseTo(68 / 100, 9)
    expect(result.arrivals.packing!.blocked!.mean).toBeCloseTo(28 / 100, 9)
    expect(measures['share-full']!.mean).toBeCloseTo(28 / 100, 9)
    expect(measures.held!.mean).toBeCloseTo((4 + 2 * 4 + 3 * 88) / 100, 9)
    // the stays grow from 18 s by 2 s to 26 s, where they remain
    expect(result.measures['time-in-system']!.mean).toBeCloseTo((18 + 20 + 22 + 24 + 10 * 26) / 14, 9)
  })

  it('the packers stand for a third of the time in the long run', async () => {
    const line = `{${conveyor('accumulating', '20 mm')}, loader: {type: station, time: 6 s}}`
    const result = await run({ arrivals: everySeconds(4), line, length: '100 h' })
    // a case every 6 s from 22 s on
    expect(result.outputs[0]).toBe(Math.floor((360_000 - 22) / 6) + 1)
    // it takes 152 s until the conveyor is full for the first time
    expect(result.arrivals.packing!.blocked!.mean).toBeCloseTo(1 / 3, 3)
  })
})
