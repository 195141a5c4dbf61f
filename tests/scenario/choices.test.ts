/** Choices as a person writes them: lists and ranges, worked out by hand. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  choiceWritten,
  givenTwice,
  isQuantity,
  isRising,
  mostValues,
  valuesOf,
} from '../../src/scenario/choices.js'

const values = (written: string) => choiceWritten(`line.a.length=${written}`).values

/** What a choice is refused with. */
function refusal(read: () => unknown): string {
  try {
    return `nothing: ${JSON.stringify(read())}`
  } catch (error) {
    expect(error).toMatchObject({ code: 'asked' })
    return (error as Error).message
  }
}

describe('a list', () => {
  it.each([
    ['4', [4]],
    ['1,2,3', [1, 2, 3]],
    [' 4 m , 5.5 m ', ['4 m', '5.5 m']],
    ['base,three-inch', ['base', 'three-inch']],
    ['true,false', [true, false]],
    ['"x, y",z', ['x, y', 'z']],
    // what a range would be, but quoted
    ['"1..5/1"', ['1..5/1']],
    ['18 m/min,60 ft/min', ['18 m/min', '60 ft/min']],
    // commas, dots and strokes within braces and lists belong to the value
    ['{uniform: {low: 1 s, high: 2 s}}, 3 s', [{ uniform: { low: '1 s', high: '2 s' } }, '3 s']],
    [
      '{file: ../times/1.csv, column: x},{file: a/2.csv, column: x}',
      [
        { file: '../times/1.csv', column: 'x' },
        { file: 'a/2.csv', column: 'x' },
      ],
    ],
    [
      '[36 mm, 50 mm],[48 mm, 75 mm]',
      [
        ['36 mm', '50 mm'],
        ['48 mm', '75 mm'],
      ],
    ],
  ])('%s', (written, wanted) => {
    expect(values(written)).toEqual(wanted)
  })

  it('keeps the path, and an = within a value', () => {
    expect(choiceWritten(' crew.operator.people = 1,2')).toEqual({
      path: 'crew.operator.people',
      values: [1, 2],
    })
    expect(choiceWritten('title=a=b')).toEqual({ path: 'title', values: ['a=b'] })
  })
})

describe('a range', () => {
  it.each([
    ['1..5/1', [1, 2, 3, 4, 5]],
    ['-1..1/1', [-1, 0, 1]],
    ['5..5/1', [5]],
    ['.5..1.5/.5', [0.5, 1, 1.5]],
    ['0..3e2/1e2', [0, 100, 200, 300]],
    // the last value is not passed
    ['1..4/1.5', [1, 2.5, 4]],
    ['1..4/2', [1, 3]],
    // in binary fractions 0.8 + 4 x 0.1 lies above 1.2, and 3 x 0.1 above 0.3
    ['0.8..1.2/0.1', [0.8, 0.9, 1, 1.1, 1.2]],
    ['0.1..0.3/0.1 m', ['0.1 m', '0.2 m', '0.3 m']],
    // the unit once or more often, with or without spaces, with a stroke of its own
    ['18..30/4 m/min', ['18 m/min', '22 m/min', '26 m/min', '30 m/min']],
    ['18..26 m/min/4', ['18 m/min', '22 m/min', '26 m/min']],
    ['18 m/min..26/4', ['18 m/min', '22 m/min', '26 m/min']],
    ['18 m/min..26 m/min/4 m/min', ['18 m/min', '22 m/min', '26 m/min']],
    ['20ft/min..60ft/min/20ft/min', ['20 ft/min', '40 ft/min', '60 ft/min']],
    [' 1 .. 3 / 1 m ', ['1 m', '2 m', '3 m']],
    ['3%..9%/3%', ['3 %', '6 %', '9 %']],
    ['8..10/1 cases/min', ['8 cases/min', '9 cases/min', '10 cases/min']],
    ['0.5..1.5/0.5 per 1000 cases', ['0.5 per 1000 cases', '1 per 1000 cases', '1.5 per 1000 cases']],
  ])('%s', (written, wanted) => {
    expect(values(written)).toEqual(wanted)
  })

  it('of a file is the same', () => {
    expect(valuesOf({ from: '3 m', to: '5 m', step: '1 m' })).toEqual(['3 m', '4 m', '5 m'])
    expect(valuesOf({ from: 1, to: 2, step: 0.5 })).toEqual([1, 1.5, 2])
    expect(valuesOf({ from: 1, to: '3 ft', step: 1 })).toEqual(['1 ft', '2 ft', '3 ft'])
  })

  it('of tenths, hundredths and thousandths has every one, written as a person would', () => {
    // whole numbers over a power of ten, which is what was written
    fc.assert(
      fc.property(
        fc.constantFrom(1, 10, 100, 1000),
        fc.integer({ min: -5000, max: 5000 }),
        fc.integer({ min: 1, max: 500 }),
        fc.integer({ min: 0, max: 40 }),
        (over, from, step, steps) => {
          const written = `${from / over}..${(from + step * steps) / over}/${step / over}`
          expect(values(written)).toEqual(
            Array.from({ length: steps + 1 }, (_, index) => (from + step * index) / over),
          )
        },
      ),
      { seed: 1 },
    )
  })

  it(`has at most ${mostValues} values`, () => {
    expect(values('1..1000/1')).toHaveLength(1000)
    expect(refusal(() => values('1..1001/1'))).toBe('a range may have at most 1000 values, not 1001')
    expect(refusal(() => values('1..3/1e-9'))).toContain('at most 1000 values')
  })
})

describe('what is none is refused in words', () => {
  it.each([
    ['no sign', 'a choice must be PATH=v1,v2,v3 or PATH=low..high/step'],
    ['=1,2', 'a choice must be PATH=v1,v2,v3 or PATH=low..high/step'],
    ['a=', 'a choice must have at least one value'],
    ['a=  ', 'a choice must have at least one value'],
    ['a=1,,2', 'the values must be YAML, separated by commas'],
    ['a=[1', 'the values must be YAML, separated by commas'],
    ['a=&a 1,*a', 'the values must be YAML, separated by commas'],
    ['a=1..5', 'a range must be low..high/step, such as 18..30/2 m/min'],
    ['a=1..5/', 'a range must be low..high/step, such as 18..30/2 m/min'],
    ['a=1..5/x', 'a range must be low..high/step, such as 18..30/2 m/min'],
    ['a=1 m..2 ft/1', 'a range must have one unit, not m and ft'],
    ['a=1..5/0', 'the step of a range must be above 0, not 0'],
    ['a=1..5/-1', 'the step of a range must be above 0, not -1'],
    ['a=5..1/1 m', 'a range must rise: from 1 to 5 m'],
    ['a=x..y/1', '`x` is not a quantity; write it like `18 m/min`'],
    ['a=1..3/1.2.3', '`1.2.3` is not a quantity; write it like `18 m/min`'],
    ['a=1 2..3/1', '`1 2` is not a quantity; write it like `18 m/min`'],
    ['a=1..1e400/1', '`1e400` is not a quantity; write it like `18 m/min`'],
  ])('%s', (written, words) => {
    expect(refusal(() => choiceWritten(written))).toBe(words)
  })

  it('a list that is too long', () => {
    const list = Array.from({ length: 1001 }, (_, index) => index).join(',')
    expect(refusal(() => values(list))).toBe('a choice may have at most 1000 values, not 1001')
  })
})

describe('the values of a choice', () => {
  it.each([
    [[1, 2, 3], true],
    [['4 m', '5.5 m', '12 m'], true],
    // as numbers, not as letters
    [['9 m', '12 m'], true],
    [[3, 2], false],
    [['4 m', '4 m'], false],
    // of words and of several units the order itself says what is more
    [['wide', 'narrow'], true],
    [['1 m', '60 cm'], true],
    [[{ a: 1 }, { a: 0 }], true],
    [[], true],
  ])('%j rise: %s', (list, wanted) => expect(isRising(list)).toBe(wanted))

  it('are numbers with a unit or without', () => {
    expect([1, '2.5', '3 m/min', '-4 %'].every(isQuantity)).toBe(true)
    expect(['wide', '', true, null, undefined, { a: 1 }, [1], '1.2.3'].some(isQuantity)).toBe(false)
  })

  it('may stand once', () => {
    expect(givenTwice([1, '1', 2])).toBeUndefined()
    expect(givenTwice(['4 m', '5 m', '4 m'])).toBe('4 m')
    expect(givenTwice([{ a: 1 }, { a: 1 }])).toEqual({ a: 1 })
  })
})
