/** What values rest on: every form wherever a value may stand, what comes of it, and what is wrong with those that are none. */
import { describe, expect, it } from 'vitest'
import { heldFixed } from '../../src/scenario/evidence.js'
import type { Evidence } from '../../src/scenario/known.js'
import { type Loaded, type LoadOptions, loadScenario } from '../../src/scenario/load.js'
import { ScenarioError } from '../../src/scenario/problems.js'

const line = `cases:
  a: {length: 400 mm, width: 300 mm, height: 250 mm}
arrivals:
  p: {time-between: 5 s}
line:
  infeed: {type: conveyor, length: 6 m}
  sealer:
    type: sealer
    jams: {chance: 1 per 1000 cases, clear: 60 s}
    breakdowns: {after: 40 h, repair: 10 min}
shift: {length: 8 h}
money: {currency: EUR, labour: 30 EUR/h}
site: {temperature: [5 degC, 30 degC]}
variants:
  other: {set: {tape.leg: {guess: 70 mm, between: [60 mm, 80 mm]}}}
`

const jams = 'line.sealer.jams.chance'
const clear = 'line.sealer.jams.clear'
const after = 'line.sealer.breakdowns.after'

const load = (...sets: string[]): Loaded => loadScenario(line, { sets })
const sealer = (loaded: Loaded) =>
  loaded.scenario.line.sealer as Extract<Loaded['scenario']['line'][string], { type: 'sealer' }>

/** What one value rests on, without its place. */
const known = (...sets: string[]): Evidence['known'][] => load(...sets).evidence.map((each) => each.known)

const found = (set: string, options: LoadOptions = {}): string => {
  try {
    loadScenario(line, { sets: [set], ...options })
  } catch (error) {
    if (!(error instanceof ScenarioError)) throw error
    return error.problems.map(({ code, path, rule, fix }) => `${code} ${path}: ${rule} | ${fix}`).join('\n')
  }
  return 'nothing'
}

describe('a count', () => {
  it.each([
    ['36 in 40000 cases', 36 / 40_000, 'cases'],
    ['1 in 1 case', 1, 'cases'],
    [' 3  in 1e4 strips ', 3e-4, 'strips'],
    ['0 in 4000 cases', 0, 'cases'],
  ])('of a chance, %s', (text, value, counted) => {
    const loaded = load(`${jams}=${text}`)
    expect(sealer(loaded).jams!.chance).toBe(value)
    expect(loaded.evidence).toMatchObject([
      {
        path: jams,
        at: jams.split('.'),
        of: { dimension: 'share' },
        known: { form: 'count', of: 'chance', counted, least: 0, most: 1 },
      },
    ])
  })

  it.each([
    ['18 in 640 h', (640 * 3600) / 18],
    ['1 in 90 min', 5400],
    ['7 in 2 wk', 2 * 86_400],
  ])('of a time that varies, %s: exponential', (text, mean) => {
    const loaded = load(`${after}=${text}`)
    expect(sealer(loaded).breakdowns!.after).toEqual({ law: 'exponential', mean })
    expect(loaded.evidence[0]).toMatchObject({
      at: after.split('.'),
      known: { form: 'count', of: 'interval' },
    })
  })

  it.each([
    ['2150 in 4 h', 2150 / 14_400],
    ['10 in 1 min', 10 / 60],
    ['1 in 1 d', 1 / 86_400],
  ])('of a rate, %s', (text, rate) => {
    const loaded = load(`arrivals.p={rate: ${text}}`)
    expect(loaded.scenario.arrivals.p!.rate).toBeCloseTo(rate, 12)
    expect(loaded.evidence[0]).toMatchObject({
      path: 'arrivals.p.rate',
      known: { form: 'count', of: 'rate' },
    })
  })

  it('of no breakdown means that none is simulated', () => {
    expect(sealer(load(`${after}=0 in 640 h`)).breakdowns!.after).toEqual({
      law: 'exponential',
      mean: Infinity,
    })
  })

  it.each([
    [`${jams}=36 in 0 cases`, /out-of-range .*a count in 0 cases/],
    [`${jams}=36 in 30 cases`, /out-of-range .*more events than cases/],
    [`${jams}=-3 in 30 cases`, /out-of-range .*must not be negative/],
    [`${jams}=3.5 in 30 cases`, /out-of-range .*whole number/],
    [`${jams}=3 in 30.5 cases`, /out-of-range .*whole number/],
    [`${jams}=1e999 in 1e999 cases`, /out-of-range .*at most 999999999999/],
    [`${jams}=3 in 1e300 cases`, /out-of-range .*at most 999999999999/],
    [
      `${jams}=36 in 40000`,
      /no-unit .*a word for what was counted: cases, strips, jams, stops \| such as `36 in 40000 cases`/,
    ],
    [`${jams}=36 in 40000 boxes`, /unknown-unit .*`boxes`/],
    [`${jams}=36 in 40000 casse`, /unknown-unit .*did you mean `cases`/],
    [`${jams}=36 in 640 h`, /wrong-unit .*not per time/],
    [`${jams}=36 in 40,000 cases`, /not-a-quantity .*is not a count/],
    [`${jams}=36 in 40 000 cases`, /not-a-quantity .*did you mean `40000`/],
    [`${jams}=36 jams in 40000 cases`, /not-a-quantity .*`36 jams` is not a count .*did you mean `36`/],
    [`${after}=18 in 4000 cases`, /wrong-unit .*counted per time/],
    [`${after}=18 in 640`, /no-unit /],
    [`${after}=18 in 0 h`, /out-of-range .*above 0/],
    [`${after}=1e999 in 5 h`, /out-of-range .*at most/],
    [`${after}=18 in 1e999 h`, /out-of-range .*finite/],
    [`${after}=900000 in 5 h`, /out-of-range .*mean must be at least 1 s/],
    [`${clear}=0 in 640 h`, /out-of-range .*only breakdowns may have a count of 0/],
    ['arrivals.p={rate: 0 in 4 h}', /out-of-range .*above 0/],
    ['line.infeed.length=3 in 5 m', /unknown-unit/],
    ['crew={a: {people: 2 in 3 h, does: [jams, roll-change, breakdowns]}}', /wrong-type .*must be a number/],
    ['target=9 in 1 min', /not-allowed .*chosen, not measured/],
  ])('%s: is told what is wrong', (set, words) => expect(found(set)).toMatch(words))

  it('of any digits ends in a value or a finding, and soon', () => {
    for (const text of [
      '9'.repeat(500),
      '1 in '.repeat(60),
      ' in ',
      '1 in',
      'in 5 cases',
      '0x10 in 0x20 cases',
      '١ in ٢ cases',
    ])
      expect(found(`${jams}=${text}`)).not.toBe('nothing')
  })
})

describe('observations behind a law', () => {
  it.each([
    ['{exponential: {mean: 90 s, from: 12}}', { law: 'exponential', mean: 90 }, 12],
    ['{lognormal: {mean: 85 s, cv: 0.8, from: 40}}', { law: 'lognormal', mean: 85, cv: 0.8 }, 40],
    ['{normal: {mean: 85 s, sd: 5 s, from: 7}}', { law: 'normal', mean: 85, sd: 5, atLeast: 0 }, 7],
    ['{gamma: {mean: 85 s, cv: 0.8, from: 2}}', { law: 'gamma', mean: 85, cv: 0.8 }, 2],
    ['{erlang: {mean: 85 s, phases: 3, from: 9}}', { law: 'erlang', mean: 85, phases: 3 }, 9],
    ['{weibull: {shape: 1.2, scale: 85 s, from: 9}}', { law: 'weibull', shape: 1.2, scale: 85 }, 9],
  ])('%s', (text, law, observations) => {
    const loaded = load(`${clear}=${text}`)
    expect(sealer(loaded).jams!.clear).toEqual(law)
    expect(loaded.evidence).toMatchObject([
      { path: clear, at: clear.split('.'), known: { form: 'fitted', observations } },
    ])
  })

  it('are of each part in a mixture, and its share may be a count', () => {
    const parts =
      '[{share: 30 in 40 stops, law: {lognormal: {mean: 50 s, cv: 0.5, from: 30}}}, {share: 10 in 40 stops, law: 8 min}]'
    const loaded = load(`${clear}={mixture: ${parts}}`)
    expect(sealer(loaded).jams!.clear).toEqual({
      law: 'mixture',
      mixture: [
        { share: 0.75, law: { law: 'lognormal', mean: 50, cv: 0.5 } },
        { share: 0.25, law: { law: 'constant', value: 480 } },
      ],
    })
    expect(loaded.evidence.map(({ path, at }) => [path, at.join('.')])).toEqual(
      ['mixture.0.share', 'mixture.0.law', 'mixture.1.share'].map((each) => [
        `${clear}.${each}`,
        `${clear}.${each}`,
      ]),
    )
  })

  it('in a file are read in a part of a mixture too, and what is wrong there is told at its place', () => {
    const set = `${clear}={mixture: [{share: 50 %, law: {observed: {file: stops.csv, column: s, unit: s}}}, {share: 50 %, law: 9 s}]}`
    const { evidence } = loadScenario(line, { sets: [set], readColumn: () => ['5', '9'] })
    expect(evidence).toMatchObject([
      { path: `${clear}.mixture.0.law`, known: { form: 'observed', observations: 2 } },
    ])
    expect(found(set, { readColumn: () => ['x'] })).toMatch(
      /^file line.sealer.jams.clear.mixture.0.law.observed.file: row 2/,
    )
  })

  it('in a file are counted once they are read', () => {
    const { evidence } = loadScenario(line, {
      sets: [`${clear}={observed: {file: stops.csv, column: s, unit: s}}`],
      readColumn: () => ['5', '9', '7'],
    })
    expect(evidence).toMatchObject([{ path: clear, known: { form: 'observed', observations: 3 } }])
  })

  it.each([
    [`${clear}={lognormal: {mean: 85 s, cv: 0.8, from: 1}}`, /out-of-range .*at least 2/],
    [`${clear}={lognormal: {mean: 85 s, cv: 0.8, from: 2.5}}`, /wrong-type/],
    [`${clear}={lognormal: {mean: 85 s, cv: 0.8, from: 1e9}}`, /out-of-range .*at most/],
    [`${clear}={uniform: {low: 1 s, high: 2 s, from: 9}}`, /unknown-key .*from/],
    [
      `${clear}={lognormal: {mean: {guess: 85 s, between: [60 s, 99 s]}, cv: 0.8, from: 9}}`,
      /conflict .*fitted to observations/,
    ],
    [
      `${clear}={mixture: [{share: 50 %, law: 3 s}, {share: 49 %, law: 4 s}]}`,
      /conflict .*must add up to 100 %, not 99 %/,
    ],
    [`${clear}={mixture: [{share: 100 %, law: 3 s}]}`, /out-of-range .*at least 2/],
    [`${clear}={mixture: [{share: 0 %, law: 3 s}, {share: 100 %, law: 3 s}]}`, /out-of-range .*above 0/],
    [
      `${clear}={mixture: [{share: 50 %, law: {mixture: [{share: 50 %, law: 3 s}, {share: 50 %, law: 4 s}]}}, {share: 50 %, law: 4 s}]}`,
      /a mixture must not contain a mixture/,
    ],
    [`${clear}={mixture: [], lognormal: {mean: 85 s, cv: 0.8}}`, /at least 2/],
  ])('%s: is told what is wrong', (set, words) => expect(found(set)).toMatch(words))
})

describe('a guess', () => {
  it.each([
    [
      'tape.leg={guess: 70 mm, between: [60 mm, 8 cm]}',
      { low: 0.06, high: 0.08, spread: 'lognormal' },
      'tape.leg',
    ],
    [
      `${jams}={guess: 1 %, between: [0.5 %, 2 per 100 cases]}`,
      { low: 0.005, high: 0.02, spread: 'logit-normal' },
      jams,
    ],
    [
      'site.temperature.0={guess: 5 degC, between: [-10 degC, 41 degF]}',
      { low: 263.15, spread: 'normal' },
      'site.temperature.0',
    ],
    [
      'money.labour={guess: 30 EUR/h, between: [25 EUR/h, 36 EUR/h]}',
      { low: 25, high: 36, spread: 'lognormal' },
      'money.labour.amount',
    ],
    [
      'cases.a.jam-factor={guess: 1.5, between: [1, 3]}',
      { low: 1, high: 3, most: 1000 },
      'cases.a.jam-factor',
    ],
    [`${clear}={guess: 90 s, between: [60 s, 150 s]}`, { low: 60, high: 150 }, `${clear}.value`],
    [
      `${clear}={lognormal: {mean: 90 s, cv: {guess: 0.8, between: [0.5, 1.2]}}}`,
      { low: 0.5, high: 1.2 },
      `${clear}.cv`,
    ],
    [
      `${clear}={normal: {mean: 90 s, sd: 9 s, at-least: {guess: 5 s, between: [3 s, 8 s]}}}`,
      { low: 3, high: 8 },
      `${clear}.atLeast`,
    ],
    [
      'line.sealer.roll-change.low-tape-warning={guess: 40 m, between: [20 m, 60 m]}',
      { low: 20 },
      'line.sealer.roll-change.low-tape-warning',
    ],
    [
      'money.capital={line.sealer: {guess: 20000 EUR, between: [15000 EUR, 24000 EUR]}}',
      { low: 15_000 },
      'money.capital.line.sealer.amount',
    ],
    [
      'closure={load: {guess: 40 N, between: [30 N, 60 N]}, reference: {width: 48 mm, leg: 70 mm, load: 30 N}}',
      { low: 30, high: 60 },
      'closure.load.newtons',
    ],
    [
      'closure={load: {guess: 120 %, between: [110 %, 150 %]}, reference: {width: 48 mm, leg: 70 mm}}',
      { low: 1.1, high: 1.5 },
      'closure.load.share',
    ],
  ])('%s', (set, is, at) => {
    const { evidence } = load(set)
    expect(evidence).toHaveLength(1)
    expect(evidence[0]!.known).toMatchObject({ form: 'guess', ...is })
    expect(evidence[0]!.at.join('.')).toBe(at)
  })

  it('is the value while inputs are held fixed', () => {
    const { scenario } = load(
      'tape.leg={guess: 70 mm, between: [60 mm, 80 mm]}',
      'money.labour={guess: 30 EUR/h, between: [25 EUR/h, 36 EUR/h]}',
    )
    expect(scenario.tape.leg).toBe(0.07)
    expect(scenario.money!.labour).toEqual({ amount: 30, currency: 'EUR', per: 'h' })
  })

  it.each([
    [
      'tape.leg={guess: 70 mm, between: [80 mm, 60 mm]}',
      /conflict tape.leg.between: .*must come first \| swap/,
    ],
    ['tape.leg={guess: 70 mm, between: [70 mm, 70 mm]}', /conflict .*must be different/],
    [
      'tape.leg={guess: 90 mm, between: [60 mm, 80 mm]}',
      /out-of-range tape.leg.guess: .*between its two ends/,
    ],
    ['tape.leg={guess: 70 mm}', /missing-key .*`between` is missing/],
    ['tape.leg={between: [60 mm, 80 mm]}', /missing-key .*`guess` is missing/],
    [
      'tape.leg={guess: 70 mm, betwen: [60 mm, 80 mm]}',
      /unknown-key tape.leg.betwen: .*did you mean `between`/,
    ],
    ['tape.leg={guess: 70 mm, between: 80 mm}', /wrong-type tape.leg.between/],
    ['tape.leg={guess: 70 mm, between: [60, 80 mm]}', /no-unit tape.leg.between.0/],
    ['tape.leg={guess: 70 mm, between: [60 s, 80 mm]}', /wrong-unit tape.leg.between.0/],
    ['tape.leg={guess: 0 mm, between: [0 mm, 80 mm]}', /out-of-range tape.leg.between.0: .*above 0/],
    [
      'tape.leg={guess: {guess: 70 mm, between: [1 mm, 90 mm]}, between: [60 mm, 80 mm]}',
      /not-a-quantity tape.leg.guess/,
    ],
    [`${jams}={guess: 1 %, between: [0 %, 2 %]}`, /out-of-range .*above 0 % and below 100 %/],
    [`${jams}={guess: 90 %, between: [50 %, 100 %]}`, /out-of-range .*above 0 % and below 100 %/],
    [`${jams}={guess: 90 %, between: [50 %, 120 %]}`, /out-of-range .*between.1: must be at most 1/],
    [`${jams}={guess: 3 in 9 cases, between: [1 %, 50 %]}`, /unknown-unit|not-a-quantity/],
    ['money.labour={guess: 30 EUR/h, between: [25 USD/h, 36 EUR/h]}', /conflict .*same currency/],
    ['cases.a.jam-factor={guess: 1e999, between: [1, 1e999]}', /out-of-range|wrong-type/],
    ['cases.a.jam-factor={guess: "2", between: [1, 3]}', /wrong-type cases.a.jam-factor.guess/],
    [
      'crew={a: {people: {guess: 2, between: [1, 3]}, does: [jams, roll-change, breakdowns]}}',
      /not-allowed .*a guess is not allowed here/,
    ],
    ['line.infeed.carries={guess: belt, between: [belt, gravity]}', /not-allowed|wrong-type/],
    ['study.confidence={guess: 90 %, between: [80 %, 95 %]}', /not-allowed .*chosen, not measured/],
    [
      'target={guess: 9 cases/min, between: [8 cases/min, 10 cases/min]}',
      /not-allowed .*chosen, not measured/,
    ],
    ['closure.load={guess: 40 N, between: [30 %, 60 N]}', /conflict .*of the same kind/],
    ['title={guess: a, between: [b, c]}', /not-allowed .*a guess is not allowed/],
    ['line.infeed={guess: 1, between: [1, 2]}', /type/],
  ])('%s: is told what is wrong', (set, words) => expect(found(set)).toMatch(words))
})

describe('evidence', () => {
  it('goes with its value when a change names another one, and comes with one that has some', () => {
    const counted = load(`${jams}=36 in 40000 cases`)
    expect(counted.vary(null, [{ path: jams, value: '1 %', source: 'test' }]).evidence).toEqual([])
    expect(counted.variants[0]!.evidence.map(({ path }) => path)).toEqual([jams, 'tape.leg'])
    expect(known(`${jams}=36 in 40000 cases`, `${jams}=37 in 50000 cases`)).toMatchObject([{ events: 37 }])
    expect(load(`line.sealer.jams={chance: 1 in 9 cases, clear: 9 s}`).evidence).toHaveLength(1)
  })

  it('of a choice for a size is that of the design', () => {
    const text = `${line}size: {choose: {${jams}: [1 %, 36 in 40000 cases]}, holds: [9 cases/min in 95 % of shifts]}\n`
    const loaded = loadScenario(text)
    expect(loaded.evidence).toEqual([])
    expect(
      loaded.vary(null, [{ path: jams, value: '36 in 40000 cases', source: 'test' }]).evidence,
    ).toHaveLength(1)
  })

  it('leaves the rest as it was: what is held fixed is read to the same scenario, without evidence', () => {
    const loaded = load(
      `${jams}=36 in 40000 cases`,
      `${after}=18 in 640 h`,
      `${clear}={mixture: [{share: 30 in 40 stops, law: {gamma: {mean: 9 s, cv: 0.5, from: 30}}}, {share: 10 in 40 stops, law: {guess: 8 min, between: [5 min, 9 min]}}]}`,
      'arrivals.p={rate: 2150 in 4 h}',
      'money.labour={guess: 30 EUR/h, between: [25 EUR/h, 36 EUR/h]}',
      'cases.a.jam-factor={guess: 1.5, between: [1, 3]}',
    )
    expect(loaded.evidence).toHaveLength(9)
    const fixed = loadScenario(JSON.stringify({ ...heldFixed(loaded), variants: {} }))
    expect(fixed.evidence).toEqual([])
    expect(fixed.scenario.arrivals.p!.rate).toBeCloseTo(loaded.scenario.arrivals.p!.rate!, 12)
    const others = ({ scenario }: Loaded) => ({ ...scenario, arrivals: null, variants: null })
    expect(others(fixed)).toEqual(others(loaded))
  })

  it('is nowhere where nothing says so', () => expect(load().evidence).toEqual([]))
})
