/** In what share of the draws each design is the best: worked by hand, with figures that are known. */
import { describe, expect, it } from 'vitest'
import { meanCondition } from '../../src/answers/condition.js'
import type { StudyMeasure } from '../../src/answers/figures.js'
import type { Draws } from '../../src/answers/with-inputs.js'
import { behindBest, bestAcross } from '../../src/questions/compare/across-draws.js'
import type { Best } from '../../src/questions/compare/best.js'
import { loadScenario } from '../../src/scenario/load.js'
import { smallLine } from '../cli/in-process.js'

const { scenario } = loadScenario(smallLine)
const measure: StudyMeasure = {
  path: ['measures', 'throughput'],
  label: 'Figure',
  unit: 'cases',
  index: 0,
  kind: 'mean',
}
const none = new Float64Array()

/** Draws of one design, each of two shifts that come to a figure. */
const drawn = (figures: readonly number[]): Draws => ({
  draws: figures.length,
  shifts: 2,
  of: figures.map((figure) => ({
    ...{ inputs: [], scenario },
    shifts: [figure - 1, figure + 1].map((value) => ({
      ...{ values: Float64Array.of(value), controls: none, outputs: none, held: none },
    })),
  })),
})

const best = (pick: number | null, ...verdicts: Best['designs'][number]['verdict'][]): Best => ({
  pick,
  designs: verdicts.map((verdict) => ({ verdict, shifts: 10 })),
})
const sought = (isLargerBetter: boolean, within: number, designs: number) => ({
  ...{ isLargerBetter, within, measures: Array.from({ length: designs }, () => measure) },
  conditions: Array.from({ length: designs }, () => []),
})
const names = ['a', 'b', 'c']

describe('how far designs lie behind the best of a draw', () => {
  it('goes by what is better, and is not known of one that says nothing', () => {
    expect(behindBest([3, 5, 4], true)).toEqual([2, 0, 1])
    expect(behindBest([3, 5, 4], false)).toEqual([0, 2, 1])
    expect(behindBest([3, Number.NaN, 4], true)).toEqual([1, Number.NaN, 0])
  })
})

describe('the best over draws', () => {
  const draws = [drawn([10, 10, 10, 10]), drawn([9, 12, 9.5, 10]), drawn([20, 20, 20, 20])]

  it('counts draws in which a design is the best or near enough, and how far the pick lies behind', () => {
    // c does not meet the conditions: of the others a is best in three draws, near in none of the second
    const found = bestAcross(sought(true, 0.5, 3), best(0, 'picked', 'dropped', 'refused'), names, draws)
    expect(found).toEqual({ draws: 4, best: { a: 3, b: 3 }, behind: 2, among: [] })
  })

  it('of what is better lower it is the other way round', () => {
    const found = bestAcross(sought(false, 0.5, 3), best(1, 'dropped', 'picked', 'dropped'), names, draws)
    expect(found).toEqual({ draws: 4, best: { a: 3, b: 3, c: 0 }, behind: 2, among: [] })
  })

  it('where nothing is chosen says it of those that are open, and names what they must keep', () => {
    const condition = meanCondition({ text: 'figure >= 1', measure, sign: '>=', value: 1 }, 0.5)
    const goal = { ...sought(true, 0, 3), conditions: [[condition], [condition], [condition]] }
    const found = bestAcross(goal, best(null, 'undecided', 'refused', 'undecided'), names, draws)
    expect(found).toEqual({
      ...{ draws: 4, best: { a: 0, c: 4 }, behind: null },
      among: [{ require: 'figure >= 1', measure: 'throughput' }],
    })
  })
})
