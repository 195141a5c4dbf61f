/** Scenarios as they may be: what is drawn, what stays, and that each input has random numbers of its own. */
import { describe, expect, it } from 'vitest'
import { Stream } from '../../src/engine/stream.js'
import { type Drawn, drawInputs } from '../../src/inputs/draw.js'
import { chanceAt, guessAt, rateAt } from '../../src/inputs/posterior.js'
import { type Loaded, type LoadOptions, loadScenario } from '../../src/scenario/load.js'
import { starterScenario } from '../../src/scenario/starter.js'

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
shift: {length: 8 h, breaks: [{at: 2 h, for: 15 min}]}
`
const jams = 'line.sealer.jams.chance'
const clear = 'line.sealer.jams.clear'
const after = 'line.sealer.breakdowns.after'

const load = (sets: readonly string[], options: LoadOptions = {}): Loaded =>
  loadScenario(line, { sets, ...options })
const sealerOf = ({ scenario }: Pick<Drawn, 'scenario'>) => {
  const sealer = scenario.line.sealer!
  if (sealer.type !== 'sealer') throw new Error('no sealer')
  return sealer
}

/** The first number of the stream of an input. */
const numberOf = (path: string, draw: number): number => {
  const stream = new Stream(path, 'input')
  stream.begin('seed', draw)
  return stream.next()
}

const draws = (loaded: Loaded, count: number): Drawn[] =>
  Array.from({ length: count }, (_, index) => drawInputs(loaded, 'seed', index + 1))

describe('a draw of inputs', () => {
  it('is by inversion of one number each: counts and a guess by hand', () => {
    const loaded = load([
      `${jams}=36 in 40000 cases`,
      `${after}=18 in 640 h`,
      'tape.leg={guess: 70 mm, between: [60 mm, 80 mm]}',
    ])
    for (const number of [1, 2, 3]) {
      const drawn = drawInputs(loaded, 'seed', number)
      const chance = chanceAt(numberOf(jams, number), 36, 40_000)
      const mean = 1 / rateAt(numberOf(after, number), 18, 640 * 3600)
      const leg = guessAt(numberOf('tape.leg', number), { low: 0.06, high: 0.08, spread: 'lognormal' })
      expect(sealerOf(drawn).jams!.chance).toBe(chance)
      expect(sealerOf(drawn).breakdowns!.after).toEqual({ law: 'exponential', mean })
      expect(drawn.scenario.tape.leg).toBe(leg)
      expect(drawn.inputs).toEqual([chance, mean, leg])
    }
  })

  it('is the same again, and another one by another number or seed', () => {
    const loaded = load([`${jams}=36 in 40000 cases`])
    const one = drawInputs(loaded, 'seed', 1).inputs
    expect(drawInputs(loaded, 'seed', 1).inputs).toEqual(one)
    expect(drawInputs(loaded, 'seed', 2).inputs).not.toEqual(one)
    expect(drawInputs(loaded, 'other', 1).inputs).not.toEqual(one)
  })

  it('owes nothing to what else is known', () => {
    const alone = drawInputs(load([`${jams}=36 in 40000 cases`]), 'seed', 4)
    const among = drawInputs(
      load([
        `${jams}=36 in 40000 cases`,
        `${clear}={gamma: {mean: 80 s, cv: 0.8, from: 40}}`,
        'tape.leg={guess: 70 mm, between: [60 mm, 80 mm]}',
      ]),
      'seed',
      4,
    )
    expect(sealerOf(among).jams!.chance).toBe(sealerOf(alone).jams!.chance)
  })

  it('leaves the scenario as it is, and shares with it all that is not drawn', () => {
    const loaded = load([`${jams}=36 in 40000 cases`])
    const before = structuredClone(loaded.scenario)
    const { scenario } = drawInputs(loaded, 'seed', 1)
    expect(loaded.scenario).toEqual(before)
    expect(scenario.line.infeed).toBe(loaded.scenario.line.infeed)
    expect(scenario.arrivals).toBe(loaded.scenario.arrivals)
    expect(sealerOf({ scenario }).jams!.clear).toBe(sealerOf(loaded).jams!.clear)
    expect(scenario.line.sealer).not.toBe(loaded.scenario.line.sealer)
  })

  it('without evidence is the scenario', () =>
    expect(drawInputs(load([]), 'seed', 1).scenario).toEqual(load([]).scenario))

  it('of no breakdown in 640 h is some time between them: a mean below 640 h over 1.92 in 5 of 100', () => {
    const all = draws(load([`${after}=0 in 640 h`]), 400)
    const short = all.filter(({ inputs }) => inputs[0]! < (640 * 3600) / (3.841459 / 2)).length
    // four standard errors of 5 % of 400
    expect(Math.abs(short / 400 - 0.05)).toBeLessThan(4 * Math.sqrt((0.05 * 0.95) / 400))
    expect(all.every(({ inputs }) => inputs[0]! < Infinity)).toBe(true)
  })

  it('of observed values takes as many of them, sorted', () => {
    const loaded = load([`${clear}={observed: {file: f, column: c, unit: s}}`], {
      readColumn: () => ['1', '2', '4', '8', '16'],
    })
    const all = draws(loaded, 200).map((each) => (sealerOf(each).jams!.clear as { values: number[] }).values)
    for (const values of all) {
      expect(values).toHaveLength(5)
      expect([...values].sort((a, b) => a - b)).toEqual(values)
      expect(values.every((value) => [1, 2, 4, 8, 16].includes(value))).toBe(true)
    }
    // the longest is missing in (4/5)^5 = 32.8 % of them
    const without = all.filter((values) => !values.includes(16)).length / 200
    expect(Math.abs(without - 0.8 ** 5)).toBeLessThan(4 * Math.sqrt((0.328 * 0.672) / 200))
  })

  it('goes no further than the key allows', () => {
    const loaded = load(['line.sealer.tape-breaks={chance: 1 in 2 strips, fix: 9 s}'])
    for (const each of draws(loaded, 100))
      expect(sealerOf(each)['tape-breaks']!.chance).toBeLessThanOrEqual(0.5)
  })
})

describe('shares of a mixture', () => {
  const shares = (text: string, count = 400) =>
    draws(load([`${clear}={mixture: ${text}}`]), count).map((each) =>
      (sealerOf(each).jams!.clear as { mixture: { share: number }[] }).mixture.map(({ share }) => share),
    )

  it.each([
    '[{share: 30 in 40 stops, law: 9 s}, {share: 10 in 40 stops, law: 99 s}]',
    '[{share: 30 in 40 stops, law: 9 s}, {share: 25 %, law: 99 s}]',
    '[{share: {guess: 50 %, between: [40 %, 60 %]}, law: 9 s}, {share: 20 %, law: 99 s}, {share: 30 %, law: 5 s}]',
  ])('%s are all of it', (text) => {
    for (const each of shares(text, 50)) {
      expect(each.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 12)
      expect(each.every((share) => share > 0 && share < 1)).toBe(true)
    }
  })

  it('counted, of two parts, are beta: mean and deviation', () => {
    for (const text of [
      '[{share: 30 in 40 stops, law: 9 s}, {share: 10 in 40 stops, law: 99 s}]',
      '[{share: 30 in 40 stops, law: 9 s}, {share: 25 %, law: 99 s}]',
    ]) {
      const first = shares(text).map(([share]) => share!)
      const [a, b] = [30.5, 10.5]
      const mean = a / (a + b)
      const sd = Math.sqrt((a * b) / ((a + b) ** 2 * (a + b + 1)))
      const found = first.reduce((sum, share) => sum + share, 0) / 400
      const spread = Math.sqrt(first.reduce((sum, share) => sum + (share - mean) ** 2, 0) / 400)
      expect(Math.abs(found - mean)).toBeLessThan((4 * sd) / 20)
      // a deviation from 400 is known to 1 in 28
      expect(Math.abs(spread / sd - 1)).toBeLessThan(4 / Math.sqrt(800))
    }
  })

  it('that are not drawn keep their proportions in what is left', () => {
    for (const [, second, third] of shares(
      '[{share: {guess: 50 %, between: [40 %, 60 %]}, law: 9 s}, {share: 20 %, law: 99 s}, {share: 30 %, law: 5 s}]',
      20,
    ))
      expect(third! / second!).toBeCloseTo(1.5, 9)
  })
})

describe('rules between keys', () => {
  it('hold in every draw', () => {
    const loaded = load([
      `${clear}={triangular: {low: {guess: 20 s, between: [10 s, 50 s]}, mode: 40 s, high: 60 s}}`,
      'shift.breaks.0.at={guess: 7 h, between: [6 h, 7.9 h]}',
      'site={temperature: [{guess: 15 degC, between: [5 degC, 25 degC]}, 20 degC]}',
    ])
    for (const { scenario } of draws(loaded, 60)) {
      const law = sealerOf({ scenario }).jams!.clear as { low: number }
      expect(law.low).toBeLessThanOrEqual(40)
      const [cold, warm] = scenario.site!.temperature!
      expect(cold).toBeLessThanOrEqual(warm)
      const [pause] = scenario.shift.breaks
      expect(pause!.at + pause!.for).toBeLessThanOrEqual(scenario.shift.length)
    }
  })

  it('that guesses hardly ever keep are told', () => {
    const loaded = load([
      `${clear}={triangular: {low: {guess: 40 s, between: [40 s, 4000 h]}, mode: 40 s, high: 60 s}}`,
    ])
    const never = () =>
      draws(
        {
          ...loaded,
          evidence: loaded.evidence.map((each) => ({ ...each, known: { ...each.known, low: 1e6 } as never })),
        },
        1,
      )
    expect(never).toThrow(/line.sealer.jams.clear.triangular.low.* make the ranges narrower/)
  })
})

describe('the starter', () => {
  it('has a draw in less than some milliseconds', () => {
    const loaded = loadScenario(starterScenario)
    expect(loaded.evidence.map(({ known }) => known.form).sort()).toEqual([
      ...['count', 'count', 'count', 'count', 'fitted', 'fitted', 'fitted', 'guess'],
    ])
    const all = draws(loaded, 50)
    expect(new Set(all.map(({ inputs }) => inputs.join())).size).toBe(50)
    expect(all.every(({ inputs }) => inputs.every((each) => each > 0 && each < Infinity))).toBe(true)
  })
})
