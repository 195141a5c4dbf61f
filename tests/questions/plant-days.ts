/** A small plant for tests of validation: a line is simulated day by day, and written down as a record. */

import { Line } from '../../src/line/line.js'
import type { ShiftEvent } from '../../src/line/shift-event.js'
import type { ReadRecord } from '../../src/record/read-record.js'
import { loadScenario } from '../../src/scenario/load.js'
import { recordOf } from '../record/texts.js'

/** The line of the plant: an hour and a half with a break, in which jams cost something. */
export const plantLine = (jams = '1 %') => `title: Line 2
target: 8 cases/min
cases: {a: {share: 60, length: 400 mm, width: 300 mm, height: 250 mm}, b: {share: 40, length: 300 mm, width: 300 mm, height: 250 mm}}
arrivals: {packing: {time-between: {exponential: {mean: 6 s}}, when-full: queue}}
line:
  infeed: {type: conveyor, length: 6 m}
  sealer: {type: sealer, jams: {chance: ${jams}, clear: {exponential: {mean: 90 s}}}}
  palletiser: {type: station, time: 5 s, every: {cases: 40, stop: 30 s}}
crew: {operator: {people: 1, walk: 0 s, does: [jams, roll-change]}}
shift: {length: 90 min, breaks: [{at: 40 min, for: 10 min}], breaks-stop: everything}
study: {seed: model}
`

const second = (at: number): string =>
  new Date(Math.floor(at) * 1000).toISOString().slice(0, 19).replace('T', ' ')

/** The texts of a record of so many days; `scanned`: the first so many have their cases. */
export function plantTexts(line: string, days: number, { seed = 'plant', scanned = 0 } = {}) {
  const { scenario } = loadScenario(line)
  const simulated = new Line(scenario)
  const shifts = ['Beginn;Ende;Gut']
  const stops = ['Von;Bis;Anlage;Grund']
  const cases = ['Zeit;Artikel']
  for (let day = 1; day <= days; day++) {
    const begins = Date.UTC(2026, 0, day, 6) / 1000
    let since = Number.NaN
    simulated.observe(({ event, at, time, kind }: ShiftEvent) => {
      if (event === 'arrives' && day <= scanned) cases.push(`${second(begins + time)};${kind}`)
      if (at !== 'sealer') return
      if (event === 'stops') since = time // all of its stops are jams: a roll outlasts the shift
      if (event === 'work-done') stops.push(`${second(begins + since)};${second(begins + time)};Kleber;Stau`)
    })
    const { outputs } = simulated.simulate(seed, day)
    shifts.push(`${second(begins)};${second(begins + scenario.shift.length)};${outputs[0]}`)
    for (const pause of scenario.shift.breaks)
      stops.push(`${second(begins + pause.at)};${second(begins + pause.at + pause.for)};Linie;Pause`)
  }
  return { shifts: shifts.join('\n'), stops: stops.join('\n'), cases: cases.join('\n') }
}

export const plantKeys = {
  zone: '',
  times: 'yyyy-MM-dd HH:mm:ss',
  means: '{Stau: line.sealer.jams, Motor: line.sealer.breakdowns, Pause: break}',
}
export const scannedKeys = {
  ...plantKeys,
  cases: '{file: cases.csv, at: Zeit, kind: Artikel, source: packing}',
}

/** The record as a question takes it. */
export function plantRecord(
  line: string,
  days: number,
  more: { seed?: string; scanned?: number } = {},
): ReadRecord {
  const { cases, ...texts } = plantTexts(line, days, more)
  const record = recordOf(
    more.scanned ? { ...texts, cases, keys: scannedKeys } : { ...texts, keys: plantKeys },
  )
  return { record, name: 'record.yaml', sha256: 'b'.repeat(64), files: [] }
}
