/** Which inputs of a scenario move, by how much, and that those left out as idle change no shift. */
import { readFileSync } from 'node:fs'
import path from 'node:path'
import { describe, expect, it } from 'vitest'
import { Line } from '../../src/line/line.js'
import { amountOf, inSi, inUnit, writtenAmount } from '../../src/questions/sweep/factor.js'
import { inputsOf, lawText } from '../../src/questions/sweep/inputs.js'
import { treeValue } from '../../src/questions/sweep/tried.js'
import { loadScenario } from '../../src/scenario/load.js'
import { ScenarioError } from '../../src/scenario/problems.js'
import { demoFolder } from '../demo.js'

describe('the inputs of a scenario', () => {
  const { inputs, leftOut } = inputsOf({
    title: '90 s',
    target: '9 cases/min',
    cases: {
      a: { length: '400 mm', weight: '9 kg', share: 70 },
      gamma: { length: '300 mm' },
    },
    arrivals: { p: { 'by-hour': { cases: ['100 cases/h', '200 cases/h'] }, batch: 3 } },
    line: {
      sealer: {
        'belt-speed': '20 m/min',
        jams: {
          chance: '0.9 per 1000 cases',
          'case-lost': '95 %',
          clear: { lognormal: { mean: '85 s', cv: 0.8 } },
        },
        'dwell-spoils': '0 %',
      },
      end: { time: { triangular: { low: '2 s', mode: '4 s', high: '6 s' } } },
    },
    money: { labour: '30 EUR/h' },
    study: { shifts: 100 },
  })
  const of = (path: string) => inputs.find((each) => each.path === path)

  it('are moved by a tenth in their own unit', () => {
    expect(of('cases.a.length')).toMatchObject({ low: '360 mm', high: '440 mm', whole: null })
    expect(of('line.sealer.belt-speed')).toMatchObject({ low: '18 m/min', high: '22 m/min' })
    expect(of('money.labour')).toMatchObject({ low: '27 EUR/h', high: '33 EUR/h' })
    expect(of('line.sealer.jams.chance')).toMatchObject({
      low: '0.81 per 1000 cases',
      high: '0.99 per 1000 cases',
    })
  })

  it('are a law as a whole: its scale moves, its form stays', () => {
    expect(of('line.sealer.jams.clear')).toMatchObject({ high: { lognormal: { mean: '93.5 s', cv: 0.8 } } })
    expect(of('line.end.time')).toMatchObject({
      low: { triangular: { low: '1.8 s', mode: '3.6 s', high: '5.4 s' } },
    })
    expect(inputs.some(({ path }) => path.includes('cv'))).toBe(false)
    // a case may bear the name of a law
    expect(of('cases.gamma.length')).toMatchObject({ low: '270 mm' })
    expect(lawText({ lognormal: { mean: '85 s', cv: 0.8 } })).toBe('mean 85 s')
    expect(lawText({ triangular: { low: '2 s', mode: '4 s', high: '6 s' } })).toBe('2 s to 6 s')
    expect(lawText({ length: '2 m' })).toBeNull()
  })

  it('are all rates of the hours at once, and whole numbers by at least 1', () => {
    expect(of('arrivals.p.by-hour.cases')).toMatchObject({ high: ['110 cases/h', '220 cases/h'] })
    expect(of('arrivals.p.batch')).toMatchObject({ whole: { low: 2, high: 4 } })
    expect(of('cases.a.share')).toMatchObject({ low: 63, high: 77, whole: { low: 63, high: 77 } })
  })

  it('keep shares within all', () => {
    expect(of('line.sealer.jams.case-lost')).toMatchObject({ low: '85.5 %', high: '100 %' })
  })

  it('leave out texts, the study, what is 0 and what no shift depends on, each with its reason', () => {
    const paths = inputs.map(({ path }) => path)
    expect(paths).not.toContain('title')
    expect(paths.filter((path) => path.startsWith('study'))).toEqual([])
    expect(leftOut).toEqual([
      { path: 'target', reason: 'it is a requirement, not an input of the line' },
      { path: 'cases.a.weight', reason: 'only tapeshift check reads it' },
      { path: 'line.sealer.dwell-spoils', reason: 'it is 0, and 10 % of 0 is 0' },
    ])
  })
})

describe('inputs that no shift depends on', () => {
  const loaded = loadScenario(readFileSync(path.join(demoFolder, 'soap-works.yaml'), 'utf8'))
  const { leftOut } = inputsOf(loaded.resolved)
  const idle = leftOut.filter(({ reason }) => /check|limits/.test(reason))
  const shift = (scenario: typeof loaded.scenario) =>
    Array.from(new Line(scenario).simulate('idle', 1).values)
  const base = shift(loaded.scenario)

  it('are many in the main demo', () => {
    expect(idle.length).toBeGreaterThan(20)
  })

  /** The scenario with another value; null where it breaks it. */
  function movedTo(path: string, value: unknown) {
    try {
      return loaded.vary(null, [{ path, value, source: 'test' }]).scenario
    } catch (error) {
      if (error instanceof ScenarioError) return null
      throw error
    }
  }

  it('change no number of a shift', () => {
    const moved = idle.flatMap(({ path: place }) => {
      const { number, unit } = amountOf(treeValue(loaded.resolved, place))!
      return [0.97, 1.03].flatMap((factor) => {
        const scenario = movedTo(place, writtenAmount({ number: number * factor, unit }))
        return scenario ? [{ place, scenario }] : []
      })
    })
    expect(moved.length).toBeGreaterThan(30)
    for (const { place, scenario } of moved) expect([place, shift(scenario)]).toEqual([place, base])
  })
})

describe('numbers of a factor', () => {
  it('are read with a unit of the format, with money, or alone', () => {
    expect(amountOf('18 m/min')).toEqual({ number: 18, unit: 'm/min' })
    expect(amountOf('40 EUR/roll')).toEqual({ number: 40, unit: 'EUR/roll' })
    expect(amountOf(3)).toEqual({ number: 3, unit: '' })
    expect(amountOf('2 inch line')).toBeNull()
    expect(amountOf('12')).toBeNull()
    expect(amountOf(true)).toBeNull()
  })

  it('are turned into SI and other units: 60 ft/min is 18.288 m/min (the international foot, 0.3048 m)', () => {
    expect(inSi({ number: 18, unit: 'm/min' })).toEqual({ number: 0.3, unit: 'm/s' })
    expect(inUnit({ number: 60, unit: 'ft/min' }, 'm/min')).toEqual({ number: 18.288, unit: 'm/min' })
    expect(inUnit({ number: 20, unit: 'degC' }, 'degF')!.number).toBeCloseTo(68, 9)
    expect(inUnit({ number: 20, unit: 'm' }, 's')).toBeNull()
    expect(inUnit({ number: 3, unit: '' }, '')).toEqual({ number: 3, unit: '' })
  })
})
