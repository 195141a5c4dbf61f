/** Sensors that stop and start pieces, worked by hand: edges of cases at a place, times without a break, run-up, and what is counted. */
import { describe, expect, it } from 'vitest'
import type { Line } from '../../src/line/line.js'
import { build } from './arriving.js'
import { reader } from './shift.js'

const micro = (value: number) => Math.round(value * 1e6) / 1e6

/** Cases of 400 mm come at these times. */
const lineOf = (arrivals: number[], line: string, shift: string): Line =>
  build('{log: {file: x.csv, time: t, unit: s}, when-full: queue}', `{${shift}}`, {
    cases: '{a: {length: 400 mm, width: 300 mm, height: 300 mm}}',
    line,
    rows: [['t'], ...arrivals.map((time) => [String(time)])],
  })

/** What sensors do to `piece`, its states, and what leaves the line. */
function storyOf(line: Line, piece: string): string[] {
  const told: string[] = []
  line.observe(({ time, event, at, state, case: item, sensor, sees }) => {
    if (event === 'leaves') told.push(`${micro(time)} case ${item} leaves`)
    if (at !== piece) return
    if (event === 'state') told.push(`${micro(time)} ${state}`)
    if (event === 'sensor-stops') told.push(`${micro(time)} stops: ${sensor} ${sees}`)
    if (event === 'sensor-starts') told.push(`${micro(time)} starts`)
  })
  line.simulate('hand', 1)
  line.observe(null)
  return told
}

describe('x', () => {
  it('y', () => {
    // station s (1 s), accumulating conveyor c 2 m at 0.2 m/s, then a place that takes 20 s
    const line = lineOf(
      [0, 3, 6, 9, 12],
      '{s: {type: station, time: 1 s, waiting-room: unlimited, stops-when: {full: c, at: 1 m, for: 1.5 s}, starts-when: {clear: c, at: 1 m, for: 1 s}, restart: 0.5 s}, c: {type: conveyor, length: 2 m, speed: 12 m/min, spacing: 0 mm}, p: {type: station, time: 20 s}}',
      'length: 100 s',
    )
    console.log(storyOf(line, 's'))
    console.log(reader(line, line.simulate('hand', 1))('equipment.s.measures.starts'))
  })
})
