/** Sides that vary from case to case: how they are written, where they do not fit, and what is known of their laws. */
import { describe, expect, it } from 'vitest'
import { meanOf, varianceOf } from '../../src/scenario/law.js'
import { loadScenario } from '../../src/scenario/load.js'
import { ScenarioError } from '../../src/scenario/problems.js'
import { endsOf, meanDifference, type Side, type SizeLaw, shareUpTo } from '../../src/scenario/size-law.js'
import { nearly } from '../nearly.js'

const scenario = (length: string, line = 'sealer: {type: sealer}', height = '250 mm') => `cases:
  cut: {length: ${length}, width: 300 mm, height: ${height}}
arrivals: {p: {rate: 5 cases/min}}
line: {${line}}
crew: {o: {does: [jams, roll-change, size-setting, blade, breakdowns]}}
shift: {length: 1 h}`

const column = ['400', '520.5', '1999'].map(String)
const read = (text: string, cells = column) => loadScenario(text, { readColumn: () => cells })

function problems(text: string, cells?: string[]) {
  try {
    read(text, cells)
  } catch (error) {
    if (error instanceof ScenarioError) return error.problems
    throw error
  }
  return []
}

describe('a side that varies', () => {
  it.each<[string, SizeLaw]>([
    [
      '{normal: {mean: 400 mm, sd: 20 mm, at-least: 300 mm, at-most: 0.5 m}}',
      { law: 'normal', mean: 0.4, sd: 0.02, atLeast: 0.3, atMost: 0.5 },
    ],
    [
      '{triangular: {low: 200 mm, mode: 300 mm, high: 600 mm}}',
      { law: 'triangular', low: 0.2, mode: 0.3, high: 0.6 },
    ],
    ['{uniform: {low: 10 in, high: 20 in}}', { law: 'uniform', low: 0.254, high: 0.508 }],
  ])('is read: %s', (written, law) => {
    expect(read(scenario(written)).scenario.cases.cut!.length).toEqual(law)
  })

  it('is drawn from a file of sizes', () => {
    const written = '{observed: {file: sizes.csv, column: L, unit: mm}}'
    const { cases } = read(scenario(written, 'belt: {type: conveyor, length: 3 m, speed: 20 m/min}')).scenario
    expect(cases.cut!.length).toMatchObject({ values: [0.4, 0.5205, 1.999] })
    expect(problems(scenario(written), ['400', '9'])[0]).toMatchObject({
      path: 'cases.cut.length.observed.file',
      rule: 'row 3 of column L is not a size of a case: `9`',
    })
  })

  it.each([
    ['{normal: {mean: 400 mm, sd: 20 mm}}', 'cases.cut.length.normal.at-least'],
    ['{normal: {mean: 400 mm, sd: 20 mm, at-least: 450 mm, at-most: 500 mm}}', 'cases.cut.length.normal'],
    ['{uniform: {low: 400 mm, high: 400 mm}}', 'cases.cut.length.uniform'],
    ['{uniform: {low: 4 mm, high: 400 mm}}', 'cases.cut.length.uniform.low'],
    ['{uniform: {low: 4 s, high: 400 mm}}', 'cases.cut.length.uniform.low'],
    ['{exponential: {mean: 400 mm}}', 'cases.cut.length.exponential'],
  ])('%s is told of', (written, path) => {
    expect(problems(scenario(written)).map((each) => each.path)).toContain(path)
  })
})

describe('sizes beyond what the line takes', () => {
  it('are told of with the share of the cases that are', () => {
    // uniform from 1 to 2 m on belts of 1.9 m: a tenth
    const [problem] = problems(scenario('{uniform: {low: 1 m, high: 2 m}}'))
    expect(problem).toMatchObject({
      path: 'line.sealer.bed',
      rule: 'the case `cut` is up to 2000 mm long, and 10 % of them are longer than the driven belts',
      fix: 'at least 2000 mm, or `high` in its length: at most 1900 mm',
    })
  })

  it('are told of on a conveyor, and of recorded sizes', () => {
    const belt = 'belt: {type: conveyor, length: 1.5 m, speed: 20 m/min}'
    const [problem] = problems(scenario('{observed: {file: a.csv, column: L, unit: mm}}', belt))
    expect(problem).toMatchObject({ path: 'line.belt.length' })
    expect(problem!.rule).toContain('33 % of them are longer than this conveyor')
  })

  it('and heights that a machine set by people would be set for each time', () => {
    const crew = 'sealer: {type: sealer, size-setting: {by: crew, time: 4 min}}'
    const height = '{uniform: {low: 200 mm, high: 300 mm}}'
    expect(problems(scenario('{uniform: {low: 300 mm, high: 600 mm}}', crew))).toEqual([])
    expect(problems(scenario('400 mm', 'sealer: {type: sealer}', height))).toEqual([])
    const [problem] = problems(scenario('400 mm', crew, height))
    expect(problem).toMatchObject({ path: 'line.sealer.size-setting.by' })
    expect(problem!.fix).toContain('`machine`')
  })
})

const laws: [string, SizeLaw][] = [
  ['normal, cut on both sides', { law: 'normal', mean: 0.4, sd: 0.05, atLeast: 0.32, atMost: 0.6 }],
  ['normal, cut close by', { law: 'normal', mean: 0.4, sd: 0.3, atLeast: 0.39, atMost: 0.5 }],
  ['uniform', { law: 'uniform', low: 0.3, high: 0.7 }],
  ['triangular', { law: 'triangular', low: 0.2, mode: 0.3, high: 0.6 }],
]

describe('mean and variance', () => {
  // by parts: E X = high - integral of F, E X^2 = high^2 - 2 integral of x F, here by Simpson's rule
  it.each(laws)('%s: as its distribution function has them', (_, law) => {
    const [low, high] = endsOf(law)
    const steps = 20_000
    const step = (high - low) / steps
    const [first, second] = [0, 1].map((power) => {
      let sum = 0
      for (let index = 0; index <= steps; index++) {
        const x = low + index * step
        const weight = index === 0 || index === steps ? 1 : index % 2 === 1 ? 4 : 2
        sum += weight * x ** power * (index === steps ? 1 : shareUpTo(law, x))
      }
      return (sum * step) / 3
    }) as [number, number]
    const mean = high - first
    nearly(meanOf(law), mean, 1e-8)
    nearly(varianceOf(law), high * high - 2 * second - mean * mean, 1e-6)
  })
})

describe('mean difference', () => {
  const uniform: Side = { law: 'uniform', low: 0.3, high: 0.7 }
  it('of a uniform law with itself is a third of its width', () => {
    nearly(meanDifference(uniform, uniform), 0.4 / 3, 1e-6)
  })

  it('of two sizes is their difference, and of a law and a size that of each to it', () => {
    expect(meanDifference(0.3, 0.5)).toBeCloseTo(0.2, 15)
    // from 0.3 to 0.7, to the middle: a quarter of the width; the grid jumps at the one size
    nearly(meanDifference(uniform, 0.5), 0.1, 1e-3)
    nearly(meanDifference(uniform, 0.9), 0.4, 1e-3)
  })

  it('of recorded sizes is that of all pairs', () => {
    const seen: Side = { law: 'observed', file: '', column: '', unit: 'mm', values: [0.2, 0.3, 0.6] }
    nearly(meanDifference(seen, seen), (2 * (0.1 + 0.4 + 0.3)) / 9, 2e-3)
  })
})
