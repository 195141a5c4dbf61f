/** What is suggested for a quantity that cannot be read: for any slip, it means what was written, or asks, or is plainly an example. */
import fc from 'fast-check'
import Qty from 'js-quantities'
import { describe, expect, it } from 'vitest'
import { type Dimension, dimensions, parseQuantity } from '../../src/scenario/quantity.js'

const all = Object.keys(dimensions) as Dimension[]
const units = (dimension: Dimension) => Object.keys(dimensions[dimension].units)
const siOf = (text: string, dimension: Dimension): number | null => {
  const parsed = parseQuantity(text, dimension)
  return 'value' in parsed ? parsed.value : null
}

/** Quantities that a fix names. */
const quoted = (fix: string) => [...fix.matchAll(/`([^`]+)`/g)].map(([, text]) => text!)

const expectSame = (found: number, meant: number) =>
  expect(Math.abs(found - meant)).toBeLessThanOrEqual(2e-11 * Math.abs(meant))

/**
 * What holds of every fix, whatever was written; `meanings` are those of what was written, as far as they are known. A single
 * suggestion needs a meaning, and is that one.
 */
function expectHonest(text: string | number, dimension: Dimension, meanings: readonly number[]): string {
  const parsed = parseQuantity(text, dimension)
  if ('value' in parsed) return 'read'
  const { fix } = parsed
  const values = quoted(fix).map((each) => siOf(each, dimension))
  // whatever is named can be read
  expect(values).not.toContain(null)
  if (fix.startsWith('did you mean')) {
    expect(values).toHaveLength(1)
    expect(meanings.length).toBeGreaterThan(0)
    expect(new Set(meanings.map((each) => each.toPrecision(10))).size).toBe(1)
    expectSame(values[0]!, meanings[0]!)
    return 'same'
  }
  if (fix.startsWith('which of these is meant')) {
    // nothing is nothing in any unit
    if (values.some((each) => each !== 0)) expect(new Set(values).size).toBe(values.length)
    expect(values.length).toBeGreaterThan(1)
    return 'asked'
  }
  if (fix.startsWith('write it like')) {
    const [number] = /\d+(\.\d+)?/.exec(quoted(fix)[0]!)!
    expect((String(text).match(/\d+(?:\.\d+)?/g) ?? []).map(Number)).not.toContain(Number(number))
    return 'example'
  }
  // the square of a unit of time is no number
  expect(fix.replaceAll('/s2', '/ss')).toMatch(
    /^the nearest of these units: [^`\d]+$|^the nearest of these units: .*per 1000 cases/,
  )
  expect(values).toEqual([])
  return 'unit'
}

/** Runs a property and counts what came out, so that none of its cases passes by never coming up. */
function counting<T>(
  slips: fc.Arbitrary<T>,
  fixOf: (slip: T) => string,
  runs = 3000,
): Record<string, number> {
  const counts: Record<string, number> = {}
  fc.assert(
    fc.property(slips, (slip) => {
      const kind = fixOf(slip)
      counts[kind] = (counts[kind] ?? 0) + 1
    }),
    { numRuns: runs, seed: 20261129 },
  )
  return counts
}

const dimension = fc.constantFrom(...all)
const inUnit = dimension.chain((each) =>
  fc.record({ dimension: fc.constant(each), unit: fc.constantFrom(...units(each)) }),
)
const number = fc.oneof(
  fc.integer({ min: 1, max: 99_999 }).map(String),
  fc.tuple(fc.integer({ min: 0, max: 999 }), fc.integer({ min: 0, max: 999 })).map(([a, b]) => `${a}.${b}`),
)

/** The size in SI of what a unit says to the units library, cases counting as 1; null where that knows no such unit. */
function inLibrary(unit: string, dimension: Dimension): number | null {
  const written = unit.replace(/^cases?(?=\/)/i, '1').replace(/^lb(?=\/)/, 'lbf')
  if (!/^[A-Za-z1"']+(\/[A-Za-z]+)?$/.test(written) || dimensions[dimension].si === '') return null
  try {
    const size = Qty(`1 ${written}`)
    return size.isCompatible(dimensions[dimension].si) ? size.to(dimensions[dimension].si).scalar : null
  } catch {
    return null
  }
}

/** What a number of a unit means in SI: by the units library, else in the format's own unit but for capitals; null where it is none. */
function meaning(digits: string, unit: string, dimension: Dimension): number | null {
  const joined = unit
    .replace(/^deg /, 'deg')
    .replace(/^(?=[CF]$)/, 'deg')
    .toLowerCase()
  const own = units(dimension).find((each) => each.toLowerCase() === joined)
  const ownValue = own === undefined ? null : siOf(`${digits} ${own}`, dimension)
  if (dimension === 'temperature') return ownValue
  const share = /^(?:per|in|of) ?([1-9]\d*) ?(?:cases?)?$/i.exec(unit)
  if (dimension === 'share' && share) return Number(digits) / Number(share[1])
  if (dimension === 'cuts' && unit === 'cut') return Number(digits)
  const size = inLibrary(unit, dimension)
  if (size !== null) return Number(digits) * size
  if (ownValue !== null) return ownValue
  const lower = inLibrary(unit.toLowerCase().replace(/^(k?)n(?=\/)/, '$1N'), dimension)
  return lower === null ? null : Number(digits) * lower
}

const known = (value: number | null) => (value === null ? [] : [value])

describe('the fix of a quantity', () => {
  it('without a unit asks which, or says it where there is but one', () => {
    const counts = counting(fc.record({ dimension, number }), ({ dimension: each, number: digits }) => {
      const kind = expectHonest(digits, each, [Number(digits)])
      const { fix } = parseQuantity(digits, each) as { fix: string }
      // the number stays
      for (const text of quoted(fix)) expect(text.startsWith(`${digits} `)).toBe(true)
      return kind
    })
    expect(Object.keys(counts).sort()).toEqual(['asked', 'same'])
  })

  it('in other capitals means the same', () => {
    const slip = fc.record({ of: inUnit, number, isUpper: fc.boolean() })
    const counts = counting(slip, ({ of, number: digits, isUpper }) => {
      const unit = isUpper ? of.unit.toUpperCase() : of.unit.toLowerCase()
      return expectHonest(`${digits} ${unit}`, of.dimension, [siOf(`${digits} ${of.unit}`, of.dimension)!])
    })
    expect(counts.same).toBeGreaterThan(1000)
    expect(Object.keys(counts).sort()).toEqual(
      ['example', 'read', 'same', 'unit'].filter((key) => counts[key]),
    )
  })

  it('with other marks in its number means the same, or asks', () => {
    const grouped = (whole: number, mark: string) => String(whole).replace(/\B(?=(\d{3})+$)/g, mark)
    const slip = fc.record({
      of: inUnit,
      whole: fc.oneof(fc.integer({ min: 0, max: 999 }), fc.integer({ min: 0, max: 9_999_999 })),
      part: fc.option(fc.integer({ min: 0, max: 9999 }).map(String)),
      marks: fc.constantFrom([',', '.'], ['.', ','], [' ', ','], [' ', '.'], ['', ',']),
    })
    const counts = counting(slip, ({ of, whole, part, marks: [thousands, decimal] }) => {
      const text = `${grouped(whole, thousands!)}${part === null ? '' : `${decimal}${part}`} ${of.unit}`
      const meant = siOf(`${whole}${part === null ? '' : `.${part}`} ${of.unit}`, of.dimension)!
      const kind = expectHonest(text, of.dimension, [meant])
      if (kind === 'asked')
        expect(
          quoted((parseQuantity(text, of.dimension) as { fix: string }).fix).map((each) =>
            siOf(each, of.dimension),
          ),
        ).toContain(meant)
      return kind
    })
    expect(counts.same).toBeGreaterThan(1000)
    expect(counts.asked).toBeGreaterThan(20)
  })

  it('with a letter more, less or other in its unit never becomes another quantity', () => {
    const slip = fc.record({
      of: inUnit,
      number,
      at: fc.nat(20),
      letter: fc.constantFrom(...'abcdefghiklmnoprstuxyzGKMNPW/'),
      how: fc.constantFrom('more', 'less', 'other'),
    })
    const counts = counting(
      slip,
      ({ of, number: digits, at, letter, how }) => {
        const place = at % of.unit.length
        const unit =
          of.unit.slice(0, place) +
          (how === 'less' ? '' : letter) +
          of.unit.slice(how === 'more' ? place : place + 1)
        if (unit.trim() === '') return expectHonest(digits, of.dimension, [])
        return expectHonest(
          `${digits} ${unit}`,
          of.dimension,
          known(meaning(digits, unit.trim(), of.dimension)),
        )
      },
      6000,
    )
    for (const kind of ['same', 'asked', 'unit', 'example', 'read'])
      expect([kind, counts[kind]]).not.toContain(undefined)
  })

  it('of a rate over some hours means the same rate', () => {
    // SI Brochure, 9th edition, table 8: 1 min = 60 s, 1 h = 3600 s
    const seconds = { s: 1, min: 60, h: 3600, hour: 3600, hours: 3600, minutes: 60 }
    const slip = fc.record({
      cases: fc.integer({ min: 1, max: 20_000 }),
      over: fc.integer({ min: 2, max: 24 }),
      unit: fc.constantFrom(...(Object.keys(seconds) as (keyof typeof seconds)[])),
      stroke: fc.constantFrom('/', ' / ', ' per ', ' in '),
    })
    const counts = counting(slip, ({ cases, over, unit, stroke }) =>
      expectHonest(`${cases} cases${stroke}${over} ${unit}`, 'case-rate', [cases / (over * seconds[unit])]),
    )
    expect(counts).toEqual({ same: 3000 })
  })

  it('in a unit of something else shows the form, with another number', () => {
    const slip = fc
      .record({ dimension, other: inUnit, number })
      .filter(({ dimension: each, other }) => each !== other.dimension)
    const counts = counting(slip, ({ dimension: each, other, number: digits }) => {
      return expectHonest(`${digits} ${other.unit}`, each, known(meaning(digits, other.unit, each)))
    })
    expect(counts.example).toBeGreaterThan(2000)
  })

  it('that is any text at all is honest too', () => {
    // marks between digits are told of above
    const started = fc.tuple(number, fc.string({ maxLength: 4 })).map(([digits, rest]) => digits + rest)
    const slips = fc
      .record({ dimension, text: fc.oneof(fc.string({ maxLength: 12 }), started) })
      .filter(({ text }) => !/\d[.,\s]+\d|,\d/.test(text.replace(/^\d+\.\d+/, '1')))
    const counts = counting(slips, ({ dimension: each, text }) => {
      const match = /^\s*([+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?)\s*(.*?)\s*$/.exec(text)
      if (match === null) return expectHonest(text, each, [])
      const unit = match[2] === '' ? dimensions[each].usual[0]! : match[2]!
      return expectHonest(text, each, known(meaning(match[1]!, unit, each)))
    })
    expect(counts.example).toBeGreaterThan(1000)
  })
})
