/** Is the model the plant: the whole question, of small plants that are simulated and written down. */
import { beforeAll, describe, expect, it } from 'vitest'
import { parse } from 'yaml'
import { coveringWords, validatedBy } from '../../src/answers/about.js'
import { chartsOf } from '../../src/questions/charts-of-document.js'
import { reportOf } from '../../src/questions/report-of-document.js'
import { Driving } from '../../src/questions/validate/driven.js'
import { type ValidateAnswer, validate } from '../../src/questions/validate/study.js'
import type { Said } from '../../src/report/screen.js'
import { readScenario } from '../../src/scenario/read.js'
import { inProcess } from '../../src/shifts/in-process.js'
import { recordOf } from '../record/texts.js'
import { plantKeys, plantLine, plantRecord, scannedKeys } from './plant-days.js'

const usual = { margin: '10 %', runs: 39, unseen: true }
const model = readScenario(plantLine())

describe('a shift of the record the scenario', () => {
  const record = recordOf({
    shifts: `Beginn;Ende;Gut
2026-01-01 06:00:00;2026-01-01 08:00:00;2
2026-01-02 06:00:00;2026-01-02 07:00:00;2
2026-01-03 06:00:00;2026-01-03 07:00:00;3
2026-01-04 06:00:00;2026-01-04 07:00:00;2`,
    stops: `Von;Bis;Anlage;Grund
2026-01-01 06:30:00;2026-01-01 06:40:00;Linie;Pause`,
    cases: `Zeit;Artikel
2026-01-01 06:00:05;b
2026-01-01 06:00:09;a
2026-01-01 07:59:00;a
2026-01-03 06:00:05;b
2026-01-03 06:00:09;a
2026-01-04 06:00:05;b
2026-01-04 06:00:09;c`,
    keys: scannedKeys,
  })
  const driving = new Driving(model, record)
  const of = (number: number) => {
    const found = driving.of(number)
    if ('problem' in found) throw new Error(found.problem.rule)
    return found
  }

  it('has its own length and breaks', () => {
    expect(of(0).scenario.shift).toMatchObject({ length: 7200, breaks: [{ at: 1800, for: 600 }] })
    expect(of(1).scenario.shift).toMatchObject({ length: 3600, breaks: [] })
  })

  it('has the cases that were seen, at their times and of their kinds', () => {
    const { scenario, drivenBy } = of(0)
    expect(drivenBy).toBe('cases')
    const { log, 'time-between': law, 'when-full': whenFull } = scenario.arrivals.packing!
    expect([...log!.times]).toEqual([5, 9, 7140])
    expect([...log!.kinds!]).toEqual([1, 0, 0])
    expect([law, whenFull]).toEqual([undefined, 'queue'])
  })

  it('has the law where none were seen, and where fewer came than were good', () => {
    expect(of(1).drivenBy).toBe('law')
    expect(of(2).drivenBy).toBe('law')
    expect(of(2).scenario.arrivals).toEqual(model.scenario.arrivals)
  })

  it('draws the kinds where the scenario does not know one of them', () => {
    expect(of(3).drivenBy).toBe('cases')
    expect(of(3).scenario.arrivals.packing!.log!.kinds).toBeNull()
  })

  it('cannot be, where the scenario forbids it', () => {
    const late = readScenario(
      plantLine()
        .replace('{length: 90 min,', '{start-up: 65 min, length: 150 min,')
        .replace('breaks: [{at: 40 min, for: 10 min}], ', ''),
    )
    const found = new Driving(late, record).of(1)
    expect('problem' in found && found.problem.path).toBe('shift.start-up')
  })
})

describe('a model that is the plant', () => {
  const read = plantRecord(plantLine(), 14, { scanned: 5 })
  const few = plantRecord(plantLine(), 3)
  let answer: ValidateAnswer
  beforeAll(async () => {
    answer = await validate(model, read, { ...usual, sheet: 6 })
  }, 60_000)

  it('is shown within a wide margin; its days lie where its runs do, and no cause differs', () => {
    const { document, isMet } = answer
    const { days, ranks, good, causes, explains } = document
    expect(days).toHaveLength(14)
    expect(days.filter(({ drivenBy }) => drivenBy === 'cases')).toHaveLength(5)
    // margins of 10 % are some six standard errors of such a mean
    expect(good.verdict).toBe('within')
    expect(isMet).toBe(true)
    // of 14 days of chance 0.95: fewer than 10 in 4 of 10 000 records
    expect(ranks.inside).toBeGreaterThanOrEqual(10)
    expect(causes.map(({ words }) => words)).toEqual(['jams of sealer', 'stops of other causes'])
    expect(causes[1]!.stops.p).toBeNull()
    expect(explains).toMatchObject({ path: 'line.sealer.jams', isShown: false })
    expect(document.isCalibration).toBe(false)
  })

  it('gives the same bytes to one worker and to several, in any order', async () => {
    const again = await validate(
      model,
      read,
      { ...usual, sheet: 6 },
      { executor: { ...inProcess(), size: 3 } },
    )
    const bytes = ({ document, rows }: ValidateAnswer) => JSON.stringify([document, [...rows()]])
    expect(bytes(again)).toBe(bytes(answer))
  })

  it('says in its head that days which a fit may have used are calibration', async () => {
    const { document } = await validate(model, few, { ...usual, unseen: false })
    expect(document.isCalibration).toBe(true)
    const report = reportOf(document)
    expect(report.headline[0]).toMatch(/^This is calibration, not validation/)
    await expect(validate(model, few, { ...usual, unseen: false, writeInto: plantLine() })).rejects.toThrow(
      /needs days that no fit used/,
    )
  })

  it('has a report, pictures with all days, and rows', () => {
    const report = reportOf(answer.document)
    expect(report.headline[0]).toMatch(
      /^Shown within 10 %: the good cases of the model lie [+−]?\d+\.\d\d % from/,
    )
    expect(report.tables.map(({ title }) => title)).toEqual([
      'Good cases of plant and model',
      'Good cases day by day',
      'Stops by cause, a day',
    ])
    expect(chartsOf(answer.document).map(({ name }) => name)).toEqual(['days', 'causes'])
    expect(chartsOf(answer.document)[0]!.alt.match(/2026-/g)).toHaveLength(14)
    const rows = answer.rows()
    expect([...rows.keys()]).toEqual(['days.csv', 'sheet.csv', 'sheet-key.csv'])
    expect(rows.get('days.csv')!.trim().split('\n')).toHaveLength(15)
    const sheets = rows
      .get('sheet.csv')!
      .trim()
      .split('\n')
      .map((row) => row.split(','))
    const key = rows
      .get('sheet-key.csv')!
      .trim()
      .split('\n')
      .map((row) => row.split(','))
    for (const [index, [, good]] of sheets.entries()) {
      const [, of, day] = key[index]!
      if (of !== 'plant') continue
      expect(Number(good)).toBe(answer.document.days.find((each) => each.day === day)!.plant)
    }
  })

  it('says so in the scenario when it is asked to, and no longer once that has changed', async () => {
    const text = `${plantLine()}# the end\n`
    const { scenario, document } = await validate(model, few, { ...usual, writeInto: text })
    expect(scenario!.endsWith('# the end\n')).toBe(true)
    const written = parse(scenario!)
    expect(written.study.seed).toBe('model')
    expect(written.study['validated-by']).toMatch(
      /^Record Line 2, 3 days from 2026-01-01 to 2026-01-03 that no fit used: good cases (?:not )?shown within 10 % of the plant's .*\[shifts [0-9a-f]{12}\]$/,
    )
    expect(document.made.repeat).toContain('tapeshift validate scenario record.yaml --margin')
    const said = (line: string) => {
      const again = readScenario(line)
      return validatedBy(again.scenario.study['validated-by'], again.shiftsSha256)
    }
    expect(said(scenario!)).not.toMatch(/shifts|no longer/)
    expect(said(scenario!.replace('chance: 1 %', 'chance: 2 %'))).toMatch(/no longer applies/)
    expect(validatedBy('a week of counts', 'a'.repeat(64))).toBe('a week of counts')
    expect(validatedBy(undefined, 'a'.repeat(64))).toBeNull()
    expect(validatedBy(coveringWords('x', 'a'.repeat(64)), 'a'.repeat(64))).toBe('x')
  })
})

describe('a model that is not', () => {
  // four times the jams of the plant: 4 % of the cases stop the line for 90 s, where each has 6 s
  const read = plantRecord(plantLine(), 12)

  it('is shown outside, with what explains it', async () => {
    const wrong = readScenario(plantLine('4 %'))
    const { document, isMet } = await validate(wrong, read, { ...usual, margin: '3 %' })
    expect(document.good.verdict).toBe('outside')
    expect(isMet).toBe(false)
    expect(document.good.share.high).toBeLessThan(-0.03)
    expect(document.explains).toMatchObject({ path: 'line.sealer.jams', isShown: true, isAlong: true })
    expect(document.explains!.worth).toBeLessThan(0)
    expect(document.ranks.p).toBeLessThan(0.05)
    const report = reportOf(document)
    expect(report.headline.at(-1)).toMatch(/^Best explanation of the gap: jams of sealer/)
    const next = report.front!.screen!.parts.find((part) => 'head' in part && part.head === 'Next') as Said
    expect(next.lines[0]).toContain('Look at jams of sealer first (line.sealer.jams)')
  })
})

describe('what cannot be asked', () => {
  const read = plantRecord(plantLine(), 3)

  it('a record that cannot be used is refused with its mend', async () => {
    const bad = recordOf({ shifts: 'Beginn;Ende;Gut', stops: 'Von;Bis;Anlage;Grund', keys: plantKeys })
    await expect(validate(model, { ...read, record: bad }, usual)).rejects.toMatchObject({ code: 'record' })
  })

  it('shifts that do not begin empty, more reports than days, no day with a count', async () => {
    const carried = readScenario(
      plantLine().replace('{length: 90 min,', '{start: carry-over, campaign: 3, length: 90 min,'),
    )
    await expect(validate(carried, read, usual)).rejects.toThrow(/must start empty/)
    await expect(validate(model, read, { ...usual, sheet: 4 })).rejects.toThrow(/only 3 count/)
    const shifts = read.record.shifts.map((shift) => ({ ...shift, good: null }))
    await expect(validate(model, { ...read, record: { ...read.record, shifts } }, usual)).rejects.toThrow(
      /no day of the record.*not counted/,
    )
  })

  it('an interrupt ends it', async () => {
    const controller = new AbortController()
    controller.abort()
    await expect(validate(model, read, usual, { signal: controller.signal })).rejects.toMatchObject({
      code: 'interrupted',
    })
  })
})
