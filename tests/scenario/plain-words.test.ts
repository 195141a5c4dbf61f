/** What people type in their own words: each form by hand, what it is told to be read as, and what is refused with where, rule and fix. */
import { readFileSync } from 'node:fs'
import { Ajv2020 } from 'ajv/dist/2020.js'
import { describe, expect, it } from 'vitest'
import { parse } from 'yaml'
import { check } from '../../src/questions/check/study.js'
import { jsonSchemaText } from '../../src/scenario/json-schema.js'
import { problemText, ScenarioError } from '../../src/scenario/problems.js'
import { readScenario } from '../../src/scenario/read.js'

const text = readFileSync(new URL('plain-words.yaml', import.meta.url), 'utf8')
const validate = new Ajv2020({ strict: false }).compile(JSON.parse(jsonSchemaText()) as object)

const changed = (from: string | RegExp, to: string) => {
  const other = text.replace(from, to)
  expect(other).not.toBe(text)
  return other
}

/** All that is said of a scenario that is refused. */
function refused(scenario: string, set: readonly string[] = []): string {
  try {
    readScenario(scenario, { set })
  } catch (error) {
    if (error instanceof ScenarioError) return error.problems.map(problemText).join('\n')
    throw error
  }
  throw new Error('it can be read')
}

const readAs = (scenario: string, set: readonly string[] = []) =>
  check(readScenario(scenario, { set })).findings.flatMap(({ code, path, message }) =>
    code === 'read-as' ? [`${path}: ${message}`] : [],
  )

describe('plain words', () => {
  const loaded = readScenario(text)
  const { scenario, resolved, assumed } = loaded

  it('are the values that they mean', () => {
    // 15 in are 381 mm; a shift of 8 h with half an hour of breaks works 7.5 h: 4050 / 27 000 s
    expect(scenario.cases.a).toMatchObject({ share: 60, length: 0.38, width: 0.28, height: 0.24 })
    expect(scenario.cases.b!.length).toBeCloseTo(0.381, 12)
    expect([scenario.cases.b!.share, Number(scenario.cases.b!.height) / 0.0254]).toEqual([
      40,
      expect.closeTo(9, 10),
    ])
    expect(scenario.target).toBeCloseTo(4050 / 27_000, 14)
    // cases come from half an hour on: 4200 / 25 200 s
    expect(scenario.arrivals.packing!.rate).toBeCloseTo(4200 / 25_200, 14)
    expect(scenario.tape.width).toBe(0.048)
    // 10 in 480 min by the calendar
    expect(scenario.line.sealer!.breakdowns).toEqual({
      after: { law: 'exponential', mean: 2880 },
      'counted-in': 'calendar-time',
      repair: { law: 'uniform', low: 60, high: 120 },
    })
    expect(assumed.map(({ path }) => path)).not.toContain('line.sealer.breakdowns.counted-in')
  })

  it('are written out as the format has them, which reads the same', () => {
    const { size: _, ...sides } = { size: null, ...(resolved.cases as Record<string, object>).a }
    expect(sides).toMatchObject({ length: '380 mm', width: '280 mm', height: '240 mm' })
    expect(readScenario(JSON.stringify(resolved)).scenario).toEqual(scenario)
  })

  it('are told once each, with what they are read as', () => {
    expect(readAs(text)).toEqual([
      'tape.width: `2 inch` is read as 2-inch tape, 48 mm (1.89 in) wide; it is sold 48 to 51 mm wide.',
      'target: `4050 cases/shift` is read as 9 cases/min over the 7.5 h of working time.',
      'arrivals.packing.rate: `4200 cases per shift` is read as 10 cases/min over the 7 h in which cases come.',
      'line.sealer.breakdowns.after: `10 stops per shift` is read as 48 min from a repair to the next breakdown on average, any time as likely as another (exponential), by the calendar.',
      'line.sealer.breakdowns.repair: `1 to 2 min` is read as any time between the two, one as likely as another (uniform).',
    ])
  })

  it('are valid for editors', () => {
    expect(validate(parse(text))).toBe(true)
    for (const [from, to] of [
      ['4050 cases/shift', '4050 parcels/shift'],
      ['60 %', '60 percent'],
      ['380 x 280 x 240 mm', '380 x 280 mm'],
      ['1 to 2 min', '1 to 2 mm'],
      ['10 stops per shift', 'ten stops per shift'],
    ] as const)
      expect([to, validate(parse(changed(from, to)))]).toEqual([to, false])
  })

  it.each([
    ['target=7.4 /min', 7.4 / 60],
    ['target=444 /h', 7.4 / 60],
    ['target=7.4 cases per min', 7.4 / 60],
    ['target=3330 a shift', 7.4 / 60],
    ['target=3330 per shift', 7.4 / 60],
  ])('%s is a rate', (set, rate) => {
    expect(readScenario(text, { set: [set] }).scenario.target).toBeCloseTo(rate, 12)
  })

  it.each([
    ['2 in', 0.048],
    ['2"', 0.048],
    ['3 inches', 0.072],
    // no name of a tape: as it is written
    ['1.9 in', 1.9 * 0.0254],
    ['50.8 mm', 0.0508],
  ])('tape of %s', (width, size) => {
    const set = [
      'line.sealer.heads.top.takes=["36 mm", "80 mm"]',
      'line.sealer.heads.bottom.takes=["36 mm", "80 mm"]',
    ]
    expect(readScenario(text, { set: [...set, `tape.width=${width}`] }).scenario.tape.width).toBeCloseTo(
      size,
      12,
    )
  })

  it.each([
    ['90 s to 2 min', 90, 120],
    ['1-2 min', 60, 120],
    ['0.5 – 1.5 min', 30, 90],
  ])('%s lies between', (repair, low, high) => {
    const set = [`line.sealer.breakdowns.repair=${repair}`]
    expect(readScenario(text, { set }).scenario.line.sealer!.breakdowns!.repair).toEqual({
      law: 'uniform',
      low,
      high,
    })
  })

  it('a power of ten is none between', () => {
    const set = ['line.sealer.breakdowns.repair=1e-1 min']
    expect(readScenario(text, { set }).scenario.line.sealer!.breakdowns!.repair).toEqual({
      law: 'constant',
      value: 6,
    })
  })

  it('a number of stops keeps the clock that is named', () => {
    const set = ['line.sealer.breakdowns.counted-in=running-time']
    expect(readScenario(text, { set }).scenario.line.sealer!.breakdowns).toMatchObject({
      'counted-in': 'running-time',
      after: { law: 'exponential', mean: 2700 },
    })
    expect(readAs(text, set).join()).toContain('of running time: a piece that waits has fewer')
  })

  it('a change of a size, of a side and of the shift is made', () => {
    const { cases } = readScenario(text, {
      set: ['cases.a.size=16 x 12 x 10 in', 'cases.b.height=300 mm'],
    }).scenario
    expect([cases.a!.height, cases.b!.height]).toEqual([expect.closeTo(0.254, 12), 0.3])
    // 4050 in 9.5 h
    const longer = readScenario(text, { set: ['shift.length=10 h'] }).scenario
    expect(longer.target).toBeCloseTo(4050 / 34_200, 14)
  })

  it('a guess of a rate a shift and of a share in per cent keeps its ends', () => {
    const guessed = readScenario(
      changed(
        'rate: 4200 cases per shift',
        'rate: {guess: 4200 cases per shift, between: [3780 cases per shift, 4620 cases per shift]}',
      ).replace('share: 60 %', 'share: {guess: 60 %, between: [50 %, 70 %]}'),
    )
    expect(guessed.scenario.arrivals.packing!.rate).toBeCloseTo(1 / 6, 14)
    const known = guessed.evidence.map(({ path, known: of }) => [
      path,
      of.form === 'guess' ? [of.low, of.high] : null,
    ])
    expect(known).toEqual([
      ['cases.a.share', [50, 70]],
      ['arrivals.packing.rate', [expect.closeTo(0.15, 12), expect.closeTo(11 / 60, 12)]],
    ])
  })
})

describe('what is refused', () => {
  it.each<[string, string | RegExp, string, string[]]>([
    [
      'shares that do not add up',
      'share: 40 %',
      'share: 30 %',
      ['cases.b.share', 'add up to 100 %, not 90 %', 'shares that add up to 100 %'],
    ],
    [
      'one share without %',
      'share: 40 %',
      'share: 40',
      ['cases.b.share', 'the share of every case must be in %', 'or none'],
    ],
    [
      'a size and a side',
      'size: 380 x 280 x 240 mm',
      'size: 380 x 280 x 240 mm, width: 280 mm',
      ['cases.a.size', '`size` says what `width` says too'],
    ],
    [
      'two sides',
      '380 x 280 x 240 mm',
      '380 x 280 mm',
      ['cases.a.size', 'length x width x height', 'write it like'],
    ],
    [
      'sides without a unit',
      '380 x 280 x 240 mm',
      '380 x 280 x 240',
      ['cases.a.size', 'length x width x height, and a unit'],
    ],
    [
      'a unit that is none',
      '380 x 280 x 240 mm',
      '380 x 280 x 240 mn',
      ['cases.a.size', '`mn` is not a unit of a length'],
    ],
    [
      'a map for a size',
      'size: 380 x 280 x 240 mm',
      'size: {a: 1}',
      ['cases.a.size', 'length x width x height'],
    ],
    [
      'a side beyond all cases',
      '380 x 280 x 240 mm',
      '380 x 280 x 240 m',
      ['cases.a.size', 'must be at most 10 m', '380 x 280 x 240 m'],
    ],
    ['no cases', '4050 cases/shift', '0 cases/shift', ['target', 'not a unit of a rate of cases']],
    ['too many cases', '4050 cases/shift', '4e5 cases/shift', ['target']],
    [
      'endless cases',
      '4050 cases/shift',
      `${'9'.repeat(150)} cases/shift`,
      ['target', 'must be at most 1000 1/s'],
    ],
    [
      'a time that falls',
      '1 to 2 min',
      '2 to 1 min',
      ['line.sealer.breakdowns.repair', 'the smaller time must come first', 'did you mean `1 min to 2 min`?'],
    ],
    ['a time between one', '1 to 2 min', '2 to 2 min', ['both ends are the same', 'did you mean `2 min`?']],
    [
      'a time between two lengths',
      '1 to 2 min',
      '1 to 2 mm',
      ['line.sealer.breakdowns.repair', 'unit of a length'],
    ],
    [
      'a shift between two',
      'length: 8 h',
      'length: 7 to 8 h',
      ['shift.length', 'only for a time that varies', 'one time, or a guess'],
    ],
    [
      'stops a shift of a chance',
      'type: sealer',
      'type: sealer\n    jams: {chance: 10 stops per shift, clear: 1 min}',
      ['line.sealer.jams.chance', 'is not a unit of a share', 'count it in cases'],
    ],
    [
      'no stops',
      '10 stops per shift',
      '0 stops per shift',
      ['line.sealer.breakdowns.after', 'not a unit of a time'],
    ],
  ])('%s', (_, from, to, said) => {
    const message = refused(changed(from, to))
    for (const each of said) expect(message).toContain(each)
  })

  it('a shift of which nothing is left says so, and no rate', () => {
    expect(refused(changed('length: 8 h', 'length: 10 min'))).toContain('shift')
  })
})
