/** Keys that only a check reads: units, bounds, and what may not stand together. */
import { describe, expect, it } from 'vitest'
import { loadScenario } from '../../src/scenario/load.js'
import { ScenarioError } from '../../src/scenario/problems.js'
import { parseQuantity } from '../../src/scenario/quantity.js'
import { loadedWith, soundLine } from './line.js'

const si = (text: string, dimension: 'temperature' | 'strength-of-width' | 'force') => {
  const parsed = parseQuantity(text, dimension)
  return 'value' in parsed ? parsed.value : parsed.code
}

function problems(sets: string[]): [string, string][] {
  try {
    loadScenario(soundLine, { sets })
  } catch (error) {
    if (error instanceof ScenarioError) return error.problems.map(({ code, path }) => [code, path])
    throw error
  }
  return []
}

describe('units', () => {
  // NIST Special Publication 811 (2008), appendix B.9: K = degC + 273.15; K = (degF + 459.67) / 1.8; lbf = 4.448 222 N
  it.each([
    ['0 degC', 273.15],
    ['-10 degC', 263.15],
    ['32 degF', 273.15],
    ['212 degF', 373.15],
    ['300 K', 300],
  ])('%s is %d K', (text, kelvin) => expect(si(text, 'temperature')).toBeCloseTo(kelvin, 9))

  it('of strength a width: 16 oz/in are 1 lbf/in, 1 N/cm is 100 N/m', () => {
    expect(si('16 oz/in', 'strength-of-width') as number).toBeCloseTo(4.448222 / 0.0254, 3)
    expect(si('1 lbf/in', 'strength-of-width') as number).toBeCloseTo(4.448222 / 0.0254, 3)
    expect(si('1 N/cm', 'strength-of-width')).toBeCloseTo(100, 9)
    expect(si('1 lbf', 'force')).toBeCloseTo(4.448222, 6)
  })

  it('a degree sign is mended', () => {
    const parsed = parseQuantity('20 °C', 'temperature')
    expect(parsed).toMatchObject({ code: 'unknown-unit', fix: 'did you mean `20 degC`?' })
  })
})

describe('keys', () => {
  it('a load is a force or a share of that on the reference', () => {
    expect(loadedWith(['closure.load=40 N']).scenario.closure!.load).toEqual({ newtons: 40 })
    expect(loadedWith(['closure.load=125 %']).scenario.closure!.load).toEqual({ share: 1.25 })
    expect(problems(['closure.load=40 kg'])).toEqual([['wrong-unit', 'closure.load']])
    expect(problems(['closure.load=0 N'])).toEqual([['out-of-range', 'closure.load']])
    expect(problems(['closure.load=5'])).toEqual([['no-unit', 'closure.load']])
  })

  it('a load needs a reference, and a force one with a force', () => {
    expect(problems(['closure={load: 40 N}'])).toEqual([['missing-key', 'closure.load']])
    expect(problems(['closure={load: 40 N, reference: {width: 48 mm, leg: 70 mm}}'])).toEqual([
      ['missing-key', 'closure.reference'],
    ])
    expect(problems(['closure={load: 110 %, reference: {width: 48 mm, leg: 70 mm}}'])).toEqual([])
  })

  it('of two temperatures the colder comes first, and none is a slip of the unit', () => {
    expect(problems(['site.temperature=[30 degC, 10 degC]'])).toEqual([['conflict', 'site.temperature']])
    expect(problems(['site.temperature=[10 degC, 300 degC]'])).toEqual([
      ['out-of-range', 'site.temperature.1'],
    ])
  })

  it('a value of contents is in the currency of the scenario', () => {
    expect(problems(['money={currency: EUR}', 'cases.box.contents-value=40 USD'])).toEqual([
      ['conflict', 'cases.box.contents-value'],
    ])
    expect(problems(['money={currency: EUR}', 'cases.box.contents-value=40 EUR'])).toEqual([])
  })

  it('none has a default: what is not given stays out of the scenario and of what was assumed', () => {
    const { scenario, assumed } = loadScenario(
      'cases: {a: {length: 400 mm, width: 300 mm, height: 250 mm}}\narrivals: {p: {time-between: 5 s}}\nline: {sealer: {type: sealer}}\nshift: {length: 8 h}\n',
    )
    expect([scenario.closure, scenario.site, scenario.tape.adhesion, scenario.cases.a!['ships-by']]).toEqual([
      undefined,
      undefined,
      undefined,
      undefined,
    ])
    expect(assumed.some(({ path }) => /closure|site|adhesion|drum|roller/.test(path))).toBe(false)
  })
})

describe('where a value was given', () => {
  const loaded = loadedWith(['tape.leg=60 mm'])

  it('is in the file, in an option, or nowhere', () => {
    expect(loaded.placeOf(['cases', 'box', 'height'])).toMatchObject({ source: 'line.yaml', line: 4 })
    expect(loaded.placeOf(['tape', 'leg'])).toEqual({
      source: '--set tape.leg=60 mm',
      line: 0,
      column: 0,
      window: '',
    })
    expect(loaded.placeOf(['tape', 'stretch'])).toBeNull()
  })

  it('of a variant is its line there', () => {
    const text = `${soundLine}variants:\n  short:\n    set: {tape.leg: 40 mm}\n`
    const lines = text.split('\n')
    const { placeOf } = loadScenario(text, { file: 'line.yaml', variant: 'short' })
    const { line, column } = placeOf(['tape', 'leg'])!
    expect(lines[line - 1]!.slice(column - 1)).toMatch(/^40 mm/)
  })
})
