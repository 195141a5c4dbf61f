/** Requirements: how they are read and what an interval says of them. */
import { describe, expect, it } from 'vitest'
import type { StudyMeasure } from '../../src/answers/figures.js'
import { judge, parseRequirement } from '../../src/answers/requirement.js'
import type { Unit } from '../../src/catalogue/row.js'

const measure = (name: string, unit: Unit): StudyMeasure => ({
  path: ['measures', name],
  label: name,
  unit,
  index: 0,
  kind: 'mean',
})
const measures = [
  measure('target-held', 'share'),
  measure('throughput', 'cases/s'),
  measure('output', 'cases'),
  measure('tape-per-case', 'm/case'),
  measure('cost-per-1000', 'money'),
]
const parse = (text: string) => parseRequirement(text, measures, (name) => `no ${name}`)

describe('a requirement', () => {
  it.each([
    ['target-held >= 95 %', 0.95],
    ['throughput>15 cases/min', 0.25],
    ['measures.output >= 3800', 3800],
    ['output >= 3800 cases', 3800],
    ['tape-per-case < 100 cm', 1],
    ['cost-per-1000 <= 162.5 EUR', 162.5],
  ])('%s has its value in SI', (text, value) => expect(parse(text).value).toBeCloseTo(value, 12))

  it.each([
    ['target-held 95 %', 'such as "target-held >= 95 %"'],
    ['oee >= 50 %', 'no oee'],
    ['target-held >= 95', 'needs a unit'],
    ['throughput >= 15 m/min', 'is a unit of a speed'],
    ['output >= many', 'is not a number'],
  ])('%s is refused with its rule', (text, words) => expect(() => parse(text)).toThrow(words))

  it('is met only where the whole interval says so', () => {
    const interval = { low: 0.9, high: 0.97 }
    expect(judge({ sign: '>=', value: 0.9 }, interval)).toBe('met')
    expect(judge({ sign: '>', value: 0.9 }, interval)).toBe('not-shown')
    expect(judge({ sign: '>=', value: 0.95 }, interval)).toBe('not-shown')
    expect(judge({ sign: '>=', value: 0.98 }, interval)).toBe('not-met')
    expect(judge({ sign: '<=', value: 0.97 }, interval)).toBe('met')
    expect(judge({ sign: '<', value: 0.97 }, interval)).toBe('not-shown')
    expect(judge({ sign: '<', value: 0.9 }, interval)).toBe('not-met')
    expect(judge({ sign: '>=', value: 0 }, { low: null, high: null })).toBe('not-shown')
  })

  it('of no width shows nothing, unless the scenario fixes the figure or it is a quantile', () => {
    const same = { low: 0, high: 0 }
    const asked = { sign: '<=', value: 0.01 } as const
    expect(judge(asked, same)).toBe('not-shown')
    expect(judge(asked, { ...same, isFixed: true })).toBe('met')
    expect(judge({ ...asked, measure: { kind: 'quantile' } }, same)).toBe('met')
  })
})
