/**
 * How many cases a conveyor holds and passes, and how they start one after the other, by the kinematics of
 * traffic.
 */
import { describe, expect, it } from 'vitest'
import { simulate } from './run.js'

const packed = '{packing: {time-between: 10 ms, when-full: wait}}'
const gate = 'gate: {type: station, time: 1000 h}'
const loader = 'loader: {type: station, time: 6 s}'

const infeed = (metres: number, more: string) =>
  `infeed: {type: conveyor, length: ${metres} m, speed: 30 m/min, ${more}}`

describe('cases on a conveyor whose exit is shut', () => {
  // coming one by one, as many as fit with their spacing: floor((length + spacing) / (case + spacing)). In a flow as dense
  // as it can be, as many as ride when the exit shuts, floor(length / pitch) + 1, the last across the entrance; derived
  it.each([
    { metres: 6, delay: 0, apart: '2 s', most: 14 },
    { metres: 5.86, delay: 0, apart: '2 s', most: 14 },
    { metres: 5.85, delay: 0, apart: '2 s', most: 13 },
    { metres: 5.86, delay: 0.3, apart: '2 s', most: 14 },
    { metres: 6, delay: 0, apart: '10 ms', most: 15 },
    { metres: 5.85, delay: 0, apart: '10 ms', most: 14 },
  ])(
    '$metres m, start delay $delay s, $apart apart: $most of 400 mm, 20 mm apart',
    async ({ metres, delay, apart, most }) => {
      const result = await simulate({
        arrivals: packed.replace('10 ms', apart),
        line: `{${infeed(metres, `spacing: 20 mm, start-delay: ${delay} s`)}, ${gate}}`,
        length: '1 h',
        shifts: 2,
      })
      const pitches = apart === '2 s' ? (metres + 0.02) / 0.42 : metres / 0.42 + 1
      expect(Math.floor(pitches + 1e-9)).toBe(most)
      expect(result.equipment.infeed!.measures['held-largest']!.mean).toBe(most)
    },
  )

  it('a belt stops with what rides on it: floor(length / pitch) + 1', async () => {
    // the first case goes into the gate, the second stops the belt when the last one has come 0.5 m: 9.8
    // pitches
    const result = await simulate({
      arrivals: packed,
      line: `{${infeed(5.9, 'spacing: 200 mm, carries: belt')}, ${gate}}`,
      length: '1 h',
      shifts: 2,
    })
    expect(result.equipment.infeed!.measures['held-largest']!.mean).toBe(10)
  })
})

describe.each(['accumulating', 'belt'])('most cases an hour through a %s conveyor', (carries) => {
  // rate = speed over length and gap; the parcel conveyor is a worked example of a trade page (13 745 an
  // hour); the others are own figures
  it.each([
    { speed: 30, length: 400, gap: 200, metres: 6, perHour: 3000 },
    { speed: 18, length: 600, gap: 150, metres: 6, perHour: 1440 },
    { speed: 20, length: 500, gap: 300, metres: 6, perHour: 1500 },
    { speed: 126, length: 300, gap: 250, metres: 6, perHour: 13745.45 },
  ])(
    '$speed m/min, $length mm cases $gap mm apart: $perHour an hour',
    async ({ speed, length, gap, metres, perHour }) => {
      const more = `speed: ${speed} m/min, spacing: ${gap} mm`
      const result = await simulate({
        cases: `{box: {length: ${length} mm, width: 200 mm, height: 200 mm}}`,
        arrivals: packed,
        line: `{infeed: {type: conveyor, carries: ${carries}, length: ${metres} m, ${more}}}`,
        length: '10 h',
        shifts: 2,
      })
      // the first comes at 0.01 s and has the whole conveyor to travel
      const count = Math.floor(((36_000 - 0.01 - metres / (speed / 60)) * perHour) / 3600) + 1
      expect(result.outputs).toEqual([count, count])
    },
  )
})

describe('most cases an hour through a conveyor with a start delay', () => {
  // capacity v / (delta + v tau), headway tau + delta / v, with delta the pitch of cases that stand and tau
  // the delay: Newell, Transportation Research B 36 (2002) 195-205; own figures
  it.each([
    { speed: 0.5, pitch: 0.4, delay: 0.4, capacity: 0.8333333, headway: 1.2 },
    { speed: 0.3, pitch: 0.45, delay: 0.6, capacity: 0.4761905, headway: 2.1 },
    { speed: 1, pitch: 0.5, delay: 0.25, capacity: 1.333333, headway: 0.75 },
  ])(
    '$speed m/s, pitch $pitch m, delay $delay s: one every $headway s',
    async ({ speed, pitch, delay, capacity, headway }) => {
      const more = `spacing: 50 mm, start-delay: ${delay} s`
      const result = await simulate({
        cases: `{box: {length: ${(pitch - 0.05) * 1000} mm, width: 200 mm, height: 200 mm}}`,
        arrivals: packed,
        line: `{infeed: {type: conveyor, length: 6 m, speed: ${speed} m/s, ${more}}}`,
        length: '10 h',
        shifts: 2,
      })
      const count = Math.floor((36_000 - 0.01 - 6 / speed) / headway) + 1
      expect(result.outputs).toEqual([count, count])
      expect(result.measures.throughput!.mean).toBeCloseTo(capacity, 3)
    },
  )
})

describe('the start wave', () => {
  // A conveyor that is just as long as its 14 cases, a case always ready, one that leaves every 6 s. When the
  // first has left, each of the others starts one delay after its leader: the entrance is clear after 14
  // delays and the 0.04 s in which the last one moves its 20 mm of spacing. Until then there are 13. (Newell,
  // as above: the wave runs against the travel at pitch / delay.) The first fill takes some 100 s, which is
  // nothing in 50 h.
  it.each([
    { delay: 0, clear: 0.04 },
    { delay: 0.1, clear: 1.44 },
    { delay: 0.3, clear: 4.24 },
  ])('delay $delay s: the entrance is clear after $clear s', async ({ delay, clear }) => {
    const result = await simulate({
      arrivals: packed,
      line: `{${infeed(5.86, `spacing: 20 mm, start-delay: ${delay} s`)}, ${loader}}`,
      length: '50 h',
      shifts: 2,
    })
    const { measures } = result.equipment.infeed!
    expect(measures['share-full']!.mean).toBeCloseTo(1 - clear / 6, 3)
    expect(measures.held!.mean).toBeCloseTo(14 - clear / 6, 2)
    expect(result.measures.throughput!.mean).toBeCloseTo(1 / 6, 4)
  })
})
