/** Days simulated with the plant's own stops: what is put in, by hand, and what the answer says of it. */
import { beforeAll, describe, expect, it } from 'vitest'
import { Line } from '../../src/line/line.js'
import { chartsOf } from '../../src/questions/charts-of-document.js'
import { reportOf } from '../../src/questions/report-of-document.js'
import { Driving } from '../../src/questions/validate/driven.js'
import { OwnStops } from '../../src/questions/validate/own-stops.js'
import { type ValidateAnswer, validate } from '../../src/questions/validate/study.js'
import { readScenario } from '../../src/scenario/read.js'
import { recordOf } from '../record/texts.js'
import { plantLine, plantRecord } from './plant-days.js'

describe('an hour at a station of 60 s a case, with a break of 10 min', () => {
  // cases come every 30 s from 30 s on: the first is done at 90 s; the machine runs on in breaks
  const model = readScenario(`cases: {a: {length: 400 mm, width: 300 mm, height: 300 mm}}
arrivals: {packing: {rate: 2 cases/min, when-full: queue}}
line:
  packer: {type: station, time: 60 s, waiting-room: unlimited, every: {cases: 7, stop: 5 min}, breakdowns: {after: 5 min, repair: 5 min}}
  table: {type: station, time: 0 s, waiting-room: unlimited}
shift: {length: 60 min, breaks: [{at: 30 min, for: 10 min}]}
`)
  const record = recordOf({
    shifts: `Beginn;Ende;Gut
2026-01-01 06:00:00;2026-01-01 07:00:00;59
2026-01-02 06:00:00;2026-01-02 07:00:00;49
2026-01-03 06:00:00;2026-01-03 07:00:00;39
2026-01-04 06:00:00;2026-01-04 07:00:00;59
2026-01-05 06:00:00;2026-01-05 07:00:00;54`,
    stops: `Von;Bis;Anlage;Grund
2026-01-01 06:30:00;2026-01-01 06:40:00;Linie;Pause
2026-01-02 06:10:30;2026-01-02 06:20:30;Packer;Motor
2026-01-02 06:30:00;2026-01-02 06:40:00;Linie;Pause
2026-01-03 06:25:30;2026-01-03 06:45:30;Packer;Motor
2026-01-03 06:30:00;2026-01-03 06:40:00;Linie;Pause
2026-01-04 06:30:00;2026-01-04 06:40:00;Linie;Pause
2026-01-04 07:05:00;2026-01-04 07:20:00;Packer;Motor
2026-01-05 06:30:00;2026-01-05 06:40:00;Linie;Pause
2026-01-05 06:35:00;2026-01-05 06:45:00;Packer;Motor
2026-01-05 06:50:30;2026-01-05 06:52:00;Packer;Pflege
2026-01-05 06:51:00;2026-01-05 06:55:00;Motor 2;Motor
2026-01-05 06:56:00;2026-01-05 06:57:00;Packer;Treffen
2026-01-05 06:57:00;2026-01-05 06:58:00;Tisch;leer`,
    keys: {
      zone: '',
      times: 'yyyy-MM-dd HH:mm:ss',
      means:
        '{Motor: line.packer.breakdowns, Pflege: line.packer.every, Pause: break, Treffen: other, leer: starved, Band: line.wrapper.jams}',
    },
  })
  const own = new OwnStops(record, model.scenario)
  const driving = new Driving(model, record, own)
  const scenarioOf = (number: number) => {
    const found = driving.of(number)
    if ('problem' in found) throw new Error(found.problem.rule)
    return found.scenario
  }
  const stopsOf = (number: number) => scenarioOf(number).recordedStops!.packer!
  const good = (number: number) => new Line(scenarioOf(number)).simulate('s', 1).outputs[0]

  it.each([
    ['no stop', 0, 59],
    ['a stop of 10 min', 1, 49],
    ['a stop of 20 min across the break, in which the machine would have run', 2, 39],
    ['a stop beyond the end of the shift', 3, 59],
  ])('%s: cases lost exactly', (_, number, cases) => {
    expect(good(number)).toBe(cases)
  })

  it('has stops at their times from the start of the shift, of all that the break left of them', () => {
    expect(stopsOf(1)).toEqual({
      instead: ['breakdowns', 'every'],
      begins: [630],
      ends: [1230],
      kinds: ['breakdowns'],
    })
    expect([stopsOf(2).begins, stopsOf(2).ends]).toEqual([
      [1530, 1800],
      [1800, 2730],
    ])
    expect(stopsOf(3).begins).toEqual([])
  })

  it('has one stop at a time, the one that began first; one that began in a break stands too', () => {
    // 35 to 45 min; 50.5 to 52 of one sort; 51 to 55 of the other, which has what is left
    expect(stopsOf(4)).toMatchObject({
      begins: [2100, 3030, 3120],
      ends: [2700, 3120, 3300],
      kinds: ['breakdowns', 'every', 'breakdowns'],
    })
  })

  it('leaves laws of other pieces alone, and pieces that the scenario does not have', () => {
    expect(Object.keys(scenarioOf(0).recordedStops!)).toEqual(['packer'])
    expect(scenarioOf(0).line.packer).not.toHaveProperty('every')
    expect(scenarioOf(0).line.table).toEqual(model.scenario.line.table)
    expect(own.has('line.wrapper.jams')).toBe(false)
    expect(model.scenario.line.packer).toHaveProperty('every')
  })

  it('counts what is put in, and what has no place; that the line had no cases is neither', () => {
    expect(own.counted([1, 4])).toEqual({
      put: { stops: 3, seconds: 600 + 90 + 240 },
      left: { stops: 1, seconds: 60 },
    })
  })
})

describe('a model with wrong laws of stops on the right line', () => {
  // four times the jams of the plant
  const wrong = readScenario(plantLine('4 %'))
  const read = plantRecord(plantLine(), 6, { scanned: 6 })
  const usual = { margin: '10 %', runs: 39, unseen: true }
  let both: ValidateAnswer
  let stops: ValidateAnswer
  beforeAll(async () => {
    both = await validate(wrong, read, { ...usual, drivenBy: 'both', sheet: 4 })
    stops = await validate(wrong, read, { ...usual, drivenBy: 'stops', sheet: 4 })
    // a second or two where nothing else is at work
  }, 60_000)

  it('is off by its laws, and within with the stops of the plant; both at once are the two one by one', async () => {
    const { document, isMet } = both
    const alone = await validate(wrong, read, { ...usual, sheet: 4 })
    expect(document.good).toEqual(alone.document.good)
    expect(document.causes).toEqual(alone.document.causes)
    expect(document.beside!.good).toEqual(stops.document.good)
    expect(document.beside!.days).toEqual(stops.document.days)
    expect([document.good.verdict, document.beside!.good.verdict]).toEqual(['outside', 'within'])
    expect([isMet, stops.isMet]).toEqual([false, true])
    expect(document.made.shifts).toBe(2 * stops.document.made.shifts)
    // the plant and the model have nothing but the grain of the log between them: seconds of a stop of 90
    expect(Math.abs(stops.document.good.share.mean)).toBeLessThan(0.02)
  })

  it('says what the two say together, side by side', () => {
    const report = reportOf(both.document)
    expect(report.headline.join(' ')).toMatch(
      /^Shown outside 10 %.*With the plant's own stops instead of simulated ones: shown within 10 %.*but its simulated stops are wrong\./,
    )
    const sides = report.tables.find(({ title }) => title.startsWith('With simulated stops'))!
    expect(sides.rows).toHaveLength(2)
    expect(sides.rows.map((row) => row.at(-1))).toEqual(['shown outside', 'shown within'])
    expect(both.rows().get('days.csv')!.trim().split('\n')).toHaveLength(1 + 2 * 6)
    expect(both.document.made.repeat).toContain('--driven-by both')
  })

  it('says with the stops of the plant alone what is on trial, and compares nothing that was put in', () => {
    const { document } = stops
    const report = reportOf(document)
    expect(report.headline.join(' ')).toContain(
      "The plant's own arrivals and stops drive the model: any difference comes from the model of the line",
    )
    const [jams] = document.causes
    expect(jams).toMatchObject({ path: 'line.sealer.jams', isPutIn: true })
    expect(jams!.model).toEqual(jams!.plant)
    expect(jams!.seconds.p).toBeNull()
    expect(document.explains).toBeNull()
    expect(chartsOf(document).map(({ name }) => name)).toEqual(['days'])
    expect(document.ownStops!.put.stops).toBe(jams!.plant.stops)
    expect(document.notes.join(' ')).toContain('are replayed as logged')
    // a report of a run has the stops of its day
    const rows = (name: string) => stops.rows().get(name)!.trim().split('\n').slice(1)
    const logged = new Map(
      rows('sheet-key.csv').map((row, index) => [row.split(',')[2], rows('sheet.csv')[index]!.split(',')]),
    )
    for (const [day, [, , count]] of logged) {
      const own = read.record.stops.filter(({ shift }) => read.record.shifts[shift]!.day === day)
      expect(Number(count)).toBe(own.length)
    }
  })

  it('cannot be asked where the record names no stop of the line', async () => {
    const { record } = plantRecord(plantLine(), 3)
    const bare = { ...read, record: { ...record, meanings: ['break', 'line.other.jams'] } }
    await expect(validate(wrong, bare, { ...usual, drivenBy: 'stops' })).rejects.toThrow(
      /has no stop of a piece of the scenario/,
    )
    const unknown = { ...usual, drivenBy: 'x' as 'stops' }
    await expect(validate(wrong, read, unknown)).rejects.toThrow(
      /--driven-by x: choose one of arrivals, stops, both/,
    )
  })
})

describe('a model with a wrong line', () => {
  it('is off with the stops of the plant too', async () => {
    // the palletiser takes 8 s a case, where one comes each 6 s
    const slow = readScenario(plantLine().replace('time: 5 s', 'time: 8 s'))
    const read = plantRecord(plantLine(), 6, { scanned: 6 })
    const { document } = await validate(slow, read, {
      ...{ margin: '5 %', runs: 39, unseen: true },
      drivenBy: 'both',
    })
    expect([document.good.verdict, document.beside!.good.verdict]).toEqual(['outside', 'outside'])
    expect(reportOf(document).headline.join(' ')).toContain('So the model of the line itself is wrong')
  })
})
