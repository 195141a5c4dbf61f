/** Loading: every finding at its place, defaults named, overrides and variants applied, hostile files survived. */
import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { type LoadOptions, loadScenario } from '../../src/scenario/load.js'
import { type Problem, problemText, ScenarioError } from '../../src/scenario/problems.js'
import { starterScenario } from '../../src/scenario/starter.js'

const demo = (name: string) => readFileSync(new URL(`../../scenarios/${name}.yaml`, import.meta.url), 'utf8')

const small = `cases:
  a: {length: 400 mm, width: 300 mm, height: 250 mm}
arrivals:
  p: {time-between: 5 s}
line:
  infeed: {type: conveyor, length: 6 m}
  sealer: {type: sealer}
shift: {length: 8 h}
`

function problems(text: string, options: LoadOptions = {}): readonly Problem[] {
  try {
    loadScenario(text, { file: 'line.yaml', ...options })
  } catch (error) {
    if (error instanceof ScenarioError) return error.problems
    throw error
  }
  return []
}

const brief = (text: string, options: LoadOptions = {}) =>
  problems(text, options).map(({ code, path, line, column }) => [code, path, line, column])

describe('a scenario', () => {
  it('that names only cases, arrivals, line and shift is complete; what was assumed is listed with its basis', () => {
    const { scenario, assumed } = loadScenario(small)
    expect(scenario.tape.width).toBeCloseTo(0.048, 12)
    expect(Object.keys(scenario.line.sealer!.type === 'sealer' ? scenario.line.sealer!.heads : {})).toEqual([
      'top',
      'bottom',
    ])
    expect(assumed).toContainEqual({ path: 'tape.leg', value: '70 mm', basis: 'common practice, no source' })
    expect(assumed).toContainEqual({
      path: 'line.sealer.heads.top.cut.reset',
      value: '0.45 s',
      basis: 'from memory, low confidence',
    })
    expect(assumed.map(({ path }) => path)).not.toContain('line.infeed.length')
    // stops that the scenario does not name do not happen
    expect(assumed.some(({ path }) => /jams|blade|breakdowns/.test(path))).toBe(false)
  })

  it('resolved is a scenario that resolves to itself', () => {
    const first = loadScenario(small)
    const second = loadScenario(JSON.stringify(first.resolved))
    expect(second.resolved).toEqual(first.resolved)
    expect(second.assumed).toEqual([])
    expect(second.scenario).toEqual(first.scenario)
  })

  it.each(['soap-works', 'refill-hall'])(
    'the demo %s loads, with its variants, and asks its question first',
    (name) => {
      const text = demo(name)
      expect(loadScenario(text).variants.length).toBeGreaterThan(0)
      expect(text.split('\n')[0]).toBe('# yaml-language-server: $schema=./scenario.schema.json')
      expect(text.split('\n')[1]).toMatch(/^# Question: .+\?$/)
    },
  )

  it('the starter loads, and says a word on each line that holds a key of its own', () => {
    expect(loadScenario(starterScenario).scenario.title).toBe('My sealing line')
  })

  it('gives outside dimensions by inside ones and the flute: L + 2t, W + 2t, H + 4t', async () => {
    const { outsideSize } = await import('../../src/scenario/outside.js')
    const { scenario } = loadScenario(
      small.replace(
        'length: 400 mm, width: 300 mm, height: 250 mm',
        'inside: {length: 480 mm, width: 310 mm, height: 280 mm}, flute: BC',
      ),
    )
    const { length, width, height } = outsideSize(scenario.cases.a!)
    expect([length, width, height].map((side) => Math.round(side * 1e6) / 1e6)).toEqual([0.494, 0.324, 0.308])
  })
})

describe('findings', () => {
  it('come all at once, each with line, column, caret, rule and mend', () => {
    const text = small
      .replace('400 mm', '400')
      .replace('5 s', '5 sek')
      .replace('conveyor', 'conveyer')
      .replace('shift:', 'bogus: 1\nshift:')
    expect(brief(text)).toEqual([
      ['no-unit', 'cases.a.length', 2, 15],
      ['unknown-unit', 'arrivals.p.time-between', 4, 21],
      ['not-allowed', 'line.infeed.type', 6, 18],
      ['unknown-key', 'bogus', 8, 1],
    ])
    const [first] = problems(text)
    expect(
      problemText(first!),
    ).toBe(`line.yaml:2:15: cases.a.length: a length needs a unit: m, mm, cm, um, in, ft, yd [no-unit]
    2 |   a: {length: 400, width: 300 mm, height: 250 mm}
      |               ^
    found: 400
    fix:   which of these is meant: \`400 mm\`, \`400 cm\` or \`400 in\`?`)
  })

  it.each([
    [
      'speled key',
      small.replace('length: 6 m', 'lenght: 6 m'),
      [
        ['missing-key', 'line.infeed.length', 6, 3],
        ['unknown-key', 'line.infeed.lenght', 6, 28],
      ],
    ],
    ['negative length', small.replace('6 m', '-6 m'), [['out-of-range', 'line.infeed.length', 6, 36]]],
    ['zero length', small.replace('6 m', '0 m'), [['out-of-range', 'line.infeed.length', 6, 36]]],
    [
      'case longer than the conveyor',
      small.replace('6 m', '0.3 m'),
      [['conflict', 'line.infeed.length', 6, 36]],
    ],
    ['case longer than the belts', small.replace('400 mm', '2 m'), [['conflict', 'line.sealer.bed', 7, 3]]],
    [
      'belt faster than the heads',
      small.replace('{type: sealer}', '{type: sealer, belt-speed: 30 m/min}'),
      [['conflict', 'line.sealer.belt-speed', 7, 38]],
    ],
    [
      'tape too wide',
      `${small}tape: {width: 72 mm}`,
      [
        ['conflict', 'line.sealer.heads.top.takes', 7, 3],
        ['conflict', 'line.sealer.heads.bottom.takes', 7, 3],
      ],
    ],
    ['empty mix', small.replace('{length', '{share: 0, length'), [['conflict', 'cases', 1, 1]]],
    [
      'no cases',
      small.replace('cases:\n  a: {length: 400 mm, width: 300 mm, height: 250 mm}', 'cases: {}'),
      [['missing-key', 'cases', 1, 1]],
    ],
    [
      'two laws',
      small.replace('5 s', '{exponential: {mean: 5 s}, gamma: {mean: 5 s, cv: 1}}'),
      [['one-of', 'arrivals.p.time-between', 4, 7]],
    ],
    ['time and rate', small.replace('5 s', '5 s, rate: 3 cases/min'), [['one-of', 'arrivals.p', 4, 3]]],
    ['nothing between', small.replace('5 s', '0 s'), [['out-of-range', 'arrivals.p.time-between', 4, 21]]],
    ['too many cases', small.replace('5 s', '1e-9 s'), [['out-of-range', 'arrivals.p.time-between', 4, 21]]],
    [
      'inside without flute',
      small.replace(
        'length: 400 mm, width: 300 mm, height: 250 mm',
        'inside: {length: 4 in, width: 3 in, height: 2 in}',
      ),
      [['missing-key', 'cases.a', 2, 3]],
    ],
    [
      'a target that does not exist',
      small.replace('length: 6 m', 'length: 6 m, to: seeler'),
      [['no-such-path', 'line.infeed.to', 6, 45]],
    ],
    [
      'a loop that no case can leave',
      small.replace('{type: sealer}', '{type: sealer, to: infeed}'),
      [['conflict', 'line.sealer.to', 7, 30]],
    ],
    [
      'nobody for a task',
      `${small}crew: {o: {does: [jams]}}`,
      [['conflict', 'line.sealer.roll-change', 7, 3]],
    ],
    [
      'breaks that overlap',
      small.replace('8 h', '8 h, breaks: [{at: 2 h, for: 15 min}, {at: 2 h, for: 5 min}]'),
      [['conflict', 'shift.breaks.1', 8, 55]],
    ],
    [
      'a break after the end',
      small.replace('8 h', '1 h, breaks: [{at: 2 h, for: 15 min}]'),
      [['conflict', 'shift.breaks.0', 8, 31]],
    ],
    ['a name that is none', small.replace('infeed:', '2nd:'), [['bad-name', 'line.2nd', 6, 3]]],
    ['a dot in a name', small.replace('infeed:', 'in.feed:'), [['bad-name', 'line.in.feed', 6, 3]]],
    [
      'triangular out of order',
      small.replace('5 s', '{triangular: {low: 3 s, mode: 2 s, high: 4 s}}'),
      [['conflict', 'arrivals.p.time-between.triangular', 4, 22]],
    ],
    [
      'another currency',
      `${small}tape: {price: 40 USD/roll}\nmoney: {currency: EUR}`,
      [['conflict', 'tape.price', 9, 15]],
    ],
    [
      'a roll too short',
      `${small}tape: {roll: 1 m, lost-per-roll: 0.9 m}`,
      [['conflict', 'tape.roll', 9, 14]],
    ],
    ['a list for a map', small.replace('{length: 8 h}', '[1]'), [['wrong-type', 'shift', 8, 8]]],
    [
      'a variant path',
      `${small}variants: {v: {set: {line.seeler.bed: 2 m}}}`,
      [['no-such-path', 'line.seeler.bed', 9, 39]],
    ],
    [
      'a variant value',
      `${small}variants: {v: {set: {line.sealer.bed: 2}}}`,
      [['no-unit', 'line.sealer.bed', 9, 39]],
    ],
    [
      'a file that cannot be read',
      small.replace('5 s', '{observed: {file: x.csv, column: a, unit: s}}'),
      [['file', 'arrivals.p.time-between.observed.file', 4, 39]],
    ],
  ])('%s', (_, text, expected) => {
    expect(brief(text)).toEqual(expected)
  })

  // what is suggested means what was written, or has plainly another number
  it.each([
    [
      'jams',
      '{chance: 1 %, clear: {observed: {file: x.csv, column: a, unit: minutes}}}',
      'did you mean `min`?',
    ],
    [
      'jams',
      '{chance: 1 %, clear: {observed: {file: x.csv, column: a, unit: m}}}',
      'allowed here: s, min, h, ms, d, wk, yr',
    ],
    ['jams', '{chance: 10 per 4000, clear: 9}', 'which of these is meant: `9 s`, `9 min` or `9 h`?'],
    ['bed', '200 m', 'use a value that is at most 100 m'],
  ])('of %s as %s say %s', (key, value, fix) => {
    const text = small.replace('type: sealer', `type: sealer, ${key}: ${value}`)
    expect(problems(text).map((problem) => problem.fix)).toEqual([fix])
  })

  it('show an amount of money in its form with another number', () => {
    const [problem] = problems(`${small}money: {currency: EUR, energy: 42 EUR}\n`)
    expect(problem!.fix).toBe('write it like `84 EUR/kWh`')
  })

  it('suggest the nearest word', () => {
    expect(problems(small.replace('length: 6 m', 'length: 6 m, carrys: belt'))[0]!.fix).toBe(
      'did you mean `carries`?',
    )
    expect(problems(`${small}variants: {v: {set: {line.seeler.bed: 2 m}}}`)[0]!.fix).toBe(
      'did you mean `sealer`?',
    )
  })
})

describe('overrides', () => {
  it('set one value; what was assumed there is given now', () => {
    const { scenario, assumed } = loadScenario(small, {
      sets: ['tape.width=36 mm', 'line.infeed.speed=60 ft/min'],
    })
    expect(scenario.tape.width).toBeCloseTo(0.036, 12)
    expect(assumed.map(({ path }) => path)).not.toContain('tape.width')
  })

  it('may bring a whole section, and leave the heads that they do not name as they were', () => {
    const { scenario } = loadScenario(small, {
      sets: ['line.sealer.jams={chance: 1 %, clear: 60 s}', 'line.sealer.heads.top.position=1 m'],
    })
    const sealer = scenario.line.sealer!
    expect(sealer.type === 'sealer' && sealer.jams?.chance).toBeCloseTo(0.01, 12)
    expect(sealer.type === 'sealer' && sealer.heads.bottom?.position).toBeCloseTo(0.9, 12)
  })

  it('by the path of a price, which holds dots', () => {
    const { scenario } = loadScenario(`${small}money: {currency: EUR}`, {
      sets: ['money.capital={line.sealer: 5 EUR}', 'money.capital.line.infeed=7 EUR'],
    })
    expect(scenario.money!.capital).toEqual({
      'line.sealer': { amount: 5, currency: 'EUR', per: null },
      'line.infeed': { amount: 7, currency: 'EUR', per: null },
    })
  })

  it.each([
    ['line.infed.speed=3 m/min', 'no-such-path', 'did you mean `infeed`?'],
    ['line.infeed.speed=3', 'no-unit', 'which of these is meant: `3 m/min`, `3 m/s` or `3 ft/min`?'],
    ['shift.breaks.length=9', 'no-such-path', expect.any(String)],
    ['shift.breaks.-1={at: 1 h}', 'no-such-path', expect.any(String)],
    ['tape.roll=1e10 m', 'out-of-range', expect.any(String)],
    ['nonsense', 'no-such-path', 'such as --set "line.sealer.belt-speed=30 m/min"'],
    ['__proto__.x=1', 'no-such-path', expect.any(String)],
    ['line.constructor.x=1', 'no-such-path', expect.any(String)],
  ])('%s is %s', (set, code, fix) => {
    const [problem] = problems(small, { sets: [set] })
    expect(problem).toMatchObject({ code, fix, source: `--set ${set}` })
  })

  it('of a variant are applied when it is chosen, and checked when it is not', () => {
    const text = `${small}variants: {long: {note: longer, set: {line.infeed.length: 9 m}}}`
    expect(loadScenario(text).scenario.line.infeed).toMatchObject({ length: 6 })
    expect(loadScenario(text, { variant: 'long' }).scenario.line.infeed).toMatchObject({ length: 9 })
    expect(problems(text, { variant: 'lang' })[0]).toMatchObject({
      code: 'no-such-path',
      fix: 'did you mean `long`?',
    })
  })
})

describe('observed times', () => {
  const text = small.replace('5 s', '{observed: {file: stops.csv, column: repair, unit: min}}')

  it('are read in their unit and sorted', () => {
    const { scenario } = loadScenario(text, { readColumn: () => ['3', '1.5', '2'] })
    expect(scenario.arrivals.p!['time-between']).toMatchObject({ law: 'observed', values: [90, 120, 180] })
  })

  it.each([[['1', 'x']], [['1', '']], [['-1']], [[]], [['1e999']]])('%j are refused', (cells) => {
    expect(problems(text, { readColumn: () => cells })).toMatchObject([
      { code: 'file', path: 'arrivals.p.time-between.observed.file' },
    ])
  })
})

describe('hostile files', () => {
  const bomb = `a: &a [x,x,x,x,x,x,x,x,x]\n${'bcdefgh'
    .split('')
    .map((name, index) => `${name}: &${name} [${Array(9).fill(`*${'abcdefg'[index]}`).join(',')}]`)
    .join('\n')}`

  it.each([
    ['an empty file', '', 'not-yaml'],
    ['a list', '- 1\n- 2', 'not-yaml'],
    ['a number', '42', 'not-yaml'],
    ['broken YAML', 'cases: {a: [}', 'not-yaml'],
    ['binary', '\u0000\u0001\u0002\u007fELF', 'not-yaml'],
    ['the same key twice', `${small}shift: {length: 8 h}`, 'not-yaml'],
    ['a YAML bomb', bomb, 'too-large'],
    ['deep nesting', '['.repeat(100_000), 'not-yaml'],
    ['deep nesting that closes', `cases: ${'['.repeat(20_000)}${']'.repeat(20_000)}`, 'not-yaml'],
    ['deep maps that close', `cases: ${'{a: '.repeat(20_000)}1${'}'.repeat(20_000)}`, 'not-yaml'],
    ['a megabyte', `# ${'x'.repeat(1_000_001)}`, 'too-large'],
    ['a tag', 'cases: !!js/function "x"', 'not-yaml'],
  ])('%s is a finding, not a crash', (_, text, code) => {
    const found = problems(text)
    expect(found.length).toBeGreaterThan(0)
    expect(found[0]!.code).toBe(code)
  })

  it('control characters of a file do not reach the terminal', () => {
    const found = problems(small.replace('conveyor', '"\\u001b[31mred"'))
    expect(found).toHaveLength(1)
    expect(problemText(found[0]!)).not.toContain('\u001b')
  })

  it('a name `__proto__` is refused where it stands', () => {
    const found = brief(small.replace('  a: {', '  __proto__: {length: 5 mm}\n  a: {'))
    expect(found).toEqual([['bad-name', 'cases.__proto__', 2, 3]])
  })

  it('two documents in one file, said in our words', () => {
    expect(problems(`${small}---\n${small}`)[0]!.rule).toContain('one document')
  })

  it('a prototype cannot be polluted', () => {
    problems('__proto__: {polluted: 1}\nconstructor: {prototype: {polluted: 1}}')
    expect(({} as Record<string, unknown>).polluted).toBeUndefined()
  })
})
