/** Many independent studies of one line, and how often their intervals cover what is known to be true. */
import { expect } from 'vitest'
import {
  controlsOf,
  estimate,
  measureNamed,
  type StudyMeasure,
  studyMeasures,
} from '../../src/answers/figures.js'
import type { Line, ShiftResult } from '../../src/line/line.js'
import { loadScenario } from '../../src/scenario/load.js'
import type { Scenario } from '../../src/scenario/schema.js'
import type { Estimate } from '../../src/statistics/estimate.js'

/** One seed for every check in this folder: none was picked to make a check pass. */
const seed = 'coverage'

/** Of so many a share of 95 % has a standard error of 0.49 %. */
export const studies = 2000
export const confidence = 0.95

/**
 * Shifts of a study of fixed size: the fewest for which control variates are used, where an interval has it hardest.
 */
export const shiftsPerStudy = 100

/** The scenario of a line with one kind of case; `length` such as `400 s`, `shift` other keys of the shift. */
export function scenarioOf(arrivals: string, line: string, length: string, shift = ''): Scenario {
  const { scenario } = loadScenario(`title: a line with a known answer
cases: {box: {length: 400 mm, width: 300 mm, height: 300 mm}}
arrivals: ${arrivals}
line: ${line}
shift: {length: ${length}, ${shift}}
`)
  return scenario
}

/** The seed of one study: each has its own, and shifts numbered from 1. */
export const seedOf = (study: number): string => `${seed}-${study}`

/** The measure of a line by its name. */
export function measureOf(line: Line, name: string): StudyMeasure {
  const measure = measureNamed(studyMeasures(line.columns, 1), name)
  expect(measure, name).toBeDefined()
  return measure!
}

/** How the intervals of one figure did. */
export class Coverage {
  private count = 0
  private below = 0
  private above = 0
  private half = 0
  private sum = 0
  private shrinks = 0

  constructor(
    readonly name: string,
    private readonly truth: number,
  ) {}

  add({ mean, low, high, shrink }: Estimate): void {
    this.count++
    if (high < this.truth) this.below++
    if (low > this.truth) this.above++
    this.half += (high - low) / 2
    this.sum += mean
    this.shrinks += shrink ?? 1
  }

  get share(): number {
    return 1 - (this.below + this.above) / this.count
  }

  /** Mean half-width with control variates over that without; 1 where none were used. */
  get shrink(): number {
    return this.shrinks / this.count
  }

  /** All studies together say whether the estimate leans to a side: asserts that their mean lies as near as chance allows. */
  expectCentred(): void {
    // a half-width is some two standard errors of one study, so twice that over the root is four of all of them
    const allowed = (2 * this.half) / this.count / Math.sqrt(this.count)
    expect(Math.abs(this.sum / this.count - this.truth), this.toString()).toBeLessThanOrEqual(allowed)
  }

  toString(): string {
    const percent = (share: number) => `${(100 * share).toFixed(2)} %`
    return [
      `${this.name}: truth ${this.truth.toPrecision(7)}, covered ${percent(this.share)} of ${this.count}`,
      `too low ${percent(this.below / this.count)}, too high ${percent(this.above / this.count)}`,
      `half-width ${percent(this.half / this.count / this.truth)}, mean shrink ${this.shrink.toFixed(3)}`,
    ].join('; ')
  }
}

/** A figure of a line, whose true mean is known. */
export interface Known {
  name: string
  truth: number
}

/** Both ways of estimating a figure. */
export interface Pair {
  plain: Coverage
  controlled: Coverage
}

/** Simulates `most` studies and estimates the figures from each, with control variates and without. */
export function cover(
  line: Line,
  figures: readonly Known[],
  shifts = shiftsPerStudy,
  most = studies,
): Pair[] {
  const how = { confidence, exposure: 1 }
  const pairs = figures.map(({ name, truth }) => ({
    measure: measureOf(line, name),
    plain: new Coverage(`${name}, plain`, truth),
    controlled: new Coverage(`${name}, with control variates`, truth),
  }))
  for (let study = 1; study <= most; study++) {
    const results: ShiftResult[] = []
    for (let shift = 1; shift <= shifts; shift++) results.push(line.simulate(seedOf(study), shift))
    const controls = controlsOf(results, { isPlain: false })
    for (const { measure, plain, controlled } of pairs) {
      plain.add(estimate(measure, results, how, null))
      controlled.add(estimate(measure, results, how, controls))
    }
  }
  for (const { plain, controlled } of pairs) console.log(`${plain}\n${controlled}`)
  return pairs
}

/** Four standard errors of a share of 95 % in 2 000 studies, rounded: 93 to 97 %. */
export function expectCovers(coverage: Coverage): void {
  expect(coverage.share, coverage.toString()).toBeGreaterThanOrEqual(0.93)
  expect(coverage.share, coverage.toString()).toBeLessThanOrEqual(0.97)
}
