/** What draws of the inputs add to differences: layouts worked by hand, and what is then called shown. */
import { describe, expect, it } from 'vitest'
import { sizeText } from '../../src/answers/difference.js'
import { judgedFigures } from '../../src/answers/difference-figure.js'
import { layoutOfDifference, layoutOfParts } from '../../src/answers/difference-with-inputs.js'
import type { Observations } from '../../src/statistics/estimate.js'
import { pairedDifference } from '../../src/statistics/paired.js'
import { studentT } from '../../src/statistics/quantile.js'

const means = (values: readonly number[]): Observations => ({ kind: 'mean', values, overs: null })
const draws = Array.from({ length: 10 }, (_, draw) => draw)
/** Variance of 0, 1, ..., 9: n (n + 1) / 12 of n = 10 numbers. */
const variance = (10 * 11) / 12

describe('the layout of a difference', () => {
  it('of two designs that each draw moves alike is nothing', () => {
    const both = draws.map((draw) => means([draw, draw + 1]))
    expect(layoutOfDifference(both, both)).toMatchObject({ inputs: 0, ofDraws: 0, ofRest: 0 })
  })

  it('of designs that draws move by 2 and by 1 has the variance of one draw', () => {
    // shift by shift the difference is the number of the draw, less 3 in the second one
    const layout = layoutOfDifference(
      draws.map((draw) => means([2 * draw, 2 * draw])),
      draws.map((draw) => means([draw, draw + 3])),
    )!
    expect(layout.means).toEqual(draws.map((draw) => draw - 1.5))
    expect(layout.inputs).toBeCloseTo(variance, 12)
    expect(layout.ofRest).toBeCloseTo(0, 12)
  })

  it('of ratios is that of their totals; of shares no logit is taken; of three designs a contrast', () => {
    const ratio = (over: number): Observations => ({ kind: 'ratio', values: [2, 4], overs: [over, over] })
    const ratios = layoutOfDifference(
      draws.map((draw) => ratio(draw + 1)),
      draws.map(() => ratio(1)),
    )!
    for (const draw of draws) expect(ratios.means[draw]).toBeCloseTo(3 / (draw + 1) - 3, 12)
    const share = (some: number): Observations => ({ kind: 'share', values: [some, 0], overs: null })
    const shares = layoutOfDifference(
      draws.map((draw) => share(draw % 2)),
      draws.map(() => share(0)),
    )!
    expect(shares.means).toEqual(draws.map((draw) => (draw % 2) / 2))
    const contrast = layoutOfParts(
      [1, -2, 1].map((times, place) => ({
        times,
        draws: draws.map((draw) => means([draw * place ** 2, draw * place ** 2])),
      })),
    )!
    // 0, 1 and 4 times the draw: the slope changes by 2 of it
    expect(contrast.means).toEqual(draws.map((draw) => 2 * draw))
  })

  it('leaves out draws of which either says nothing, and is none of fewer than ten', () => {
    const all = draws.map((draw) => means([draw, draw]))
    const one = [...all, null].reverse()
    expect(layoutOfDifference([...all, null], [...all, means([5, 5])])!.means).toHaveLength(10)
    expect(layoutOfDifference(one.slice(0, 10), all)).toBeNull()
    expect(layoutOfDifference([], [])).toBeNull()
  })
})

describe('a difference that is judged', () => {
  const base = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12]
  // it is 3 in half of the shifts and 5 in the others
  const other = base.map((value, shift) => value + (shift % 2 === 0 ? 3 : 5))
  const at = (confidence: number) => pairedDifference(base, other, confidence)
  const measure = { unit: 'cases', label: 'Cases' }
  const layoutOf = (spread: number) =>
    layoutOfDifference(
      draws.map((draw) => means([spread * draw, spread * draw])),
      draws.map(() => means([0, 0])),
    )

  it('holds both kinds: root of the sum of both variances, and luck stays beside it', () => {
    const [luck] = judgedFigures([{ measure, at }], 0.95)
    const [figure] = judgedFigures([{ measure, at, layout: layoutOf(0.1) }], 0.95)
    const { inputs, alone, isShown, ...rest } = figure!
    const { alone: aloneOfLuck, isShown: _, ...restOfLuck } = luck!
    expect(rest).toEqual(restOfLuck)
    expect(isShown).toBe(true)
    expect(alone).toEqual({ ...aloneOfLuck, inputs })
    const ofInputs = 0.01 * variance
    const ofLuck = ((figure!.high! - figure!.mean!) / studentT(0.975, 11)) ** 2
    // Satterthwaite: 9 degrees of freedom of the draws, 11 of the shifts
    const freedom = (ofInputs + ofLuck) ** 2 / (ofInputs ** 2 / 9 + ofLuck ** 2 / 11)
    const half = studentT(0.975, freedom) * Math.sqrt(ofInputs + ofLuck)
    expect(inputs!.high).toBeCloseTo(4 + half, 9)
    expect(inputs!.low).toBeCloseTo(4 - half, 9)
    expect(inputs!.share).toBeCloseTo(ofInputs / (ofInputs + ofLuck), 9)
  })

  it('is not shown where other inputs may turn it round, and is printed with both kinds', () => {
    const [figure] = judgedFigures([{ measure, at, layout: layoutOf(1) }], 0.95)
    expect(figure!.low!).toBeGreaterThan(0)
    expect(figure!.inputs!.low!).toBeLessThan(0)
    expect(figure!.isShown).toBe(false)
    const half = figure!.inputs!.high! - figure!.mean!
    expect(sizeText(figure!, 'metric')).toBe(`4 ± ${half.toFixed(0)} cases`)
    // without its sign it is as wide
    const less = { ...figure!, mean: -4, low: -figure!.high!, high: -figure!.low! }
    const turned = { ...figure!.inputs!, low: -figure!.inputs!.high!, high: -figure!.inputs!.low! }
    expect(sizeText({ ...less, inputs: turned }, 'metric')).toBe(`4 ± ${half.toFixed(0)} cases`)
  })

  it('without draws is as it was', () => {
    const [figure] = judgedFigures([{ measure, at, layout: null }], 0.95)
    expect(figure).toEqual(judgedFigures([{ measure, at }], 0.95)[0])
    expect(figure).not.toHaveProperty('inputs')
  })
})
