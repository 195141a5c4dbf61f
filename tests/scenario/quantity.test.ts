/** Quantities: the factors against the published definitions, and each thing that can be wrong with one. */
import { describe, expect, it } from 'vitest'
import {
  type Dimension,
  dimensions,
  parseMoney,
  parseQuantity,
  quantityPattern,
} from '../../src/scenario/quantity.js'

const value = (text: unknown, dimension: Dimension) => {
  const parsed = parseQuantity(text, dimension)
  return 'value' in parsed ? parsed.value : parsed.code
}

describe('quantity', () => {
  // NIST Special Publication 811 (2008), appendix B: 1 in = 25.4 mm, 1 ft = 0.3048 m, 1 yd = 0.9144 m, 1 lb = 0.453 592 37 kg,
  // 1 lbf = 4.448 222 N, 1 psi = 6.894 757 kPa (the last two rounded there to seven figures)
  it.each([
    ['15.75 in', 'length', 15.75 * 0.0254],
    ['400 mm', 'length', 0.4],
    ['48 um', 'length', 48e-6],
    ['1000 yd', 'length', 914.4],
    ['80 ft/min', 'speed', (80 * 0.3048) / 60],
    ['24 m/min', 'speed', 0.4],
    ['8 h', 'time', 28_800],
    ['90 s', 'time', 90],
    ['1.5 min', 'time', 90],
    ['20 lb', 'mass', 20 * 0.45359237],
    ['9 kg', 'mass', 9],
    ['15 cases/min', 'case-rate', 0.25],
    ['0.3 %', 'share', 0.003],
    ['4 per 1000 cases', 'share', 0.004],
    ['30000 cuts', 'cuts', 30_000],
    ['480 per yr', 'yearly', 480],
    ['  1e3mm ', 'length', 1],
  ] as const)('%s is a %s of %d in SI', (text, dimension, expected) => {
    expect(value(text, dimension)).toBeCloseTo(expected, 12)
  })

  it('turns edge crush and burst within the seven figures of the source', () => {
    expect((value('32 lbf/in', 'edge-crush') as number) / ((32 * 4.448222) / 0.0254)).toBeCloseTo(1, 6)
    expect((value('200 psi', 'pressure') as number) / (200 * 6894.757)).toBeCloseTo(1, 6)
  })

  it.each([
    [400, 'length', 'no-unit'],
    ['400', 'length', 'no-unit'],
    ['400 mn', 'length', 'unknown-unit'],
    ['400 kg', 'length', 'wrong-unit'],
    ['mm', 'length', 'not-a-quantity'],
    ['', 'length', 'not-a-quantity'],
    [null, 'length', 'not-a-quantity'],
    [{}, 'length', 'not-a-quantity'],
    ['4 m/s', 'time', 'wrong-unit'],
    ['1 constructor', 'length', 'unknown-unit'],
    ['NaN mm', 'length', 'not-a-quantity'],
    ['Infinity m', 'length', 'not-a-quantity'],
    ['0x10 mm', 'length', 'unknown-unit'],
  ] as const)('%j as a %s is %s', (text, dimension, code) => {
    expect(value(text, dimension)).toBe(code)
  })

  it.each([
    ['400 MM', 'length', 'did you mean `400 mm`?'],
    ['16"', 'length', 'did you mean `16 in`?'],
    ["2'", 'length', 'did you mean `2 ft`?'],
    ['400,5 mm', 'length', 'did you mean `400.5 mm`?'],
    // decimals or thousands
    ['1,371 m', 'length', 'which of these is meant: `1.371 m` or `1371 m`?'],
    ['1,371.5 m', 'length', 'did you mean `1371.5 m`?'],
    ['1.371,5 m', 'length', 'did you mean `1371.5 m`?'],
    ['1 371 m', 'length', 'did you mean `1371 m`?'],
    ['1,37,5 m', 'length', 'write it like `400 mm`'],
    // units that the format does not have: 1 km is 1000 m; a rate of 8 h over 8; 1 bar is 100 kPa (SI Brochure, table 8)
    ['3 km', 'length', 'did you mean `3000 m`?'],
    ['24 m/h', 'speed', 'did you mean `0.4 m/min`?'],
    ['4000 cases/8h', 'case-rate', 'did you mean `500 cases/h`?'],
    ['900 cases per hour', 'case-rate', 'did you mean `900 cases/h`?'],
    ['2 bar', 'pressure', 'did you mean `200 kPa`?'],
    ['5 N/25 mm', 'strength-of-width', 'did you mean `2 N/cm`?'],
    ['3 in 1000', 'share', 'did you mean `3 per 1000 cases`?'],
    ['40 per month', 'yearly', 'did you mean `480 per yr`?'],
    ['20 °C', 'temperature', 'did you mean `20 degC`?'],
    // how long a working day is, and how long a month, nobody has said
    ['4000 cases/day', 'case-rate', 'the nearest of these units: cases/min, cases/h, cases/s'],
    ['3 mon', 'time', 'the nearest of these units: min'],
    // a letter makes another unit: the unit is named, no quantity
    ['24 m/mn', 'speed', 'the nearest of these units: m/min'],
    ['400 mn', 'length', 'the nearest of these units: mm, in'],
    ['16 in 3 mm', 'length', 'write it like `400 mm`'],
    ['5 q', 'length', 'write it like `400 mm`'],
    // the example has another number than what was written
    ['24 m', 'speed', 'write it like `48 m/min`'],
    ['about 400', 'length', 'which of these is meant: `400 mm`, `400 cm` or `400 in`?'],
  ] as const)('%s is mended without a change of its size', (text, dimension, fix) => {
    expect(parseQuantity(text, dimension)).toMatchObject({ fix })
  })

  it('without a unit it asks which one is meant, and only where there are several', () => {
    expect(parseQuantity(9, 'length')).toMatchObject({
      fix: 'which of these is meant: `9 mm`, `9 cm` or `9 in`?',
    })
    expect(parseQuantity('0.95', 'share')).toMatchObject({
      fix: 'which of these is meant: `0.95 %`, `0.95 per 1000 cases` or `0.95 per case`?',
    })
    expect(parseQuantity(30000, 'cuts')).toMatchObject({ fix: 'did you mean `30000 cuts`?' })
  })

  it('a share may be counted per any number of cases', () => {
    // 10 of 4000 are 2.5 of 1000
    expect(value('10 per 4000 cases', 'share')).toBe(0.0025)
    expect(value('1 per 20000', 'share')).toBe(0.00005)
    expect(value('3 per 1 case', 'share')).toBe(3)
    expect(value('3 per 0 cases', 'share')).toBe('unknown-unit')
    const pattern = new RegExp(quantityPattern('share'))
    expect(['10 per 4000 cases', '1 per 20000', '3 per 0 cases'].map((text) => pattern.test(text))).toEqual([
      true,
      true,
      false,
    ])
  })

  it('names the units that could stand there and the nearest one', () => {
    expect(parseQuantity('400 inn', 'length')).toMatchObject({
      rule: expect.stringContaining('m, mm, cm'),
      fix: 'the nearest of these units: in',
    })
    expect(parseQuantity(24, 'speed')).toMatchObject({ fix: expect.stringContaining('`24 m/min`') })
  })

  it('has an example for each dimension that it reads and that its pattern lets through', () => {
    for (const [dimension, { example }] of Object.entries(dimensions)) {
      expect(typeof value(example, dimension as Dimension)).toBe('number')
      expect(new RegExp(quantityPattern(dimension as Dimension)).test(example)).toBe(true)
    }
  })
})

describe('money', () => {
  it('has an amount, a currency and what it is per', () => {
    expect(parseMoney('42 EUR/roll')).toEqual({ amount: 42, currency: 'EUR', per: 'roll' })
    expect(parseMoney('24000 USD')).toEqual({ amount: 24000, currency: 'USD', per: null })
    expect(parseMoney('42')).toBeNull()
    expect(parseMoney('42 euros')).toBeNull()
    expect(parseMoney(42)).toBeNull()
  })
})
