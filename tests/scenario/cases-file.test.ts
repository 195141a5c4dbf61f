/** Cases from a CSV file: read as cases of the scenario would be, what is wrong in it by row, and thousands of them told in few words. */
import { describe, expect, it } from 'vitest'
import { Line } from '../../src/line/line.js'
import { check } from '../../src/questions/check/study.js'
import { outsideSize } from '../../src/scenario/outside.js'
import type { ScenarioError } from '../../src/scenario/problems.js'
import { readScenario } from '../../src/scenario/read.js'
import type { RowTaker } from '../../src/scenario/recorded.js'

const rest = `
arrivals: {p: {time-between: {exponential: {mean: 5 s}}}}
line:
  infeed: {type: conveyor, length: 6 m, speed: 20 m/min}
  sealer: {type: sealer, jams: {chance: 1 %, clear: {lognormal: {mean: 60 s, cv: 0.5}}}}
shift: {length: 1 h}
`
const keys = (columns: string, more = '') =>
  `cases: {file: sizes.csv, unit: mm, columns: {${columns}}${more}}${rest}`
const sides = 'name: SKU, length: L, width: W, height: H'

/** Reads with the rows of a file, cells parted by commas. */
function read(text: string, rows: readonly string[], reads: string[] = []) {
  return readScenario(
    text,
    {},
    {
      readRows(file: string, taker: RowTaker) {
        reads.push(file)
        taker.header(rows[0]!.split(','))
        for (const row of rows.slice(1)) if (!taker.row(row.split(','))) return
      },
    },
  )
}

function problems(text: string, rows: readonly string[]): string[] {
  try {
    read(text, rows)
    return []
  } catch (error) {
    return (error as ScenarioError).problems.map(
      ({ code, path, line, rule, fix }) => `${line} ${path} ${code}: ${rule} (${fix})`,
    )
  }
}

describe('by hand: cases of a file are those of the scenario', () => {
  it('sides in their unit, shares as they are counted, weights and factors', () => {
    const { scenario } = read(keys(`${sides}, share: n, weight: kg, jam-factor: j`), [
      'SKU,n,L,W,H,kg,j',
      'small,300,400,300,250,9,1',
      '10077,100,480.5,310,280,16.2,1.5',
    ])
    expect(scenario.cases).toEqual({
      small: { share: 300, length: 0.4, width: 0.3, height: 0.25, weight: 9, 'jam-factor': 1 },
      10077: { share: 100, length: 0.4805, width: 0.31, height: 0.28, weight: 16.2, 'jam-factor': 1.5 },
    })
  })

  it('in inches and pounds; without share and weight they come alike and weigh nothing that is known', () => {
    const text = keys(`${sides}, weight: lb`, ', weight-unit: lb').replace('unit: mm', 'unit: in')
    const { scenario, resolved, assumed } = read(text, ['L,W,H,SKU,lb', '20,10,10,a,10'])
    expect(scenario.cases.a).toMatchObject({
      share: 1,
      length: 0.508,
      width: 0.254,
      height: 0.254,
      'jam-factor': 1,
    })
    expect(scenario.cases.a!.weight).toBeCloseTo(4.5359237, 9)
    // what a second run would read names the file
    expect(resolved.cases).toMatchObject({ file: 'sizes.csv' })
    expect(assumed.map(({ path }) => path)).not.toContain('cases.weight-unit')
  })

  it('bring the same shifts, to the last digit', () => {
    const rows = ['SKU,L,W,H,n', 'a,400,300,250,60', 'b,500,350,300,30', 'c,300,250,200,10']
    const written = `cases: {a: {length: 400 mm, width: 300 mm, height: 250 mm, share: 60}, b: {length: 500 mm, width: 350 mm, height: 300 mm, share: 30}, c: {length: 300 mm, width: 250 mm, height: 200 mm, share: 10}}${rest}`
    const values = ({ scenario }: ReturnType<typeof readScenario>) =>
      new Line(scenario).simulate('s', 1).values
    expect(values(read(keys(`${sides}, share: n`), rows))).toEqual(values(readScenario(written)))
  })

  it('are read once, however many designs have them', () => {
    const reads: string[] = []
    const variants = 'variants: {v: {set: {tape.leg: 60 mm}}, w: {set: {cases.unit: cm}}}\n'
    const { variants: made } = read(`${keys(sides)}${variants}`, ['SKU,L,W,H', 'a,50,30,25'], reads)
    expect(reads).toHaveLength(2)
    expect(made.map(({ scenario }) => scenario.cases.a!.length)).toEqual([0.05, 0.5])
  })
})

describe('what is wrong in a file', () => {
  it('is told by row and column, all at once', () => {
    expect(
      problems(keys(`${sides}, share: n`), [
        'SKU,L,W,H,n',
        'a,-300,300,250,1',
        'b,400,,250,1',
        'a,400,300,"2,5",-1',
        ',400,300,250,x',
      ]),
    ).toEqual([
      '1 cases.columns.length file: row 2 of column L is not a length from 10 mm to 10000 mm: `-300` (correct the row, or remove it)',
      '1 cases.columns.width file: row 3 of column W is not a length from 10 mm to 10000 mm: `` (correct the row, or remove it)',
      '1 cases.columns.name file: row 4 of column SKU repeats the name of row 2: `a` (one row for each case; add the shares, or give each row its own name)',
      '1 cases.columns.height file: row 4 of column H is not a length from 10 mm to 10000 mm: `"2` (correct the row, or remove it)',
      '1 cases.columns.share file: row 4 of column n is not a number that is not negative: `5"` (correct the row, or remove it)',
      '1 cases.columns.name file: row 5 of column SKU is not a valid name: `` (1 to 40 characters that can be printed)',
      '1 cases.columns.share file: row 5 of column n is not a number that is not negative: `x` (correct the row, or remove it)',
    ])
  })

  it('of columns, with what there is', () => {
    expect(problems(keys(`${sides}, share: orders`), ['SKU,Long,W,H', 'a,1,1,1'])).toEqual([
      '1 cases.columns.length file: `sizes.csv` has no column `L`; it has SKU, Long, W, H (did you mean `W`?)',
      '1 cases.columns.share file: `sizes.csv` has no column `orders`; it has SKU, Long, W, H (allowed here: SKU, Long, W, H)',
    ])
    expect(problems(keys('name: SKU, length: L, width: W, hight: H'), ['SKU', 'a'])).toEqual([
      '1 cases.columns.height missing-key: `height` is missing and must be given (add a text)',
      '1 cases.columns.hight unknown-key: `hight` is not a key of `columns` (did you mean `height`?)',
    ])
  })

  it('is told of so many rows and no more; of none, of too many, and where no files can be read', () => {
    const bad = Array.from({ length: 1000 }, (_, row) => `k${row},0,300,250`)
    const found = problems(keys(sides), ['SKU,L,W,H', ...bad])
    expect(found).toHaveLength(21)
    expect(found.at(-1)).toBe(
      '1 cases.file file: the rows below row 21 were not checked: at most 20 errors are listed (correct these, then read the file again)',
    )
    expect(problems(keys(sides), ['SKU,L,W,H'])[0]).toMatch(/the file holds no rows/)
    const many = Array.from({ length: 50_010 }, (_, row) => `k${row},400,300,250`)
    expect(problems(keys(sides), ['SKU,L,W,H', ...many])).toEqual([
      '1 cases.file file: more than 50000 cases (keep the most frequent cases, or one for many that are similar)',
    ])
    expect(() => readScenario(keys(sides))).toThrow('files cannot be read here')
  })
})

describe('ten thousand of them', () => {
  const rows = Array.from(
    { length: 10_000 },
    (_, row) =>
      `sku ${row},${250 + ((row * 37) % 350)},${200 + ((row * 53) % 150)},${100 + ((row * 71) % 250)},${1 + ((row * row) % 97)}`,
  )
  const loaded = read(keys(`${sides}, share: n`), ['SKU,L,W,H,n', ...rows])

  it('are told by those that matter, the others together', () => {
    const document = check(loaded)
    const { cases, otherCases, findings } = document
    const told = Object.values(cases).map(({ share }) => share.value!)
    expect(told.length).toBeLessThanOrEqual(20)
    expect(told.length + otherCases!.count).toBe(10_000)
    expect(told.reduce((sum, each) => sum + each, 0) + otherCases!.share).toBeCloseTo(1, 9)
    // the legs of 70 mm meet on cases of 140 mm and less: some of many, and counted
    const meet = findings.filter(({ code }) => code === 'legs-meet')
    expect(meet).toHaveLength(5)
    const low = Object.values(loaded.scenario.cases).filter(
      (kind) => outsideSize(kind).height <= 0.14 + 1e-9,
    ).length
    expect(meet[0]!.message).toContain(`The same applies to ${low - 1} other cases, of which 4 are listed.`)
    expect(meet[0]!.place).toMatchObject({ line: 1 })
    expect(JSON.stringify(document).length).toBeLessThan(100_000)
  })

  it('come in their shares: the mean length of what comes is that of the mix', () => {
    const kinds = Object.values(loaded.scenario.cases).map((kind) => ({
      share: kind.share,
      ...outsideSize(kind),
    }))
    const all = kinds.reduce((sum, { share }) => sum + share, 0)
    const mean = kinds.reduce((sum, { share, length }) => sum + (share / all) * length, 0)
    const variance = kinds.reduce((sum, { share, length }) => sum + (share / all) * (length - mean) ** 2, 0)
    const line = new Line(loaded.scenario)
    const arrived = line.columns.findIndex(({ measure }) => measure.path.join('.') === 'arrivals.p.arrived')
    const shifts = Array.from({ length: 10 }, (_, index) => line.simulate('s', index + 1))
    const cases = shifts.reduce((sum, { values }) => sum + values[arrived]!, 0)
    // by which the cases drawn were longer than the mean, summed: of mean 0, and within four standard errors of it
    const longer = shifts.reduce((sum, { controls }) => sum + controls[1]!, 0)
    expect(cases).toBeGreaterThan(5000)
    expect(Math.abs(longer)).toBeLessThan(4 * Math.sqrt(cases * variance))
    // 10 000 kinds, and yet no figures of each
    expect(line.columns.length).toBeLessThan(200)
  })
})
