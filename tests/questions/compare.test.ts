/** Comparisons of designs that saw the same random numbers: what the figures are made of, and what changes none of them. */
import { describe, expect, it } from 'vitest'
import type { DifferenceFigure } from '../../src/answers/difference-figure.js'
import { measureName, type Simulated, studyMeasures } from '../../src/answers/figures.js'
import { type CompareResult, compareResult } from '../../src/questions/compare/document.js'
import {
  againstFirst,
  allPairs,
  comparedMeasure,
  differenceAt,
  judgeTogether,
  type Pair,
  together,
} from '../../src/questions/compare/judge.js'
import { compareReport } from '../../src/questions/compare/report.js'
import {
  pairedDifference,
  pairedRatioDifference,
  pairedShareDifference,
} from '../../src/statistics/paired.js'
import { smallLine } from '../cli/in-process.js'
import { saidRows, titles } from '../report/said.js'
import { type Design, designsOf, tapeChoice } from './designs.js'

const shifts = 12
const usual = ['throughput', 'target-held', 'time-in-system', 'cost-per-1000']

const small = `${smallLine}variants:
  long: {note: a long one, set: {line.infeed.length: 12 m}}
  slow: {set: {line.end.time: 5 s}}
  same: {note: changes nothing, set: {line.infeed.length: 6 m}}
`

function documentOf(
  designs: readonly Design[],
  compared: readonly string[] = usual,
  pairs: readonly Pair[] = againstFirst(designs.length),
): CompareResult {
  return compareResult({
    designs,
    measures: compared,
    pairs,
    requirements: designs.map(() => []),
    best: null,
    matters: new Map(),
    made: {
      version: '0.0.0',
      node: 'v20',
      seed: 'hamper',
      scenario: { title: 'a comparison', sha256: '' },
      shifts: designs[0]!.shifts.length,
      confidence: 0.95,
      plain: false,
      repeat: '',
    },
    told: { assumed: [], evidence: [], exact: '' },
  })
}

/** Numbers of a column over the shifts, by the name of the measure; the second part of a ratio one further on. */
function column({ line, scenario, shifts: of }: Simulated, name: string, further = 0): number[] {
  const { index } = studyMeasures(line.columns, scenario.shift.campaign).find(
    (measure) => measureName(measure) === name && measure.kind !== 'quantile',
  )!
  return of.map(({ values }) => values[index + further]!)
}

const [base, ...variants] = designsOf(tapeChoice, shifts) as [Design, ...Design[]]
const demo = documentOf([base, ...variants])
const smallDesigns = designsOf(small, shifts)
const ofSmall = documentOf(smallDesigns, ['throughput', 'target-held', 'time-in-system'])

describe('a difference', () => {
  it.each(['throughput', 'time-in-system', 'output', 'cost-per-year'])(
    'of %s is that of the columns, pair by pair',
    (name) => {
      for (const design of variants) {
        const figure = demo.differences[design.name]![name]!
        const level = figure.family === null ? 0.95 : 1 - 0.05 / figure.family
        const by = pairedDifference(column(base, name), column(design, name), level)
        expect(figure.mean).toBe(by.mean)
        expect(figure.sd).toBe(by.sd)
        expect(figure.n).toBe(shifts)
        if (figure.isShown !== false) expect([figure.low, figure.high]).toEqual([by.low, by.high])
        const alone = pairedDifference(column(base, name), column(design, name), 0.95)
        expect(figure.alone).toEqual({ low: alone.low, high: alone.high })
        // design less base
        const mean = (values: number[]) => values.reduce((sum, value) => sum + value, 0) / shifts
        expect(figure.mean).toBeCloseTo(mean(column(design, name)) - mean(column(base, name)), 9)
      }
    },
  )

  it.each(['cost-per-1000', 'cost-per-1000-tape', 'tape-per-case'])(
    'of %s is that of two ratios, total over total',
    (name) => {
      for (const design of variants) {
        const figure = demo.differences[design.name]![name]!
        const by = pairedRatioDifference(
          column(base, name),
          column(base, name, 1),
          column(design, name),
          column(design, name, 1),
          0.95,
        )
        expect(figure.mean).toBe(by.mean)
        expect(figure.alone).toEqual({ low: by.low, high: by.high })
        const total = (of: Simulated, further: number) =>
          column(of, name, further).reduce((sum, value) => sum + value, 0)
        const ratio = (of: Simulated) => total(of, 0) / total(of, 1)
        expect(figure.mean).toBeCloseTo(ratio(design) - ratio(base), 9)
      }
    },
  )

  it('of a share is that of two shares of the same shifts', () => {
    for (const design of smallDesigns.slice(1)) {
      const figure = ofSmall.differences[design.name]!['target-held']!
      const by = pairedShareDifference(
        column(smallDesigns[0]!, 'target-held'),
        column(design, 'target-held'),
        0.95,
      )
      expect(figure.mean).toBe(by.mean)
      expect(figure.alone).toEqual({ low: by.low, high: by.high })
    }
  })

  it('running cost is cost without capital recovery, and that before failures without closures', () => {
    const sum = (of: Simulated, keys: string[]) =>
      column(of, 'cost-per-1000').map(
        (value, shift) =>
          value - keys.reduce((all, key) => all + column(of, `cost-per-1000-${key}`)[shift]!, 0),
      )
    for (const design of variants)
      for (const [name, keys] of [
        ['running-cost', ['capital']],
        ['cost-before-failures', ['failures', 'failure-repair']],
      ] as const) {
        const figure = demo.differences[design.name]![name]!
        const [over, overBase] = [design, base].map((of) => column(of, 'cost-per-1000', 1))
        const by = pairedRatioDifference(sum(base, [...keys]), overBase!, sum(design, [...keys]), over!, 0.95)
        expect(figure.mean).toBeCloseTo(by.mean, 9)
        expect(figure.alone.low).toBeCloseTo(by.low, 9)
        expect(figure.family).not.toBeNull()
      }
  })
})

describe('shifts that both have', () => {
  it('are paired where one design has more of them', () => {
    const [long, short] = [
      smallDesigns[0]!,
      { ...smallDesigns[1]!, shifts: smallDesigns[1]!.shifts.slice(0, 7) },
    ]
    const [mine, theirs] = together(long, short)
    expect([mine.length, theirs.length]).toEqual([7, 7])
    expect([mine[6], theirs[6]]).toEqual([long.shifts[6], short.shifts[6]])
    expect(together(short, long).map(({ length }) => length)).toEqual([7, 7])
    const figure = documentOf([long, short], ['throughput']).differences.long!.throughput!
    const by = pairedDifference(
      column(long, 'throughput').slice(0, 7),
      column(short, 'throughput'),
      1 - 0.05 / figure.family!,
    )
    expect(figure).toMatchObject({ n: 7, mean: by.mean, sd: by.sd })
    // each design by itself keeps all of its own
    const { variants: own } = documentOf([long, short], ['throughput'])
    expect([own.base!.measures.throughput!.n, own.long!.measures.throughput!.n]).toEqual([12, 7])
    expect([own.base!.shifts, own.long!.shifts]).toEqual([12, 7])
  })
})

/** A difference without what depends on the size of the family. */
const withoutFamily = ({
  low: _,
  high: __,
  family: ___,
  p: ____,
  isShown: _____,
  ...rest
}: DifferenceFigure) => rest

const mapped = <T, U>(of: Record<string, T>, to: (each: T) => U): Record<string, U> =>
  Object.fromEntries(Object.entries(of).map(([key, each]) => [key, to(each)]))

describe('another order, another variant', () => {
  it('the order of the variants changes no figure and no difference', () => {
    const turned = documentOf([base, ...[...variants].reverse()])
    expect(Object.keys(turned.variants)).toEqual(['base', ...variants.map(({ name }) => name).reverse()])
    expect(turned.variants).toEqual(demo.variants)
    expect(turned.differences).toEqual(demo.differences)
  })

  it('one more changes no figure of the others, no difference alone, and widens those of the family', () => {
    const fewer = documentOf([base, ...variants.slice(0, -1)])
    for (const { name } of [base, ...variants.slice(0, -1)]) {
      const { worth: here, ...rest } = fewer.variants[name]!
      const { worth: there, ...all } = demo.variants[name]!
      expect(rest).toEqual(all)
      // what it is worth in the mean; its ends hold together with the family
      expect(here?.netPresentValue?.mean).toBe(there?.netPresentValue?.mean)
      if (name === 'base') continue
      const [before, after] = [fewer.differences[name]!, demo.differences[name]!]
      expect(mapped(before, withoutFamily)).toEqual(mapped(after, withoutFamily))
      for (const [measure, { family, low, high }] of Object.entries(before)) {
        const more = after[measure]!
        if (family === null) expect(more).toEqual(before[measure])
        else {
          expect([family, more.family]).toEqual([24, 30])
          expect(more.low).toBeLessThanOrEqual(low!)
          expect(more.high).toBeGreaterThanOrEqual(high!)
        }
      }
    }
  })

  it('another measure changes no difference alone either', () => {
    const [one, two] = [['throughput'], ['throughput', 'time-in-system']].map((names) =>
      documentOf([base, variants[0]!], names),
    )
    expect(withoutFamily(two!.differences['three-inch']!.throughput!)).toEqual(
      withoutFamily(one!.differences['three-inch']!.throughput!),
    )
    // with running-cost and cost-before-failures
    expect(one!.differences['three-inch']!.throughput!.family).toBe(3)
    expect(two!.differences['three-inch']!.throughput!.family).toBe(4)
  })
})

describe('pairs', () => {
  it('all of n designs are n (n - 1) / 2, each once, the later less the earlier', () => {
    for (const designs of [1, 2, 3, 6, 11]) {
      const pairs = allPairs(designs)
      expect(pairs).toHaveLength((designs * (designs - 1)) / 2)
      expect(new Set(pairs.map(({ of, against }) => `${of} ${against}`)).size).toBe(pairs.length)
      expect(pairs.every(({ of, against }) => of > against && against >= 0 && of < designs)).toBe(true)
      expect(againstFirst(designs)).toEqual(pairs.filter(({ against }) => against === 0))
    }
  })

  it('of variants stand beside the differences from the base, in one family with them', () => {
    const all = documentOf(smallDesigns, ['throughput'], allPairs(4))
    expect(all.pairs.map(({ of, against }) => [of, against])).toEqual([
      ['slow', 'long'],
      ['same', 'long'],
      ['same', 'slow'],
    ])
    expect(Object.keys(all.differences)).toEqual(['long', 'slow', 'same'])
    expect(all.differences.slow!.throughput!.family).toBe(6)
    const [first] = all.pairs
    const by = pairedDifference(
      column(smallDesigns[1]!, 'throughput'),
      column(smallDesigns[2]!, 'throughput'),
      1 - 0.05 / 6,
    )
    expect(first!.differences.throughput).toMatchObject({ mean: by.mean, sd: by.sd, family: 6 })
    const { throughput: slow } = all.differences.slow!
    expect(first!.differences.throughput!.mean).toBeCloseTo(
      slow!.mean! - all.differences.long!.throughput!.mean!,
      12,
    )
  })
})

describe('a measure that one design lacks', () => {
  it('has no difference and is no member of the family', () => {
    const cheap = `${smallLine}variants: {priced: {set: {money.currency: EUR, money.labour: 30 EUR/h}}}\n`
    const [free] = designsOf(smallLine, shifts)
    const [, priced] = designsOf(
      `${smallLine}money: {currency: EUR}\n${cheap.slice(smallLine.length)}`,
      shifts,
    )
    const found = documentOf([free!, priced!], ['throughput', 'cost-per-1000'])
    expect(Object.keys(found.differences.priced!)).toContain('throughput')
    expect(Object.keys(found.differences.priced!).filter((name) => /cost/.test(name))).toEqual([])
    expect(found.differences.priced!.throughput!.family).toBe(1)
    expect(found.variants.priced!.measures).toHaveProperty('cost-per-1000')
    expect(found.variants.priced!.worth).toBeNull()
    // nor where the base has it and the design has not
    const turned = documentOf(
      [
        { ...priced!, name: 'base' },
        { ...free!, name: 'free' },
      ],
      ['cost-per-1000', 'throughput'],
    )
    expect(Object.keys(turned.differences.free!).filter((name) => /cost/.test(name))).toEqual([])
    // the report leaves its place empty
    const table = compareReport(found).tables.find(({ title }) => title === 'Against the base')!
    expect(saidRows(table)[0]![2]).toBe('–')
  })

  it('a measure without an interval of its difference is not compared', () => {
    const quantile = comparedMeasure({ name: 'output-p10', label: '', unit: 'cases' })
    expect(quantile.of(base)).toBeNull()
    expect(differenceAt(quantile, base, variants[0]!, 0.95)).toBeNull()
    expect(judgeTogether([base, variants[0]!], againstFirst(2), [quantile], 0.95)).toEqual([])
  })
})

describe('identical designs', () => {
  it('differ by exactly nothing', () => {
    const { same } = ofSmall.differences
    for (const [name, figure] of Object.entries(same!)) {
      expect([name, figure.mean]).toEqual([name, 0])
      if (figure.unit !== 'share' || figure.family === null)
        expect([name, figure.low, figure.high, figure.sd]).toEqual([name, 0, 0, 0])
      expect(figure.p).toBe(1)
      expect(figure.isShown).not.toBe(true)
    }
    // what they are by themselves is the same too
    const { note: _, set: __, ...rest } = ofSmall.variants.same!
    const { note: ___, set: ____, ...mine } = ofSmall.variants.base!
    expect(rest).toEqual(mine)
  })

  it('are called the same', () => {
    const { tables, headline } = compareReport(ofSmall)
    const table = tables.find(({ title }) => title === 'Against the base')!
    const same = saidRows(table).find(([name]) => name === 'same')!
    const at = (label: RegExp) => same[titles(table).findIndex((words) => label.test(words))]
    expect(at(/Throughput/)).toBe('the same')
    expect(at(/Time in the line/)).toBe('the same')
    expect(headline.find((text) => text.startsWith('same'))).toMatch(
      /^same: no difference shown from the base\./,
    )
  })
})
