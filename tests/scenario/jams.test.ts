/** The key `jams`: of one kind or several by name, its paths, and what is wrong with it in words. */
import { describe, expect, it } from 'vitest'
import { evidenceOf } from '../../src/scenario/evidence.js'
import { jamsOf } from '../../src/scenario/jams.js'
import { loadScenario } from '../../src/scenario/load.js'
import type { ScenarioError } from '../../src/scenario/problems.js'

const text = (jams: string, crew = '{operators: {does: [jams, roll-change]}}') =>
  `cases: {a: {length: 400 mm, width: 300 mm, height: 300 mm}}
arrivals: {p: {time-between: 4 s}}
line:
  s:
    type: sealer
    jams: ${jams}
crew: ${crew}
shift: {length: 8 h}
`
const named = '{flap: {chance: 1 %, clear: 40 s}, crushed: {chance: 36 in 40000 cases, clear: 5 min}}'

const jamsWith = (jams: string, sets: string[] = []) =>
  jamsOf(loadScenario(text(jams), { sets }).scenario.line.s!.jams)

/** What is found wrong, as path, rule and nearest fix. */
function faults(jams: string, crew?: string, sets: string[] = []) {
  try {
    loadScenario(text(jams, crew), { sets })
  } catch (error) {
    return (error as ScenarioError).problems.map(({ path, rule, fix }) => [path, rule, fix])
  }
  return []
}

describe('jams of a piece', () => {
  it('are one kind without a name where the keys of a jam stand', () => {
    expect(jamsWith('{chance: 1 %, clear: 40 s}')).toEqual([
      {
        name: null,
        at: [],
        keys: { chance: 0.01, clear: { law: 'constant', value: 40 }, 'case-lost': 0, 'tape-factor': 1 },
      },
    ])
  })

  it('are several where names stand, in the order of the file', () => {
    const kinds = jamsWith(named)
    expect(kinds.map(({ name, at }) => [name, at])).toEqual([
      ['flap', ['flap']],
      ['crushed', ['crushed']],
    ])
    expect(kinds.map(({ keys }) => keys.chance)).toEqual([0.01, 36 / 40000])
    expect(kinds[1]!.keys['case-lost']).toBe(0)
  })

  it('are none where the key is left out', () => {
    expect(jamsOf(undefined)).toEqual([])
  })

  it('have paths: of one kind, of each of several, and of one that is put in place of several', () => {
    expect(jamsWith('{chance: 1 %, clear: 40 s}', ['line.s.jams.chance=2 %'])[0]!.keys.chance).toBe(0.02)
    const [flap, crushed] = jamsWith(named, [
      'line.s.jams.flap.chance=2 %',
      'line.s.jams.crushed.clear={exponential: {mean: 6 min}}',
    ])
    expect(flap!.keys.chance).toBe(0.02)
    expect(crushed!.keys.clear).toEqual({ law: 'exponential', mean: 360 })
    expect(jamsWith(named, ['line.s.jams={chance: 3 %, clear: 1 min}']).map(({ name }) => name)).toEqual([
      null,
    ])
  })

  it('may be named in a variant too', () => {
    const variant = `${text(named)}variants: {tidy: {set: {line.s.jams.crushed.chance: 0 %}}}\n`
    const [tidy] = loadScenario(variant).variants
    expect(jamsOf(tidy!.scenario.line.s!.jams)[1]!.keys.chance).toBe(0)
  })

  it('say what each chance rests on, at its own path', () => {
    const { resolved } = loadScenario(text(named))
    expect(evidenceOf(resolved).map(({ path, at }) => [path, at])).toEqual([
      ['line.s.jams.crushed.chance', ['line', 's', 'jams', 'crushed', 'chance']],
    ])
  })

  it('list what is assumed of each kind', () => {
    const { assumed } = loadScenario(text(named))
    expect(assumed.map(({ path }) => path).filter((path) => path.includes('jams'))).toEqual([
      'line.s.jams.flap.case-lost',
      'line.s.jams.flap.tape-factor',
      'line.s.jams.crushed.case-lost',
      'line.s.jams.crushed.tape-factor',
    ])
  })
})

describe('what is wrong with jams', () => {
  it.each([
    ['{chance: 1 %}', 'line.s.jams.clear', '`clear` is missing and must be given: '],
    ['{flap: {chance: 1 %}}', 'line.s.jams.flap.clear', '`clear` is missing and must be given: '],
    ['{chanse: 1 %, clear: 40 s}', 'line.s.jams.chanse', '`chanse` is not a key of `line.s.jams`'],
    [
      '{flap: {chance: 1 %, cleer: 40 s, clear: 3 s}}',
      'line.s.jams.flap.cleer',
      '`cleer` is not a key of `line.s.jams.flap`',
    ],
    ['{flap: {chance: 1, clear: 3 s}}', 'line.s.jams.flap.chance', ''],
  ])('%s: at %s', (jams, path, rule) => {
    const found = faults(jams).find(([at]) => at === path)
    expect(found?.[1]).toContain(rule)
    expect(found?.[2]).not.toBe('')
  })

  it('a name that stands twice', () => {
    const [fault] = faults('{flap: {chance: 1 %, clear: 40 s}, flap: {chance: 2 %, clear: 40 s}}')
    expect(fault![1]).toMatch(/unique|twice/i)
  })

  it('chances that add up past 100 %', () => {
    expect(faults('{flap: {chance: 60 %, clear: 4 s}, crushed: {chance: 50 %, clear: 4 s}}')).toEqual([
      [
        'line.s.jams',
        'the chances of all kinds of jam together are 110 %: every case would jam more than once',
        'use chances that add up to 100 % at most',
      ],
    ])
    expect(faults('{flap: {chance: 60 %, clear: 4 s}, crushed: {chance: 40 %, clear: 4 s}}')).toEqual([])
  })

  it('a crew that is not there, with the nearest one', () => {
    expect(faults('{flap: {chance: 1 %, clear: 4 s, by: operator}}')).toEqual([
      ['line.s.jams.flap.by', '`operator` is not a crew', 'did you mean `operators`?'],
    ])
  })

  it('nobody who does jams, but for kinds that are left to a crew', () => {
    const crew = '{fitter: {does: [roll-change]}}'
    expect(faults('{chance: 1 %, clear: 4 s}', crew)).toEqual([
      [
        'line.s.jams',
        'nobody does `jams`: the line would stand until the end of the shift',
        'add `jams` to `crew.fitter.does`',
      ],
    ])
    expect(faults('{chance: 1 %, clear: 4 s, by: fitter}', crew)).toEqual([])
  })

  it('a path to a kind that is not there', () => {
    const [fault] = faults(named, undefined, ['line.s.jams.flop.chance=1 %'])
    expect(fault![2]).toBe('did you mean `flap`?')
  })
})
