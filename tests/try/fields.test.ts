/** Fields: every key of the format has one, or a reason why not; and what each says, worked by hand. */
import { describe, expect, it } from 'vitest'
import { scenarioKeys } from '../../src/manual/keys.js'
import { treeOf } from '../../src/try/draft/yaml-text.js'
import { converted, dragOf } from '../../src/try/fields/amounts.js'
import { noFields } from '../../src/try/fields/groups.js'
import { demo, fieldsOf } from './demos.js'

const fields = (text: string) => new Map(fieldsOf(treeOf(text)!).map((each) => [each.path, each]))

/** One of each thing, with lists and laws that hold something. */
const all = `
cases:
  a: {length: {normal: {}}, width: {normal: {}}, height: {normal: {}}}
  b: {length: {triangular: {}}, width: {triangular: {}}, height: {triangular: {}}}
  c: {length: {uniform: {}}, width: {uniform: {}}, height: {uniform: {}}}
  d: {length: {observed: {}}, width: {observed: {}}, height: {observed: {}}}
arrivals: {a: {orders: [{}]}}
line:
  a: {type: conveyor, planned: [{}], speeds: [{}], sensors: {a: {}}}
  b: {type: sealer, heads: {left: {}, right: {}}, size-setting: {between: {a: {b: 1 min}}}}
  c: {type: station, planned: [{}]}
  d: {type: divert}
  e: {type: inspect}
crew: {a: {does: [jams], breaks: [{}], other-work: [{}]}}
shift: {breaks: [{}]}
`
const ofFile = 'cases: {file: a.csv}\ncrew: {a: {other-work: {}}}'

describe('fields', () => {
  it('are there for every key of the format, or it is said why not', () => {
    const step = '[^.]+'
    const paths = [...fields(all).keys(), ...fields(ofFile).keys()]
    const keys = scenarioKeys()
      .groups.filter(({ title }) => title !== 'Times that vary')
      .flatMap(({ entries }) => entries.map(({ name }) => name))
    expect(keys.length).toBeGreaterThan(250)
    const missing = keys.filter((key) => {
      const pattern = new RegExp(`^${key.replaceAll('.', '\\.').replace(/\b(?:[A-Z]+)\b/g, step)}(?:\\.|$)`)
      return !Object.hasOwn(noFields, key.split('.')[0]!) && !paths.some((each) => pattern.test(each))
    })
    expect(missing).toEqual([])
  })

  it('of two in a list have the names of what they are', () => {
    const of = fields(demo('soap-works.yaml').text)
    const labels = (path: string) => [0, 1].map((index) => of.get(`${path}.${index}`)?.label)
    expect(labels('line.sealer.heads.top.takes')).toEqual(['narrowest tape', 'widest tape'])
    expect(labels('site.temperature')).toEqual(['coldest', 'warmest'])
    expect(of.get('shift.breaks.0.at')).toMatchObject({ label: 'at', part: 'breaks, 1' })
  })

  it('say what a value is, in what units it may be given, and where its default comes from', () => {
    const of = fields(demo('soap-works.yaml').text)
    expect(of.get('line.sealer.belt-speed')).toEqual({
      ...{ path: 'line.sealer.belt-speed', label: 'belt speed', part: '', form: 'amount', isNeeded: false },
      ...{ explanation: 'speed of the driven belts', takes: 'a speed, such as `24 m/min`' },
      ...{ written: '20 m/min', usual: '24 m/min', basis: 'from memory, low confidence', evidence: null },
      ...{ amount: { number: 20, unit: 'm/min' }, dimension: 'speed', choices: [] },
      units: ['m/min', 'm/s', 'mm/s', 'ft/min', 'ft/s', 'in/s'],
      drag: { from: 6.5, to: 60, step: 0.5 },
    })
    expect(of.get('line.sealer.heads.top.cut.reset')).toMatchObject({
      label: 'reset',
      part: 'heads, top, cut',
    })
    expect(of.get('line.sealer.jams.clear.lognormal.mean')).toMatchObject({
      amount: { number: 85, unit: 's' },
    })
    expect(of.get('crew.operator.stands-at')).toMatchObject({
      ...{ form: 'text', written: null, choices: ['infeed', 'sealer', 'outfeed', 'palletiser'] },
    })
    expect(of.get('money.capital.line.sealer')).toMatchObject({ amount: { number: 24000, unit: 'EUR' } })
  })

  it('say what a value rests on', () => {
    const of = fields(
      'line: {a: {type: sealer, jams: {chance: 36 in 40000 cases, clear: {guess: 90 s, between: [60 s, 150 s]}}}}',
    )
    expect(of.get('line.a.jams.chance')).toMatchObject({
      form: 'amount',
      evidence: 'counted: 36 in 40000 cases',
    })
    expect(of.get('line.a.jams.clear')).toMatchObject({
      ...{ form: 'amount', evidence: 'guessed', amount: { number: 90, unit: 's' } },
    })
  })
})

describe('amounts', () => {
  it('are converted: 24.4 m/min is 80.05 ft/min, 20 degC is 68 degF', () => {
    expect(converted({ number: 24.4, unit: 'm/min' }, 'speed', 'ft/min')).toEqual({
      number: 80.0525,
      unit: 'ft/min',
    })
    expect(converted({ number: 20, unit: 'degC' }, 'temperature', 'degF')).toEqual({
      number: 68,
      unit: 'degF',
    })
    expect(converted({ number: 2, unit: 'in' }, 'length', 'mm')).toEqual({ number: 50.8, unit: 'mm' })
  })

  it('are dragged within the ends of the format, a value of nothing up to a common one', () => {
    expect(dragOf({ number: 60, unit: '%' }, { dimension: 'share', from: 0, to: 1 })).toEqual({
      from: 20,
      to: 100,
      step: 2,
    })
    expect(dragOf({ number: 0, unit: 's' }, { dimension: 'time', from: 0 })).toEqual({
      from: 0,
      to: 90,
      step: 2,
    })
    expect(dragOf({ number: 1, unit: '' }, { dimension: null, from: 1, to: 20 }, true)).toEqual({
      from: 1,
      to: 11,
      step: 1,
    })
  })
})
