/** Sources in the file: exactly one way of arriving, its keys with their defaults, and what is refused. */
import { describe, expect, it } from 'vitest'
import { loadScenario } from '../../src/scenario/load.js'
import { ScenarioError } from '../../src/scenario/problems.js'
import type { ReadRows } from '../../src/scenario/recorded.js'

const text = (source: string, length = '8 h') => `cases:
  bars: {length: 400 mm, width: 300 mm, height: 250 mm}
  flakes: {length: 500 mm, width: 300 mm, height: 250 mm}
arrivals:
  p: ${source}
line: {infeed: {type: conveyor, length: 6 m}}
shift: {length: ${length}}
`

const rowsOf =
  (...rows: string[][]): ReadRows =>
  (_, taker) => {
    taker.header(rows[0]!)
    for (const row of rows.slice(1)) if (!taker.row(row)) return
  }

const header = ['seconds', 'kind']

function load(source: string, options: { length?: string; readRows?: ReadRows } = {}) {
  return loadScenario(text(source, options.length), {
    readRows: options.readRows ?? rowsOf(header, ['1', 'bars']),
  })
}

/** Code, path, line and column of each finding. */
function findings(...[source, options]: Parameters<typeof load>): [string, string, number, number][] {
  try {
    load(source, options)
  } catch (error) {
    if (!(error instanceof ScenarioError)) throw error
    return error.problems.map(({ code, path, line, column }) => [code, path, line, column])
  }
  return []
}

describe('a source', () => {
  it('by hour is at random unless it says evenly', () => {
    const { scenario, assumed } = load('{by-hour: {cases: [540 cases/h, 0 cases/h, 12 cases/min]}}')
    expect(scenario.arrivals.p!['by-hour']).toEqual({ cases: [0.15, 0, 0.2], spaced: 'at-random' })
    expect(assumed).toContainEqual({
      path: 'arrivals.p.by-hour.spaced',
      value: 'at-random',
      basis: 'definition of the format',
    })
  })

  it('with orders has their times as distributions', () => {
    const { scenario } = load(
      '{orders: [{case: bars, quantity: 800, time-between: 5 s, before: 4 min}, {case: flakes, quantity: 1, time-between: {exponential: {mean: 6 s}}}]}',
    )
    expect(scenario.arrivals.p!.orders).toEqual([
      {
        case: 'bars',
        quantity: 800,
        'time-between': { law: 'constant', value: 5 },
        before: { law: 'constant', value: 240 },
      },
      { case: 'flakes', quantity: 1, 'time-between': { law: 'exponential', mean: 6 } },
    ])
  })

  it('with a log has times in s and kinds by their place', () => {
    const { log } = load('{log: {file: x.csv, time: seconds, case: kind, unit: min}}', {
      readRows: rowsOf(['kind', 'seconds'], ['flakes', '0.5'], ['bars', '2'], ['bars', '2']),
    }).scenario.arrivals.p!
    expect([[...log!.times], [...log!.kinds!]]).toEqual([
      [30, 120, 120],
      [1, 0, 0],
    ])
  })

  it('with a log longer than one part keeps every row in its place', () => {
    const rows = Array.from({ length: 150_001 }, (_, index) => [`${index}`, index % 5 ? 'bars' : 'flakes'])
    const { log } = load('{log: {file: x.csv, time: seconds, case: kind, unit: s}}', {
      readRows: (_, taker) => {
        taker.header(header)
        for (const row of rows) taker.row(row)
      },
    }).scenario.arrivals.p!
    expect(log!.times).toHaveLength(150_001)
    expect(log!.times.every((time, index) => time === index)).toBe(true)
    expect(log!.kinds!.every((kind, index) => kind === (index % 5 ? 0 : 1))).toBe(true)
  })

  it('may be changed by path, an order by its number', () => {
    const source = '{orders: [{case: bars, quantity: 8, time-between: 5 s}]}'
    const { scenario } = loadScenario(text(source), { sets: ['arrivals.p.orders.0.quantity=9'] })
    expect(scenario.arrivals.p!.orders![0]!.quantity).toBe(9)
    const whole = loadScenario(text(source), { sets: ['arrivals.p={by-hour: {cases: [5 cases/min]}}'] })
    expect(whole.scenario.arrivals.p!.orders).toBeUndefined()
  })
})

describe('findings', () => {
  const log = '{log: {file: x.csv, time: seconds, case: kind, unit: s}}'

  it.each<[string, string, [string, string, number, number][]]>([
    ['no way', '{batch: 2}', [['one-of', 'arrivals.p', 5, 3]]],
    ['two ways', '{rate: 5 cases/min, by-hour: {cases: [5 cases/min]}}', [['one-of', 'arrivals.p', 5, 3]]],
    ['a misspelt way', '{by-hours: {cases: [5 cases/min]}}', [['unknown-key', 'arrivals.p.by-hours', 5, 7]]],
    ['no hours', '{by-hour: {cases: []}}', [['out-of-range', 'arrivals.p.by-hour.cases', 5, 24]]],
    ['only hours of 0', '{by-hour: {cases: [0 cases/h]}}', [['conflict', 'arrivals.p.by-hour.cases', 5, 24]]],
    ['a bare rate', '{by-hour: {cases: [540]}}', [['no-unit', 'arrivals.p.by-hour.cases.0', 5, 25]]],
    [
      'less than nothing',
      '{by-hour: {cases: [-1 cases/h]}}',
      [['out-of-range', 'arrivals.p.by-hour.cases.0', 5, 25]],
    ],
    [
      'too many an hour',
      '{by-hour: {cases: [1 cases/h, 1e9 cases/h]}}',
      [['out-of-range', 'arrivals.p.by-hour.cases.1', 5, 36]],
    ],
    [
      'another word',
      '{by-hour: {cases: [5 cases/h], spaced: even}}',
      [['not-allowed', 'arrivals.p.by-hour.spaced', 5, 45]],
    ],
    ['no orders', '{orders: []}', [['out-of-range', 'arrivals.p.orders', 5, 15]]],
    [
      'an unknown case',
      '{orders: [{case: bar, quantity: 5, time-between: 5 s}]}',
      [['no-such-path', 'arrivals.p.orders.0.case', 5, 23]],
    ],
    [
      'no quantity',
      '{orders: [{case: bars, quantity: 0, time-between: 5 s}]}',
      [['out-of-range', 'arrivals.p.orders.0.quantity', 5, 39]],
    ],
    [
      'no time between',
      '{orders: [{case: bars, quantity: 5, time-between: 0 s}]}',
      [['out-of-range', 'arrivals.p.orders.0.time-between', 5, 56]],
    ],
    [
      'orders in batches',
      '{batch: 2, orders: [{case: bars, quantity: 5, time-between: 5 s}]}',
      [['conflict', 'arrivals.p.batch', 5, 14]],
    ],
    ['a log in batches', `{batch: 2, ${log.slice(1)}`, [['conflict', 'arrivals.p.batch', 5, 14]]],
    [
      'a log without unit',
      '{log: {file: x.csv, time: seconds}}',
      [['missing-key', 'arrivals.p.log.unit', 5, 7]],
    ],
  ])('%s', (_, source, expected) => {
    expect(findings(source)).toEqual(expected)
  })

  it('an hour with a rate that lies beyond the shift does not count', () => {
    const source = '{by-hour: {cases: [0 cases/h, 0 cases/h, 5 cases/h]}}'
    expect(findings(source, { length: '2 h' })).toEqual([['conflict', 'arrivals.p.by-hour.cases', 5, 24]])
    expect(findings(source, { length: '121 min' })).toEqual([])
  })

  it.each<[string, string[][], string[]]>([
    ['no rows', [header], ['the file holds no rows']],
    [
      'a time that is none',
      [header, ['1', 'bars'], ['', 'bars']],
      ['row 3 of column seconds is not a time: ``'],
    ],
    ['a negative time', [header, ['-1', 'bars']], ['row 2 of column seconds is not a time: `-1`']],
    ['an endless time', [header, ['1e999', 'bars']], ['row 2 of column seconds is not a time: `1e999`']],
    [
      'a time that goes back',
      [header, ['2', 'bars'], ['2', 'bars'], ['1.9', 'bars']],
      ['row 4 of column seconds is earlier than the row before: `1.9`'],
    ],
    [
      'several at once',
      [header, ['2', 'bar'], ['x', 'flakes'], ['1', 'soap']],
      [
        'row 2 of column kind does not name a case: `bar`',
        'row 3 of column seconds is not a time: `x`',
        'row 4 of column seconds is earlier than the row before: `1`',
        'row 4 of column kind does not name a case: `soap`',
      ],
    ],
    [
      'no such columns',
      [
        ['a', 'b'],
        ['2', 'bar'],
      ],
      ['`x.csv` has no column `seconds`; it has a, b', '`x.csv` has no column `kind`; it has a, b'],
    ],
    [
      'a shift that is over',
      [header, ['28800', 'bars']],
      [
        'the first case arrives 28800 s after the start, when the shift is over: times count from the start of the shift',
      ],
    ],
  ])('of a log: %s', (_, rows, rules) => {
    let found: string[] = []
    try {
      load(log, { readRows: rowsOf(...rows) })
    } catch (error) {
      found = (error as ScenarioError).problems.map(({ rule }) => rule)
    }
    expect(found).toEqual(rules)
  })

  it('of a log full of faults end after a few, and so does the reading', () => {
    let handed = 0
    const bad: ReadRows = (_, taker) => {
      taker.header(header)
      while (taker.row(['x', 'bars'])) handed++
    }
    expect(findings(log, { readRows: bad })).toHaveLength(5)
    expect(handed).toBe(4)
  })

  it('of a log where files cannot be read, or not this one', () => {
    const at = [['file', 'arrivals.p.log.file', 5, 19]]
    expect(
      findings(log, {
        readRows: () => {
          throw new Error('`x.csv` cannot be read: it is away')
        },
      }),
    ).toEqual(at)
    expect(() => loadScenario(text(log))).toThrow(/files cannot be read here/)
  })
})
