/** The rules of a validation by hand: what is asked, which days count, how they are judged, what explains the gap, reports for people. */
import { describe, expect, it } from 'vitest'
import { validateAsked } from '../../src/questions/validate/asked.js'
import { plantDays } from '../../src/questions/validate/days.js'
import { explanationOf, gapsOf } from '../../src/questions/validate/gaps.js'
import { daysAmongRuns, goodOf, ranksOf, regressionOf } from '../../src/questions/validate/judged.js'
import { drawnSheets, sheetCsv, sheetTest } from '../../src/questions/validate/sheet.js'
import type { SimulatedDay } from '../../src/questions/validate/simulated.js'
import { holdOut } from '../../src/record/hold-out.js'
import { recordOf } from '../record/texts.js'
import { plantKeys } from './plant-days.js'

describe('what is asked', () => {
  const asked = (options: Parameters<typeof validateAsked>[0], confidence = 0.95) =>
    validateAsked({ margin: '3 %', ...options }, confidence)

  it('is refused without a margin, in a sentence that says why', () => {
    expect(() => validateAsked({}, 0.95)).toThrow(
      /--margin is missing: decide first.*chosen after the result proves nothing/,
    )
  })

  it.each(['0 %', '-3 %', '100 %', '3', '3 min', '', 'NaN %', '1e999 %', '__proto__', '3 %; rm'])(
    'margin %j is no margin',
    (margin) => {
      expect(() => asked({ margin })).toThrow(/^--margin/)
    },
  )

  it('is read, and what is not said is usual', () => {
    expect(asked({})).toEqual({
      margin: 0.03,
      runs: 199,
      kept: { by: 'nothing' },
      drivenBy: 'arrivals',
      sheet: 0,
    })
    expect(asked({ runs: 39, holdOut: '30 %', sheet: 10 })).toMatchObject({
      runs: 39,
      kept: { by: 'share', share: 0.3 },
      sheet: 10,
    })
    const heldOut = {
      name: 'fitted.yaml',
      text: 'record: {}\nheld-out: [ 2026-01-02, "2026-01-04" ]\nvalues: {}\n',
    }
    expect(asked({ heldOut }).kept).toEqual({
      by: 'list',
      days: ['2026-01-02', '2026-01-04'],
      name: 'fitted.yaml',
    })
  })

  it.each([
    [{ runs: 38 }, /--runs/],
    [{ runs: 1e9 }, /--runs/],
    [{ sheet: 3 }, /--sheet/],
    [{ holdOut: '95 %' }, /--hold-out/],
    [{ holdOut: '30 %', unseen: true }, /give only one/],
    [{ heldOut: { name: 'fitted.yaml', text: 'values: {}' } }, /names no days under `held-out`/],
    [{ heldOut: { name: 'fitted.yaml', text: 'held-out: [{}]' } }, /is not a day such as/],
    [{ heldOut: { name: 'fitted.yaml', text: '- 1' } }, /must be a YAML map/],
  ])('%j is refused', (options, message) => {
    expect(() => asked(options)).toThrow(message)
  })

  it('needs a confidence that means something', () => {
    expect(() => asked({}, 0.5)).toThrow(/confidence below 80 %/)
  })
})

const record = recordOf({
  shifts: `Beginn;Ende;Gut
2026-01-01 06:00:00;2026-01-01 08:00:00;100
2026-01-01 08:00:00;2026-01-01 10:00:00;110
2026-01-02 06:00:00;2026-01-02 08:00:00;90
2026-01-03 06:00:00;2026-01-03 08:00:00;
2026-01-04 06:00:00;2026-01-04 08:00:00;95`,
  stops: 'Von;Bis;Anlage;Grund\n2026-01-01 06:10:00;2026-01-01 06:12:00;Kleber;Stau',
  keys: plantKeys,
})

describe('days', () => {
  it('are those of the record with all their shifts; one whose cases were not counted is left out', () => {
    const found = plantDays(record, { by: 'nothing' }, 'a')
    expect(found.days).toEqual([
      { day: '2026-01-01', good: 210, shifts: [0, 1] },
      { day: '2026-01-02', good: 90, shifts: [2] },
      { day: '2026-01-04', good: 95, shifts: [4] },
    ])
    expect(found.leftOut).toEqual([{ day: '2026-01-03', why: 'its good cases were not counted' }])
    expect(found.isCalibration).toBe(true)
    expect(plantDays(record, { by: 'unseen' }, 'a')).toEqual({ ...found, isCalibration: false })
  })

  it('kept back are the ones that a fit with that share and seed keeps back', () => {
    const { days } = holdOut(record, 0.5, 'some seed')
    const found = plantDays(record, { by: 'share', share: 0.5 }, 'some seed')
    expect([...found.days, ...found.leftOut].map(({ day }) => day).sort()).toEqual([...days].sort())
    expect(found.isCalibration).toBe(false)
  })

  it('that are listed must be of this record', () => {
    const list = (days: string[]) => plantDays(record, { by: 'list', days, name: 'fitted.yaml' }, 'a')
    expect(list(['2026-01-02']).days.map(({ day }) => day)).toEqual(['2026-01-02'])
    expect(() => list(['2026-01-02', '2025-01-02'])).toThrow(/are not in the record, such as 2025-01-02/)
  })
})

/** A day with these runs. */
const day = (good: number, runs: number[], number = 1): SimulatedDay => ({
  ...{ day: `2026-01-0${number}`, good, shifts: [0], drivenBy: 'law', runs, stops: [], picked: null },
})
const upTo = (n: number) => Array.from({ length: n }, (_, index) => 100 + index)

describe('how days are judged', () => {
  it('a day among its runs: 39 from 100 to 138 in order, of which first and last enclose 95 %', () => {
    const days = [99, 100.5, 137.5, 139].map((good) => day(good, upTo(39)))
    const found = daysAmongRuns(days, 'a')
    expect(found.map(({ below }) => below)).toEqual([0, 1, 38, 39])
    expect(found.map(({ isInside }) => isInside)).toEqual([false, true, true, false])
    expect(found[0]!.model).toEqual({ mean: 119, median: 119, low: 100, high: 138 })
    // two of four: 1 - P(3 or 4 inside) = 1 - 4 x 0.95^3 x 0.05 - 0.95^4
    const ranks = ranksOf(found, 39)
    expect(ranks).toMatchObject({ low: 1, high: 39, share: 0.95, inside: 2 })
    expect(ranks.p).toBeCloseTo(1 - 4 * 0.95 ** 3 * 0.05 - 0.95 ** 4, 12)
  })

  it('good cases in the mean: three days, differences 0, 1 and 2 of 100 cases', () => {
    const days = daysAmongRuns(
      [100, 99, 101].map((good, index) => day(good, Array(39).fill(good + index))),
      'a',
    )
    const judging = { margin: 0.03, confidence: 0.95, seed: 'a' }
    const found = goodOf(days, judging)
    // mean 1, standard error 1 / sqrt(3) = 0.57735; t of 2 degrees of freedom 4.302653
    expect([found.plant, found.model]).toEqual([100, 101])
    // that the mean of 100 is not known to half a case moves the ends by less than a hundredth of the interval
    expect(found.share.low).toBeCloseTo((1 - 2.919986 * 0.57735) / 100, 3)
    expect(found.difference.high).toBeCloseTo(1 + 4.302653 * 0.57735, 4)
    expect(found.difference.t).toBeCloseTo(1.7320508, 6)
    expect(found.verdict).toBe('within')
    expect(goodOf(days, { ...judging, margin: 0.02 }).verdict).toBe('not-shown')
    expect(found.bootstrap!.low).toBeGreaterThanOrEqual(0)
    expect(found.bootstrap!.high).toBeLessThanOrEqual(2)
  })

  it('says nothing of one day, and none of days that differ alike or put out nothing', () => {
    const judging = { margin: 0.03, confidence: 0.95, seed: 'a' }
    const verdict = (all: SimulatedDay[]) => goodOf(daysAmongRuns(all, 'a'), judging).verdict
    expect(verdict([day(100, Array(39).fill(100))])).toBe('not-shown')
    expect(verdict([1, 2, 3].map(() => day(100, Array(39).fill(100))))).toBe('not-shown')
    expect(verdict([1, 2, 3].map((more) => day(0, Array(39).fill(more))))).toBe('not-shown')
  })

  it('difference on sum takes one run a day', () => {
    const found = regressionOf([day(1, [2, 9]), day(2, [2, 9]), day(4, [3, 9])])!
    // D = 1, 0, -1 and Q = 3, 4, 7: slope -(3 + 7 - 2 x 7) / ... by hand: sum (Q - 14/3)(D - 0) = -4; sum (Q - 14/3)^2 = 26/3
    expect(found.slope).toBeCloseTo(-4 / (26 / 3), 12)
    expect(found.degreesOfFreedom).toEqual([2, 1])
  })
})

const jams = { path: 'line.sealer.jams', words: 'jams of sealer' }
const rolls = { path: 'line.sealer.roll-change', words: 'roll changes of sealer' }
const stopped = (stops: number, seconds: number) => ({ stops, seconds })

describe('what explains a gap', () => {
  const days = [0, 1, 2, 3, 4, 5].map((index) => ({
    plant: [stopped(10 + (index % 2), 600 + 10 * index), stopped(3, 270 + index)],
    model: [stopped(5, 300), stopped(3.1, 280)],
  }))

  it('is what differs most, in standard errors of its own', () => {
    const rows = gapsOf([jams, rolls], days, 0.95)
    expect(rows.map(({ words }) => words)).toEqual(['jams of sealer', 'roll changes of sealer'])
    expect(rows[0]!.stops.mean).toBeCloseTo(-5.5, 12)
    // differences -5 and -6 by turns: sd sqrt(0.3), standard error sqrt(0.05)
    expect(rows[0]!.stops.standardised).toBeCloseTo(-5.5 / Math.sqrt(0.05), 9)
    expect(rows[0]!.seconds.mean).toBeCloseTo(-325, 12)
    // without a spread nothing is said
    expect(rows[1]!.stops).toMatchObject({ p: null, low: null, isShown: false })
    const found = explanationOf(rows, 50, 0.1)!
    expect(found).toMatchObject({ words: 'jams of sealer', isShown: true, isAlong: true })
    expect(found.worth).toBeCloseTo(32.5, 9)
  })

  it('goes the way of the gap where there is such a one', () => {
    const rows = gapsOf([jams, rolls], days, 0.95)
    // fewer good cases by the model: its fewer jams do not explain that, its longer roll changes may
    expect(explanationOf(rows, -50, 0.1)).toMatchObject({
      words: 'roll changes of sealer',
      what: 'seconds',
      isAlong: true,
    })
    expect(explanationOf(rows.slice(0, 1), -50, 0.1)).toMatchObject({
      words: 'jams of sealer',
      isAlong: false,
    })
  })

  it('is nothing where nothing ever stood', () => {
    expect(gapsOf([jams], [{ plant: [stopped(0, 0)], model: [stopped(0, 0)] }], 0.95)).toEqual([])
    expect(explanationOf([], 50, 0.1)).toBeNull()
  })
})

describe('reports for people who know the line', () => {
  it('are each of another day, and a coin says of what', () => {
    const drawn = drawnSheets(200, 300, 39, 'a')
    expect(new Set(drawn.map((each) => each.day)).size).toBe(200)
    const real = drawn.filter(({ run }) => run === null).length
    // four standard errors of a coin about 100
    expect(Math.abs(real - 100)).toBeLessThan(4 * Math.sqrt(50))
    expect(drawn.every(({ run }) => run === null || (run >= 0 && run < 39))).toBe(true)
    expect(drawnSheets(200, 300, 39, 'a')).toEqual(drawn)
    expect(drawnSheets(0, 300, 39, 'a')).toEqual([])
  })

  it('are told apart by so many right: 11 of 14, 9 of 10, all of 5', () => {
    // 10 of 14 would happen by guessing in 9.0 %, 11 in 2.9 %: Schruben's example
    expect(sheetTest(14)).toMatchObject({ right: 11 })
    expect(sheetTest(14).p).toBeCloseTo(0.0286865, 7)
    expect(sheetTest(10)).toMatchObject({ right: 9 })
    expect(sheetTest(5)).toEqual({ count: 5, right: 5, p: 1 / 32 })
  })

  it('show no sign of what they are; the key does', () => {
    const [sheet, key] = sheetCsv(
      [
        { day: '2026-01-02', run: null, good: 90, stops: [stopped(2, 120), stopped(5, 50)] },
        { day: '2026-01-05', run: 6, good: 93, stops: [stopped(1, 60), stopped(6, 60)] },
      ],
      [jams, { path: null, words: 'stops of other causes' }],
    )
    expect(sheet).toBe(
      'report,good cases,jams of sealer: stops,jams of sealer: minutes,plant or model?\n1,90,2,2,\n2,93,1,1,\n',
    )
    expect(key).toBe('report,is of,day,run\n1,plant,2026-01-02,\n2,model,2026-01-05,7\n')
  })
})
