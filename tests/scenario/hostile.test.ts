/** What no line has is refused where it stands: sizes beyond all ends, columns of one name, numbers to another base; a foreign file is not repeated. */
import { describe, expect, it } from 'vitest'
import { problemText, ScenarioError } from '../../src/scenario/problems.js'
import { type Dimension, dimensions, unitSize } from '../../src/scenario/quantity.js'
import { readScenario } from '../../src/scenario/read.js'
import type { ReadRows } from '../../src/scenario/recorded.js'
import { readExact } from '../../src/scenario/values.js'
import { inYears } from '../../src/trade/money.js'
import { smallLine } from '../cli/in-process.js'

const rowsOf =
  (...[names, ...rows]: [string[], ...string[][]]): ReadRows =>
  (_, taker) => {
    taker.header(names)
    for (const row of rows) if (!taker.row(row)) return
  }

/** All that is said of it; empty where it can be read. */
function said(text: string, readRows?: ReadRows): string[] {
  try {
    readScenario(text, {}, readRows ? { readRows } : {})
    return []
  } catch (error) {
    if (!(error instanceof ScenarioError)) throw error
    return error.problems.map(problemText)
  }
}

describe('ends of quantities', () => {
  it.each(Object.keys(dimensions) as Dimension[])(
    'of %s: examples lie inside, both ends are told',
    (dimension) => {
      const { ends, example, units, si } = dimensions[dimension]
      expect(readExact(example, dimension, {})).toHaveProperty('value')
      const [unit] = Object.entries(units).find(([each]) => unitSize(dimension, each) === 1) ?? [
        Object.keys(units)[0]!,
      ]
      // scales of warmth do not begin at nothing
      for (const number of dimension === 'temperature' ? ['-1e308', '1e308'] : ['1e-308', '1e308']) {
        const read = readExact(`${number} ${unit}`, dimension, {})
        expect(read).toMatchObject({ fault: { code: 'out-of-range' } })
        if ('fault' in read) expect(read.fault.rule).toContain(`from ${ends[0]} to ${ends[1]} ${si}`.trim())
      }
      const nothing = readExact(`0 ${unit}`, dimension, {})
      expect('value' in nothing).toBe(dimension !== 'temperature' || unit !== 'K')
    },
  )

  it('hold for a belt and a weight, and for money', () => {
    const belt = smallLine.replace('type: sealer,', 'type: sealer, belt-speed: 1e-308 ft/min,')
    expect(said(belt)).toEqual([
      expect.stringContaining('a speed of a line is 0, or from 0.00001 to 1000 m/s'),
    ])
    const weight = smallLine.replace('height: 250 mm', 'height: 250 mm, weight: 1e-308 kg')
    expect(said(weight)).toEqual([
      expect.stringContaining('a mass of a line is 0, or from 0.000001 to 1000000 kg'),
    ])
    const money = `${smallLine}money: {currency: EUR, capital: {line.sealer: ${'9'.repeat(400)} EUR}}\n`
    expect(said(money)).toEqual([expect.stringContaining('an amount of money must be 0, or from')])
  })
})

describe('a year', () => {
  it.each([1, 10, 25])('%d of them are as many in money', (years) => {
    // 365.25 days: 1 yr is 31 557 600 s
    const read = readExact(`${years} yr`, 'time', {})
    expect(read).toEqual({ value: years * 31_557_600 })
    expect(inYears(years * 31_557_600)).toBe(years)
  })
})

describe('a CSV file', () => {
  const arrivals = smallLine.replace(
    'time-between: {exponential: {mean: 6 s}}',
    'log: {file: a.csv, time: at, unit: s}',
  )
  const cases = smallLine.replace(
    /^cases: .*$/m,
    'cases: {file: a.csv, columns: {name: kind, length: l, width: w, height: h}, unit: mm}',
  )

  it.each(['0x10', '0b1', '0o7', '1e999', 'Infinity', '1_000'])(
    'with the time %s is refused at its row',
    (cell) => {
      expect(said(arrivals, rowsOf(['at'], ['1'], [cell]))).toEqual([
        expect.stringContaining(`row 3 of column at is not a time: \`${cell}\``),
      ])
      expect(said(cases, rowsOf(['kind', 'l', 'w', 'h'], ['a', cell, '300', '200']))[0]).toContain(
        'row 2 of column l',
      )
    },
  )

  it.each(['1', '1.5', '.5', '2e1', ' 3 '])('with the time %s is read', (cell) => {
    expect(said(arrivals, rowsOf(['at'], ['0'], [cell]))).toEqual([])
  })

  it('with two columns of the name that is asked for is refused at both; others may be twice', () => {
    const twice = 'has the column `at` twice, as columns 1 and 3 of row 1'
    expect(said(arrivals, rowsOf(['at', 'b', 'at'], ['1', '2', '3']))).toEqual([
      expect.stringContaining(twice),
    ])
    expect(said(arrivals, rowsOf(['b', 'at', 'b'], ['1', '2', '3']))).toEqual([])
    expect(said(cases, rowsOf(['kind', 'l', 'l', 'w', 'h'], ['a', '400', '500', '300', '200']))).toEqual([
      expect.stringContaining('has the column `l` twice, as columns 2 and 3 of row 1'),
    ])
  })
})

describe('a piece to be removed that is none', () => {
  it.each(['[{a: 1}]', '{a: 1}', '[[1]]', 'null'])('%s is shown as it is written', (written) => {
    const variant = said(`${smallLine}variants: {other: {remove: ${written}}}\n`)
    expect(variant.length).toBeGreaterThan(0)
    expect(variant.join()).not.toContain('[object')
    expect(() => readScenario(smallLine, { set: [`remove=${written}`] })).toThrow(
      /^(?!.*\[object).*is not a piece of the line/,
    )
  })
})

describe('a foreign file', () => {
  it.each([
    // with faults of YAML all over it
    ['a program', '\u007fELF\u0002\u0001: x: y\n\u0000\u0001: [}\n'.repeat(50)],
    ['a list of accounts', 'root:x:0:0:hunter2:/root\ndaemon:x:1:1:hunter2\n'],
    ['a text', 'hunter2'],
    ['a list', '- hunter2\n- hunter2\n'],
    ['other keys', 'token: hunter2\npassword: hunter2\n'],
    ['no YAML at all', 'KEY=hunter2: x: y\n'],
    ['a quote without end', 'password: "hunter2\nother: hunter2\n'],
  ])('%s is refused without a word of it', (_, text) => {
    const [first, ...others] = said(text)
    expect(others).toEqual([])
    expect(first).toContain('[not-yaml]')
    expect(first).not.toMatch(/hunter2|password|token|root|KEY/)
  })

  it('but a scenario with a slip keeps its line and caret', () => {
    expect(said(smallLine.replace('{length: 1 h}', '{length: 1 h'))[0]).toMatch(/\n +\d+ \| .*\n +\| +\^/)
  })
})
