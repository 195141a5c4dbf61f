/**
 * Families of comparisons against a base: how often their intervals cover all together, and differences are shown that
 * are none.
 */
import { describe, expect, it } from 'vitest'
import { Stream } from '../../src/engine/stream.js'
import { family } from '../../src/statistics/family.js'
import { pairedDifference, pairedShareDifference } from '../../src/statistics/paired.js'
import { standardNormal } from '../../src/statistics/quantile.js'
import { confidence, seedOf } from './studies.js'

const shifts = 20

/** Of so many a share of 95 % has a standard error of 0.22 %, so that 94 % lies four of them below. */
const families = 10_000

/** Normal figures of a shift: what all designs share, and what each has alone; the first is the base. */
class Designs {
  private readonly stream: Stream

  constructor(
    /** True differences from the base. */
    readonly differences: readonly number[],
    /** Share of the variance that is common luck. */
    readonly common: number,
    purpose: string,
  ) {
    this.stream = new Stream('designs', purpose)
  }

  /** A column of figures for each design, the base first. */
  simulate(seed: string): number[][] {
    const columns = [0, ...this.differences].map((): number[] => [])
    for (let shift = 1; shift <= shifts; shift++) {
      this.stream.begin(seed, shift)
      const luck = this.draw() * Math.sqrt(this.common)
      for (const [design, column] of columns.entries())
        column.push((this.differences[design - 1] ?? 0) + luck + this.draw() * Math.sqrt(1 - this.common))
    }
    return columns
  }

  private draw(): number {
    return standardNormal(this.stream.next())
  }
}

describe('10 000 families of five comparisons of normal figures, 95 %', () => {
  it.each([
    { of: 'no difference at all', differences: [0, 0, 0, 0, 0], common: 0.5 },
    { of: 'two without, three with a difference', differences: [0, 0, 0.6, 1, -3], common: 0.5 },
    { of: 'two without, three far off, much common luck', differences: [0, 0, 3, 4, -5], common: 0.9 },
    {
      of: 'one without, four far off',
      differences: [0, 5, 5, -5, -5],
      common: 0.5,
    },
    { of: 'all differ a little', differences: [0.3, 0.5, 0.7, -0.5, -0.3], common: 0.8 },
  ])('$of', ({ of, differences, common }) => {
    const designs = new Designs(differences, common, of)
    let covered = 0
    let wrong = 0
    let shown = 0
    for (let study = 1; study <= families; study++) {
      const [base, ...others] = designs.simulate(seedOf(study)) as [number[], ...number[][]]
      const judged = family(
        others.map((other) => ({
          pValue: pairedDifference(base, other, confidence).pValue,
          at: (each: number) => pairedDifference(base, other, each),
        })),
        confidence,
      )
      if (
        judged.every(
          ({ estimate: { low, high } }, index) => low <= differences[index]! && differences[index]! <= high,
        )
      )
        covered++
      if (judged.some(({ isShown }, index) => isShown && differences[index] === 0)) wrong++
      shown += judged.filter(({ isShown }) => isShown).length
    }
    const told = `${of}: all covered in ${(100 * covered) / families} %, a wrong claim in ${(100 * wrong) / families} %; shown ${shown / families} a family`
    console.log(told)
    expect(covered / families, told).toBeGreaterThanOrEqual(0.94)
    expect(wrong / families, told).toBeLessThanOrEqual(0.06)
  })
})

describe('difference of two shares of the same 50 shifts, 95 %: chance to cover, summed over all that can happen', () => {
  it.each([
    // chance that a shift is reached by both, by the other alone, by the base alone
    { both: 0.9, other: 0.05, base: 0.02 },
    { both: 0.85, other: 0.1, base: 0.01 },
    { both: 0.5, other: 0.3, base: 0.1 },
    { both: 0.97, other: 0.01, base: 0.01 },
    { both: 0.6, other: 0.05, base: 0.05 },
    { both: 0.02, other: 0.06, base: 0.01 },
  ])('$both, $other, $base', (chances) => {
    const { coverage, total, falseAlarms } = coverageOfShares(50, chances)
    const told = `${JSON.stringify(chances)}: ${coverage.toFixed(4)}, p-value below 5 %: ${falseAlarms.toFixed(4)}`
    console.log(told)
    expect(total).toBeCloseTo(1, 9)
    expect(coverage, told).toBeGreaterThanOrEqual(0.93)
    // the exact test keeps its risk, where there is no difference, without a standard error
    if (chances.other === chances.base) expect(falseAlarms, told).toBeLessThanOrEqual(0.05)
  })
})

/** Exact chance that the interval covers, over the multinomial law of the counts. */
function coverageOfShares(n: number, chances: { both: number; other: number; base: number }) {
  const { both, other, base } = chances
  const logFactorials = [0]
  for (let k = 1; k <= n; k++) logFactorials.push(logFactorials[k - 1]! + Math.log(k))
  const logs = [both, other, base, 1 - both - other - base].map(Math.log)
  let coverage = 0
  let total = 0
  let falseAlarms = 0
  for (let a = 0; a <= n; a++)
    for (let b = 0; a + b <= n; b++)
      for (let c = 0; a + b + c <= n; c++) {
        const counts = [a, b, c, n - a - b - c]
        const log = counts.reduce(
          (sum, k, cell) => sum + k * logs[cell]! - logFactorials[k]!,
          logFactorials[n]!,
        )
        const chance = Math.exp(log)
        total += chance
        // what is left out has less weight in all than the last digit that is looked at
        if (chance < 1e-10) continue
        const column = (values: [number, number, number, number]) =>
          counts.flatMap((k, cell) => new Array<number>(k).fill(values[cell]!))
        const { low, high, pValue } = pairedShareDifference(column([1, 0, 1, 0]), column([1, 1, 0, 0]), 0.95)
        const truth = other - base
        if (low <= truth && truth <= high) coverage += chance
        if (pValue <= 0.05) falseAlarms += chance
      }
  return { coverage, total, falseAlarms }
}
