/** What newcomers write: words for numbers, feet and inches of a drawing, a list out of a spreadsheet; each is read, or answered by a fix that leads on. */
import { describe, expect, it } from 'vitest'
import { decimalOf } from '../../src/scenario/csv-columns.js'
import { inchesIn } from '../../src/scenario/feet-and-inches.js'
import { labelAndPath, labelOf } from '../../src/scenario/labels.js'
import { loadScenario } from '../../src/scenario/load.js'
import { quantityFix } from '../../src/scenario/meant.js'
import { parseQuantity, quantityPattern } from '../../src/scenario/quantity.js'
import type { Dimension } from '../../src/scenario/units.js'
import { plainly } from '../../src/scenario/vaguely.js'
import { smallLine } from '../cli/in-process.js'

describe('words for numbers', () => {
  it.each([
    ['about 4000 cases a shift', '4000 cases a shift', true],
    ['a minute or two', '1 to 2 min', false],
    ['two or three minutes', '2 to 3 min', false],
    ['ten times a shift', '10 times a shift', false],
    ['30 s or so', '30 s', true],
  ])('%s is %s', (written, text, isGuess) => expect(plainly(written)).toEqual({ text, isGuess }))

  it.each(['90 s', 'aboutish', 'a shift', ''])('%j has none', (written) =>
    expect(plainly(written)).toBeNull(),
  )
})

describe('a fix that leads on', () => {
  it.each<[written: string, dimension: Dimension, fix: string]>([
    ['maybe ten times a shift', 'share', 'count it in cases: `10 per CASES cases`'],
    ['a few stops a shift', 'share', 'count it in cases: `STOPS per CASES cases`'],
    ['about 4,000 cases a shift', 'case-rate', 'did you mean `4000 cases a shift`? How well you know it'],
    ['4,000 cases/shift', 'case-rate', 'did you mean `4000 cases/shift`?'],
    ['a minute or two', 'time', 'did you mean `1 to 2 min`?'],
    ['6 in 4000 cases', 'share', 'did you mean `6 per 4000 cases`?'],
    // nobody knows what a comma parts here
    ['1,400 mm', 'length', 'which of these is meant: `1.400 mm` or `1400 mm`?'],
  ])('%s', (written, dimension, fix) => expect(quantityFix(written, dimension)).toContain(fix))

  const told = (from: string, to: string): string => {
    try {
      loadScenario(smallLine.replace(from, to))
      return ''
    } catch (error) {
      return String(error)
    }
  }

  it.each([
    ['{length: 1 h}', '8 h', 'did you mean `{length: 8 h}`?'],
    ['{length: 400 mm, width: 300 mm, height: 250 mm}', '400 x 300 x 250 mm', '`{size: 400 x 300 x 250 mm}`'],
    [
      '{a: {length: 400 mm, width: 300 mm, height: 250 mm}}',
      'my.csv',
      '`{file: my.csv, unit: mm, columns: {name:',
    ],
    ['{length: 1 h}', 'early', 'write its keys here: length, start, '],
    ['{exponential: {mean: 6 s}}', '6 s, rate: 4,000 cases', 'write thousands without it, such as 4000'],
  ])('%s as %s', (from, to, fix) => expect(told(from, to)).toContain(fix))
})

describe('inches', () => {
  it.each([
    ['15 3/4"', 15.75],
    ['9 7/8 in', 9.875],
    ['3/4 in', 0.75],
    [`33' 6"`, 402],
    [`6'3"`, 75],
    [`6'-3 1/2"`, 75.5],
    ['6 ft 3 in', 75],
  ])('%s are %d', (written, inches) => {
    expect(inchesIn(written)).toBe(inches)
    const parsed = parseQuantity(written, 'length')
    expect('value' in parsed && parsed.value).toBeCloseTo(inches * 0.0254, 12)
    expect(written).toMatch(new RegExp(quantityPattern('length')))
  })

  it.each(['15 in', '3/0 in', '1/2', `6'`, '3/4 mm', '-3/4 in'])('%s is none of these', (written) =>
    expect(inchesIn(written)).toBeNull(),
  )
})

it.each([
  ['12,5', 12.5],
  ['0,125', 0.125],
  ['1,4', 1.4],
  ['-3,25', -3.25],
  ['1,400', Number.NaN],
  ['1,400,000', Number.NaN],
  ['12.5', 12.5],
])('a cell %s is %d', (cell, value) => expect(decimalOf(cell)).toBe(value))

it.each([
  ['line.sealer.belt-speed', 'belt speed of sealer'],
  ['line.sealer.jams.clear', 'time to clear a jam of sealer'],
  ['line.sealer.jams.flap.clear', 'time to clear a jam (flap) of sealer'],
  ['line.sealer.heads.bottom.rated-speed', 'rated speed of the bottom head of sealer'],
  ['arrivals.packing.time-between', 'time between arrivals at packing'],
  ['crew.operators.people', 'number of people (operators)'],
  ['tape.width', 'tape width'],
  ['shift.length', 'shift length'],
  ['target', 'target'],
])('%s is the %s', (path, label) => {
  expect(labelOf(path)).toBe(label)
  expect(labelAndPath(path)).toBe(path === label ? path : `${label} (${path})`)
})
