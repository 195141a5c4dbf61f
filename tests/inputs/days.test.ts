/** Whole days of observed values drawn anew: what that says of a mean, and what is refused. */
import { mean, sampleVariance, variance } from 'simple-statistics'
import { describe, expect, it } from 'vitest'
import { checkScenario } from '../../src/hand/check.js'
import { drawInputs } from '../../src/inputs/draw.js'
import { whatIsKnown } from '../../src/inputs/what-is-known.js'
import { type Loaded, loadScenario } from '../../src/scenario/load.js'
import type { ScenarioError } from '../../src/scenario/problems.js'

const clear = 'line.sealer.jams.clear'
const repair = 'line.sealer.breakdowns.repair'

type Columns = Record<string, readonly string[]>

const load = (columns: Columns, laws: Record<string, string>): Loaded =>
  loadScenario(
    `cases: {a: {length: 400 mm, width: 300 mm, height: 250 mm}}
arrivals: {p: {time-between: 5 s}}
line: {sealer: {type: sealer, jams: {chance: 1 %, clear: 60 s}, breakdowns: {after: 40 h, repair: 10 min}}}
shift: {length: 8 h}
`,
    {
      sets: Object.entries(laws).map(([path, law]) => `${path}=${law}`),
      readColumn(file, column) {
        const found = columns[column]
        if (!found) throw new Error(`\`${file}\` has no column \`${column}\`; it has ${Object.keys(columns)}`)
        return [...found]
      },
    },
  )
const law = (column: string, day = ', day: date') =>
  `{observed: {file: f.csv, column: ${column}, unit: s${day}}}`

/** Means of a law over so many draws. */
const meansOf = (loaded: Loaded, draws: number, input = 0): number[] =>
  Array.from({ length: draws }, (_, index) => drawInputs(loaded, 'seed', index + 1).inputs[input]!)

const days = 10
const perDay = 20
// 10 s on the first day, 20 s on the second, and so on: between the days all of the variance lies
const date = Array.from(
  { length: days * perDay },
  (_, index) => `2026-01-${String((index % days) + 1).padStart(2, '0')}`,
)
const seconds = date.map((day) => String(10 * Number(day.slice(8))))

describe('days that differ by known amounts', () => {
  const ofDays = Array.from({ length: days }, (_, day) => 10 * (day + 1))
  // variance of a mean of days that are drawn, each as often as any: that of the days over their number
  const betweenDays = variance(ofDays) / days
  const draws = 2000
  // of a sample of normal values the variance lies within so much of itself at four standard errors
  const near = 4 * Math.sqrt(2 / draws)

  it('give a mean that varies by the variance between days', () => {
    const found = sampleVariance(meansOf(load({ seconds, date }, { [clear]: law('seconds') }), draws))
    expect(betweenDays).toBeCloseTo(82.5, 10)
    expect(Math.abs(found / betweenDays - 1)).toBeLessThan(near)
  })

  it('and as single values by a twentieth of it, for each day has 20', () => {
    const found = sampleVariance(meansOf(load({ seconds, date }, { [clear]: law('seconds', '') }), draws))
    expect(Math.abs(found / (betweenDays / perDay) - 1)).toBeLessThan(near)
  })

  it('are known by as many days as there are: Student t by hand', () => {
    const loaded = load({ seconds, date }, { [clear]: law('seconds') })
    expect(loaded.evidence).toMatchObject([{ path: clear, known: { observations: 200, days: 10 } }])
    const { value, low, high } = whatIsKnown(loaded.scenario, loaded.evidence[0]!)
    // t of 9 degrees of freedom at 97.5 % is 2.262; sample variance of the days 916.67, over 10 of them
    const half = 2.26216 * Math.sqrt(916.6667 / 10)
    expect(value).toBeCloseTo(55, 10)
    expect(high - value).toBeCloseTo(half, 3)
    expect(value - low).toBeCloseTo(half, 3)
  })

  it('are told of by check as few days, and what the value rests on as such', () => {
    const loaded = load({ seconds, date }, { [clear]: law('seconds') })
    const finding = checkScenario(loaded).findings.find(({ code }) => code === 'few-observations')!
    expect(finding.message).toMatch(
      /is based on 200 observations on 10 days, drawn as whole days: its mean is known to within 39 %/,
    )
    const single = load({ seconds, date }, { [clear]: law('seconds', '') })
    expect(checkScenario(single).findings.some(({ code }) => code === 'few-observations')).toBe(false)
  })
})

describe('a draw of days', () => {
  it('has each day whole or not at all, by hand', () => {
    // three values on one day, one on another: days are drawn twice, so both, one twice, or the other twice
    const loaded = load(
      { seconds: ['4', '2', '3', '9'], date: ['a', 'a', 'a', 'b'] },
      { [clear]: law('seconds') },
    )
    const met = new Set<string>()
    for (let number = 1; number <= 60; number++) {
      const { scenario } = drawInputs(loaded, 'seed', number)
      const sealer = scenario.line.sealer! as { jams?: { clear: unknown } }
      const { values } = sealer.jams!.clear as { values: number[] }
      met.add(values.join(' '))
    }
    // all of the three, with 60 draws of chances 1/4, 1/4, 1/2
    expect([...met].sort()).toEqual(['2 2 3 3 4 4', '2 3 4 9', '9 9'])
  })

  it('is the same for all columns of a file, and another for another file', () => {
    // the second column says ten times the first: with the same days so do their means
    const ten = seconds.map((each) => `${each}0`)
    const both = load({ seconds, ten, date }, { [clear]: law('seconds'), [repair]: law('ten') })
    const means = (input: number) => meansOf(both, 30, input)
    for (const [index, each] of means(0).entries()) expect(means(1)[index]! / each).toBeCloseTo(10, 9)
    const other = law('ten').replace('f.csv', 'g.csv')
    const apart = load({ seconds, ten, date }, { [clear]: law('seconds'), [repair]: other })
    const unlike = meansOf(apart, 30, 1).filter(
      (each, index) => Math.abs(each / means(0)[index]! - 10) > 1e-6,
    )
    expect(unlike.length).toBeGreaterThan(25)
  })

  it('of very many values keeps as many as say all, and their mean', () => {
    const count = 60_000
    const many = Array.from({ length: count }, (_, index) => String(index % 600))
    const dates = Array.from({ length: count }, (_, index) => String(Math.floor(index / 600)))
    const loaded = load({ many, date: dates }, { [clear]: law('many') })
    // each of the 100 days has all values alike: the mean is 299.5 whatever days are drawn
    for (const each of meansOf(loaded, 5)) expect(each).toBeCloseTo(299.5, 1)
    expect(mean(meansOf(loaded, 5))).toBeCloseTo(299.5, 1)
  })
})

describe('what is refused', () => {
  const problems = (columns: Columns) => {
    try {
      load(columns, { [clear]: law('seconds') })
      return []
    } catch (error) {
      return (error as ScenarioError).problems.map(({ code, path, rule, fix }) => ({ code, path, rule, fix }))
    }
  }
  const at = `${clear}.observed.day`

  it.each<[string, Columns, RegExp]>([
    ['a column that is not there', { seconds: ['1', '2'] }, /has no column `date`; it has seconds/],
    [
      'one day only',
      { seconds: ['1', '2'], date: ['2026-01-05', '2026-01-05'] },
      /has one day only, 2026-01-05/,
    ],
    [
      'a row without a day',
      { seconds: ['1', '2'], date: ['2026-01-05', ' '] },
      /row 3 of column date is empty/,
    ],
  ])('%s, with its mend', (_, columns, rule) => {
    const [found, ...more] = problems(columns)
    expect(found).toMatchObject({ code: 'file', path: at, rule: expect.stringMatching(rule) })
    expect(found!.fix.length).toBeGreaterThan(20)
    expect(more).toEqual([])
  })

  it('and no more than that where the values themselves are wrong', () => {
    expect(problems({ seconds: ['1', 'x'] }).map(({ path }) => path)).toEqual([`${clear}.observed.file`])
  })
})
