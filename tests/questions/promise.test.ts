/** Promises: how each form is read, what it asks of a shift, and what is refused. */

import { describe, expect, it } from 'vitest'
import type { StudyMeasure } from '../../src/answers/figures.js'
import type { Unit } from '../../src/catalogue/row.js'
import { parsePromise, usualNear } from '../../src/questions/size/promise.js'
import { Fault } from '../../src/scenario/fault.js'

const measure = (
  name: string,
  unit: Unit,
  index: number,
  kind: StudyMeasure['kind'] = 'mean',
): StudyMeasure => ({ path: ['measures', name], label: name, unit, index, kind })

const measures = [
  measure('throughput', 'cases/s', 0),
  measure('output', 'cases', 1),
  measure('target-held', 'share', 2, 'share'),
  measure('output-p10', 'cases', 1, 'quantile'),
  measure('time-in-system', 's', 3, 'ratio'),
  measure('tape-per-case', 'm/case', 5, 'ratio'),
]
const parse = (text: string) => parsePromise(text, measures, (name) => `no ${name}`)

describe('a promise of a share of shifts', () => {
  it.each([
    // text, measure, what is asked of a shift, share, near
    ['9 cases/min in 95 % of shifts', 'throughput', 0.15, 0.95, usualNear],
    ['9 cases/min in 95% of the shifts', 'throughput', 0.15, 0.95, usualNear],
    ['  540 cases/h   in 900 per 1000 of shifts ', 'throughput', 0.15, 0.9, usualNear],
    ['throughput >= 9 cases/min in 95 % of shifts within 3 %', 'throughput', 0.15, 0.95, 0.03],
    ['output > 3800 in 80 % of shifts within 0.5 %', 'output', 3800, 0.8, 0.005],
    ['time-in-system <= 5 min in 90 % of shifts', 'time-in-system', 300, 0.9, usualNear],
  ])('%s', (text, name, bound, share, near) => {
    const condition = parse(text)
    expect(condition).toMatchObject({ isShare: true, isLeast: true })
    expect(condition.measure.path.at(-1)).toBe(name)
    expect(condition.bound).toBeCloseTo(bound, 12)
    expect(condition.value).toBeCloseTo(share, 12)
    expect(condition.near).toBeCloseTo(near, 12)
  })

  it('asks each shift by itself, a ratio by its two numbers', () => {
    const of = (text: string, values: number[]) => parse(`${text} in 90 % of shifts`).figureOf(values)
    expect(of('output >= 100', [0, 100])).toBe(1)
    expect(of('output > 100', [0, 100])).toBe(0)
    expect(of('output <= 100', [0, 100])).toBe(1)
    expect(of('output < 100', [0, 100])).toBe(0)
    expect(of('output < 100', [0, 99])).toBe(1)
    // 900 s of 3 cases are 5 min each
    expect(of('time-in-system <= 5 min', [0, 0, 0, 900, 3])).toBe(1)
    expect(of('time-in-system < 5 min', [0, 0, 0, 900, 3])).toBe(0)
    // of no case nothing can be said: not kept
    expect(of('time-in-system <= 5 min', [0, 0, 0, 0, 0])).toBe(0)
    expect(of('time-in-system >= 5 min', [0, 0, 0, 0, 0])).toBe(0)
  })
})

describe('a promise of a mean', () => {
  it.each([
    ['throughput >= 9 cases/min within 0.3 cases/min', true, false, 0.15, 0.005],
    ['output<=3800 within 5', false, false, 3800, 5],
    ['time-in-system <= 5 min within 6 s', false, false, 300, 6],
    ['tape-per-case < 150 cm within 1 cm', false, false, 1.5, 0.01],
    ['target-held >= 90 %', true, true, 0.9, usualNear],
    ['target-held > 90 % within 3 %', true, true, 0.9, 0.03],
    ['target-held <= 90 % within 3 %', false, true, 0.9, 0.03],
  ])('%s', (text, isLeast, isShare, value, near) => {
    const condition = parse(text)
    expect(condition).toMatchObject({ isLeast, isShare })
    expect(condition.value).toBeCloseTo(value, 12)
    expect(condition.bound).toBe(condition.value)
    expect(condition.near).toBeCloseTo(near, 12)
  })

  it('takes the number of the shift, of a ratio that of the shift itself', () => {
    expect(parse('output >= 1 within 1').figureOf([7, 8])).toBe(8)
    expect(parse('time-in-system >= 1 s within 1 s').figureOf([0, 0, 0, 900, 3])).toBe(300)
  })
})

it('keeps the words without how near counts as either', () => {
  expect(parse(' 9 cases/min in 95 % of shifts  within 3 % ').text).toBe('9 cases/min in 95 % of shifts')
  expect(parse('output >= 3800 within 5').text).toBe('output >= 3800')
})

describe('what cannot be promised is refused in words', () => {
  it.each([
    ['9 cases/min', 'it must be a measure, then >=, <=, > or <, then a value'],
    ['', 'it must be a measure'],
    ['in 95 % of shifts', 'it must be a measure'],
    ['oee >= 50 % in 95 % of shifts', 'no oee'],
    ['oee >= 50 % within 1 %', 'no oee'],
    ['9 in 95 % of shifts', 'needs a unit'],
    ['9 m/min in 95 % of shifts', 'is a unit of a speed'],
    ['output >= many in 95 % of shifts', 'is not a number'],
    ['9 cases/min in most of shifts', 'write it like `5 %`'],
    ['9 cases/min in 95 of shifts', 'needs a unit'],
    ['9 cases/min in 100 % of shifts', 'nothing is certain for all shifts'],
    ['9 cases/min in 0 % of shifts', 'nothing is certain for all shifts'],
    ['9 cases/min in 120 % of shifts', 'nothing is certain for all shifts'],
    ['target-held >= 100 %', 'nothing is certain for all shifts'],
    ['target-held <= 0 % within 1 %', 'nothing is certain for all shifts'],
    ['9 cases/min in 95 % of shifts within 0 %', 'above 0'],
    ['9 cases/min in 95 % of shifts within -1 %', 'above 0'],
    ['9 cases/min in 95 % of shifts within 1', 'needs a unit'],
    ['9 cases/min in 95 % of shifts within 1 % within 2 %', 'give "within" only once'],
    [
      'output >= 3800',
      'add the miss that does not matter, in the unit of the measure, such as "output >= 3800 within 0.1"',
    ],
    ['time-in-system <= 5 min', 'such as "time-in-system <= 5 min within 0.1 s"'],
    ['output >= 3800 within 0', 'above 0'],
    ['throughput >= 9 cases/min within 1 %', 'is a unit of a share'],
    ['output-p10 >= 3800 within 5', 'write it as a share of shifts'],
    [
      'output-p10 >= 3800 in 90 % of shifts',
      'has no value for a single shift; leave out "in 90 % of shifts"',
    ],
    ['target-held >= 90 % in 90 % of shifts', 'has no value for a single shift'],
  ])('%s', (text, words) => {
    expect(() => parse(text)).toThrow(Fault)
    expect(() => parse(text)).toThrow(words)
  })
})
