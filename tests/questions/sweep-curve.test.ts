/** Response curves by hand: steps, change of slope, crossings of a level, and from where nothing more is shown. */
import { describe, expect, it } from 'vitest'
import { crossings, curveComparisons, enoughOf, kneeOf } from '../../src/questions/sweep/curve.js'
import type { SampledDesign, SweepMeasure } from '../../src/questions/sweep/document.js'
import { curveOf } from '../../src/questions/sweep/kinds.js'
import type { Sample } from '../../src/questions/sweep/sample.js'

const sample = (values: number[], kind: Sample['kind'] = 'mean'): Sample => ({ kind, values, overs: null })

describe('comparisons along a curve', () => {
  // shifts of three designs at 1, 3 and 4: slopes by hand (4 - 2) / 2 and (5 - 4) / 1, and so on
  const x = [1, 3, 4]
  const samples = [sample([2, 3, 4]), sample([4, 7, 6]), sample([5, 7, 9])]
  const all = curveComparisons(x, samples)

  it('are the steps, the way to the last, and the changes of slope', () => {
    expect(all.map(({ what, place }) => [what, place])).toEqual([
      ['step', 0],
      ['step', 1],
      ['onward', 0],
      ['change', 1],
    ])
  })

  it('are means shift by shift', () => {
    const [first, second, onward, change] = all.map(({ at }) => at(0.95).mean)
    // steps 2, 4, 2 and 1, 0, 3
    expect(first).toBeCloseTo(8 / 3, 12)
    expect(second).toBeCloseTo(4 / 3, 12)
    expect(onward).toBeCloseTo(4, 12)
    // slopes before 1, 2, 1 and after 1, 0, 3: changes 0, -2, 2
    expect(change).toBeCloseTo(0, 12)
  })

  it('have the interval of Student: t 0.975 of 2 degrees of freedom is 4.303 (any table of the t distribution)', () => {
    // changes 0, -2, 2 have the deviation 2, their mean 2 / sqrt(3)
    const { high } = all[3]!.at(0.95)
    expect(high).toBeCloseTo((4.302653 * 2) / Math.sqrt(3), 4)
  })

  it('of ratios are differences of totals over totals', () => {
    const ratio = (values: number[], overs: number[]): Sample => ({ kind: 'ratio', values, overs })
    const [step] = curveComparisons(
      [0, 1, 2],
      [ratio([10, 30], [10, 10]), ratio([30, 30], [10, 30]), ratio([1, 1], [1, 1])],
    )
    // 60 / 40 less 40 / 20
    expect(step!.at(0.95).mean).toBeCloseTo(-0.5, 12)
  })
})

describe('the knee', () => {
  it('is the largest change that is shown, whatever its sign', () => {
    const change = (place: number, mean: number, isShown: boolean) => ({ place, mean, isShown })
    expect(kneeOf([change(1, -1, true), change(2, 5, false), change(3, -2, true)])).toBe(3)
    expect(kneeOf([change(1, 9, false)])).toBeNull()
    expect(kneeOf([])).toBeNull()
  })

  it('is found on a curve that rises by 1 a step up to 3 and is level from there', () => {
    const noise = [0.1, -0.2, 0.05, 0.15, -0.1, 0.02, -0.03, 0.04]
    const turn = (place: number) => noise.map((_, shift) => noise[(shift * 3 + place) % noise.length]! / 10)
    const measure: SweepMeasure = { name: 'throughput', label: 'Throughput of good cases', unit: 'cases/s' }
    const designs = [0, 1, 2, 3, 3, 3].map(
      (height, place): SampledDesign => ({
        set: {},
        at: [place],
        samples: { throughput: sample(turn(place).map((each) => height + each)) },
      }),
    )
    const { measures, cost } = curveOf({
      designs,
      base: designs[0]!,
      measures: [measure],
      target: 1.5,
      confidence: 0.95,
      factorUnit: 'm',
    })
    const of = measures.throughput!
    expect(of.knee).toBe(3)
    expect(of.enough).toBe(3)
    expect(of.steps.map(({ difference }) => difference.isShown)).toEqual([true, true, true, false, false])
    // 5 steps, 4 ways to the last, 4 changes
    expect(of.steps[0]!.difference.family).toBe(13)
    expect(of.changes[2]).toMatchObject({ place: 3, unit: 'cases/s per m', isShown: true })
    expect(of.crossings).toHaveLength(1)
    expect(of.crossings[0]!.at).toBeCloseTo(1.5, 1)
    expect(cost).toBeNull()
  })
})

describe('enough', () => {
  const step = (place: number, isShown: boolean) => ({ what: 'step' as const, place, isShown })
  const onward = (place: number, isShown: boolean) => ({ what: 'onward' as const, place, isShown })

  it('is the first point from which neither a step nor the way to the last is shown', () => {
    const steps = [step(0, true), step(1, false), step(2, false), step(3, false)]
    expect(enoughOf(5, [...steps, onward(0, true), onward(1, false), onward(2, false)])).toBe(1)
    // small steps that are not shown one by one may be together
    expect(enoughOf(5, [...steps, onward(0, true), onward(1, true), onward(2, false)])).toBe(2)
  })

  it('is nowhere where the last step is shown, and everywhere where nothing is', () => {
    expect(enoughOf(3, [step(0, false), step(1, true), onward(0, true)])).toBeNull()
    expect(enoughOf(3, [step(0, false), step(1, false), onward(0, false)])).toBe(0)
    expect(enoughOf(3, [{ what: 'change', place: 1, isShown: true }, step(0, false), step(1, false)])).toBe(0)
  })
})

describe('crossings', () => {
  it('are interpolated between the two values tried', () => {
    // from (4, 0.85) to (6, 0.97): 0.95 lies 10 / 12 of the way
    expect(crossings([2, 4, 6], [0.5, 0.85, 0.97], 0.95)).toEqual([
      { level: 0.95, at: expect.closeTo(4 + 2 * (10 / 12), 12), from: 1, rises: true },
    ])
  })

  it('are all told, up and down, and one at a point only once', () => {
    const met = crossings([0, 1, 2, 3, 4], [0, 2, 1, 2, 0], 1)
    expect(met.map(({ at, rises }) => [at, rises])).toEqual([
      [0.5, true],
      [3.5, false],
    ])
    expect(crossings([0, 1, 2], [0, 1, 2], 1).map(({ at }) => at)).toEqual([1])
    expect(crossings([0, 1, 2], [2, 1, 0], 1).map(({ at }) => at)).toEqual([1])
  })

  it('are none beside a point that is not known', () => {
    expect(crossings([0, 1, 2], [0, Number.NaN, 2], 1)).toEqual([])
  })
})

describe('the cost of a curve', () => {
  const measure: SweepMeasure = { name: 'cost-per-1000', label: 'Cost', unit: 'EUR per 1000 cases' }
  const costing = (place: number, costs: number[]): SampledDesign => ({
    set: {},
    at: [place],
    samples: {
      'cost-per-1000': { kind: 'ratio', values: costs.map((cost) => cost * 4), overs: costs.map(() => 4) },
    },
  })
  const jitter = [0.3, -0.2, 0.1, -0.4, 0.2, 0, -0.1, 0.1]
  const mirrored = [...jitter].reverse()

  it('has its least point, those not shown to cost more, and where it breaks even with the scenario', () => {
    const designs = [
      costing(
        1,
        jitter.map((each) => 20 + each),
      ),
      costing(
        2,
        jitter.map((each) => 10 + each),
      ),
      costing(
        3,
        mirrored.map((each) => 10.01 + each),
      ),
      costing(
        4,
        jitter.map((each) => 14 + each),
      ),
    ]
    const base = costing(
      0,
      jitter.map((each) => 12 + each),
    )
    const { cost } = curveOf({
      ...{ designs, base, measures: [measure], target: null, confidence: 0.95, factorUnit: 'm' },
    })
    expect(cost).toMatchObject({ least: 1, notDearer: [1, 2] })
    expect(cost!.base).toBeCloseTo(12, 12)
    // from 20 at 1 to 10 at 2: 12 at 1.8; from 10.01 at 3 to 14 at 4: 12 at 3 + 1.99 / 3.99
    expect(cost!.breakEven.map(({ at, rises }) => [Number(at.toFixed(6)), rises])).toEqual([
      [1.8, false],
      [Number((3 + 1.99 / 3.99).toFixed(6)), true],
    ])
    expect(cost!.differences.map(({ mean, isShown }) => [Math.round(mean!), isShown])).toEqual([
      [8, true],
      [-2, true],
      [-2, true],
      [2, true],
    ])
  })
})
