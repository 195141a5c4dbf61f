/** What-ifs of the command line and variants of the file: their names, their changes, and what is said of wrong ones. */
import { describe, expect, it } from 'vitest'
import { loadScenario } from '../../src/scenario/load.js'
import { readSet, variantsOf, whatIfsOf } from '../../src/scenario/overrides.js'
import { type Problem, ScenarioError } from '../../src/scenario/problems.js'
import { smallLine } from '../cli/in-process.js'

/** What a what-if changes, by path. */
const changes = (text: string) =>
  whatIfsOf([text], []).map(({ name, overrides }) => [
    name,
    overrides.map(({ path, value }) => [path, value]),
  ])

/** The findings that reading brings. */
function problems(read: () => unknown): Problem[] {
  try {
    read()
  } catch (error) {
    if (error instanceof ScenarioError) return [...error.problems]
    throw error
  }
  return []
}

describe('a what-if', () => {
  it('has a name and changes, with spaces or without', () => {
    const expected = [['wide', [['tape.width', '72 mm']]]]
    expect(changes('wide: tape.width=72 mm')).toEqual(expected)
    expect(changes('wide:tape.width=72 mm')).toEqual(expected)
    expect(changes('  wide : tape.width = 72 mm ')).toEqual(expected)
  })

  it('without a name is called by its number among all', () => {
    const named = whatIfsOf(['tape.width=72 mm', 'wide: tape.width=50 mm', 'tape.width=60 mm'], [])
    expect(named.map(({ name }) => name)).toEqual(['what-if-1', 'wide', 'what-if-3'])
  })

  it('may have several changes; a `;` at the end, or two, change nothing', () => {
    const expected = [
      [
        'long',
        [
          ['line.infeed.length', '9 m'],
          ['line.infeed.speed', '20 m/min'],
        ],
      ],
    ]
    expect(changes('long: line.infeed.length=9 m; line.infeed.speed=20 m/min')).toEqual(expected)
    expect(changes('long: line.infeed.length=9 m;line.infeed.speed=20 m/min;')).toEqual(expected)
    expect(changes('long: ;line.infeed.length=9 m;; line.infeed.speed=20 m/min ; ')).toEqual(expected)
  })

  it('a value is YAML and may hold a colon, an `=` or a map: they make no name', () => {
    expect(changes('line.sealer.roll-change.time={lognormal: {mean: 32 s, cv: 0.4}}')).toEqual([
      ['what-if-1', [['line.sealer.roll-change.time', { lognormal: { mean: '32 s', cv: 0.4 } }]]],
    ])
    expect(changes('arrivals.p.log.unit="a: b"')).toEqual([['what-if-1', [['arrivals.p.log.unit', 'a: b']]]])
    expect(changes('short: title=7:30 = early')).toEqual([['short', [['title', '7:30 = early']]]])
    expect(changes('tape.width=50 mm; title="7:30"')).toEqual([
      [
        'what-if-1',
        [
          ['tape.width', '50 mm'],
          ['title', '7:30'],
        ],
      ],
    ])
  })

  it('a `;` in quotes is part of the value, an apostrophe in a word begins none', () => {
    expect(changes('one: title="a; b"; tape.width=50 mm')).toEqual([
      [
        'one',
        [
          ['title', 'a; b'],
          ['tape.width', '50 mm'],
        ],
      ],
    ])
    expect(changes("one: title='it''s; b'; tape.width=50 mm")).toEqual([
      [
        'one',
        [
          ['title', "it's; b"],
          ['tape.width', '50 mm'],
        ],
      ],
    ])
    expect(changes("one: title=the works' line; arrivals.p.log.unit=the works' own")).toEqual([
      [
        'one',
        [
          ['title', "the works' line"],
          ['arrivals.p.log.unit', "the works' own"],
        ],
      ],
    ])
  })

  it.each([
    ['two of the same name', ['a: x=1', 'a: x=2'], 'a variant `a` exists already'],
    ['one of an unnamed one', ['x=1', 'what-if-1: x=2'], 'a variant `what-if-1` exists already'],
    ['one of the file', ['long: x=1'], 'a variant `long` exists already'],
    ['a name that begins with a digit', ['3 inch: x=1'], 'a name must begin with a letter'],
    ['a name that is too long', [`${'a'.repeat(41)}: x=1`], 'at most 40'],
    ['a name with marks', ['a<b>: x=1'], 'a name must begin with a letter'],
  ])('%s is refused', (_, texts, words) => {
    const known = [{ name: 'long', note: '', overrides: [] }]
    const found = problems(() => whatIfsOf(texts, known))
    expect(found).toHaveLength(1)
    expect(found[0]!.rule).toContain(words)
    expect(found[0]).toMatchObject({ code: 'bad-name', source: `--what-if ${texts.at(-1)}`, line: 0 })
  })

  it.each(['wide:', 'wide: ;', '', ';', 'tape.width', '=72 mm', 'wide: tape.width'])(
    'without changes is a slip: %j',
    (text) => {
      const [found] = problems(() => whatIfsOf([text], []))
      expect(found).toMatchObject({ code: 'no-such-path', rule: 'an override must be PATH=VALUE' })
      expect(found!.source).toContain('--what-if')
    },
  )

  it('use a value that is no YAML says so', () => {
    expect(problems(() => whatIfsOf(['a: x={b'], []))[0]).toMatchObject({
      code: 'not-yaml',
      source: '--what-if a: x={b',
    })
  })

  it('control characters do not come into the words', () => {
    const [found] = problems(() => whatIfsOf(['\u001b[31m: x=1'], []))
    expect(found!.source).not.toContain('\u001b')
  })
})

const text = `${smallLine}variants:
  long: {note: a long one, set: {line.infeed.length: 12 m, line.infeed.speed: 20 m/min}}
  slow: {set: {line.end.time: {exponential: {mean: 3 s}}}}
`

describe('variants', () => {
  it('have what they set as it was written, those of the command line last', () => {
    const { variants, scenario } = loadScenario(text, {
      whatIfs: ['line.infeed.length=4 m', 'quick: line.end.time=2 s; line.infeed.length=5 m'],
    })
    expect(variants.map(({ name, note, set }) => ({ name, note, set }))).toEqual([
      {
        name: 'long',
        note: 'a long one',
        set: { 'line.infeed.length': '12 m', 'line.infeed.speed': '20 m/min' },
      },
      { name: 'slow', note: '', set: { 'line.end.time': { exponential: { mean: '3 s' } } } },
      { name: 'what-if-1', note: '', set: { 'line.infeed.length': '4 m' } },
      { name: 'quick', note: '', set: { 'line.end.time': '2 s', 'line.infeed.length': '5 m' } },
    ])
    const lengths = variants.map((variant) => (variant.scenario.line.infeed as { length: number }).length)
    expect(lengths).toEqual([12, 6, 4, 5])
    expect((scenario.line.infeed as { length: number }).length).toBe(6)
  })

  it('a path that does not exist names the option, and the line of a variant of the file', () => {
    const [whatIf] = problems(() => loadScenario(text, { whatIfs: ['a: line.infed.length=4 m'] }))
    expect(whatIf).toMatchObject({
      code: 'no-such-path',
      source: '--what-if a: line.infed.length=4 m',
      line: 0,
    })
    expect(whatIf!.fix).toContain('`infeed`')
    const [own] = problems(() => loadScenario(text.replace('line.infeed.speed', 'line.infeed.sped')))
    expect(own).toMatchObject({
      code: 'no-such-path',
      line: text.split('\n').findIndex((line) => line.includes('long:')) + 1,
    })
  })

  it('a value that does not fit names the option too', () => {
    const [found] = problems(() => loadScenario(text, { whatIfs: ['line.infeed.length=4'] }))
    expect(found).toMatchObject({ code: 'no-unit', source: '--what-if line.infeed.length=4' })
  })

  it('are read from the tree as it stands, whatever stands there', () => {
    expect(variantsOf({})).toEqual([])
    expect(variantsOf({ variants: [] })).toEqual([])
    expect(variantsOf({ variants: { a: 3, b: { set: 4, note: 5 } } })).toEqual([
      { name: 'a', note: '', overrides: [] },
      { name: 'b', note: '', overrides: [] },
    ])
    expect(variantsOf({ variants: { a: { set: { x: 1 } } } })[0]!.overrides).toEqual([
      { path: 'x', value: 1, source: 'variant a', at: ['variants', 'a', 'set', 'x'] },
    ])
  })
})

describe('one change', () => {
  it('is cut at the first `=`', () => {
    expect(readSet('a.b=c=d')).toMatchObject({ path: 'a.b', value: 'c=d', source: '--set a.b=c=d' })
    expect(readSet(' a.b = 3 ')).toMatchObject({ path: 'a.b', value: 3 })
  })
})
