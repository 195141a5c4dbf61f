/** Finding the best design with figures that are known: no simulation. */

import { describe, expect, it } from 'vitest'
import { type Condition, meanCondition } from '../../src/answers/condition.js'
import { estimate, type StudyMeasure } from '../../src/answers/figures.js'
import type { Requirement } from '../../src/answers/requirement.js'
import type { ShiftResult } from '../../src/line/line.js'
import { findBest, type Goal, type More } from '../../src/questions/compare/best.js'
import { Fault } from '../../src/scenario/fault.js'
import { firstStage } from '../../src/statistics/evidence.js'

/** Shifts come in blocks of so many. */
const block = 20

const measure = (kind: StudyMeasure['kind'], index = 0): StudyMeasure => ({
  path: ['measures', 'figure'],
  label: 'Figure',
  unit: 'cases',
  index,
  kind,
})

const condition = (of: StudyMeasure, sign: Requirement['sign'], value: number, near: number): Condition =>
  meanCondition({ text: `figure ${sign} ${value}`, measure: of, sign, value }, near)

/** A design is the columns of each of its shifts, counted from 0. */
type Figures = (shift: number) => number[]

/** Brings the figures; `asked` is how many shifts of each design were asked for at most. */
function bringing(designs: readonly Figures[], cancelAfter = Infinity) {
  const asked = designs.map(() => 0)
  let calls = 0
  const more: More = async (design, count) => {
    if (++calls > cancelAfter) throw new Fault('interrupted', 'enough')
    asked[design] = Math.max(asked[design]!, count)
    return Array.from({ length: count }, (_, shift): ShiftResult => {
      const none = new Float64Array()
      return { values: Float64Array.from(designs[design]!(shift)), controls: none, outputs: none, held: none }
    })
  }
  return { asked, more }
}

const goal = (designs: number, changes: Partial<Goal> = {}): Goal => ({
  names: ['first', 'second', 'third', 'fourth', 'fifth'],
  measures: new Array<StudyMeasure>(designs).fill(measure('mean')),
  stops: Array.from({ length: designs }, () => []),
  isLargerBetter: true,
  within: 1,
  conditions: Array.from({ length: designs }, () => []),
  confidence: 0.95,
  most: 200,
  ...changes,
})

/** A mean with luck that changes its sign from shift to shift. */
const about =
  (mean: number, luck = 0.5): Figures =>
  (shift) => [mean + (shift % 2 === 0 ? luck : -luck)]

/** The same with luck the other way round. */
const against = (mean: number, luck: number): Figures => about(mean, -luck)

const seen = (verdict: string, shifts: number) => ({ verdict, shifts })

/** Undecided after so many. */
const open = (shifts: number, why: object = { reason: 'spread' }) => ({ verdict: 'undecided', shifts, why })

/** What was asked for where the rule looked at so many shifts. */
const blocks = (shifts: number) => Math.ceil(shifts / block) * block

describe('without conditions', () => {
  it('picks the highest, or the lowest, after the first stage where that is plain', async () => {
    const designs = [about(10), about(30), about(20)]
    const high = bringing(designs)
    expect(await findBest(goal(3), high.more)).toEqual({
      pick: 1,
      designs: [seen('dropped', 50), seen('picked', 50), seen('dropped', 50)],
    })
    expect(high.asked).toEqual([60, 60, 60])
    const low = await findBest(goal(3, { isLargerBetter: false }), bringing(designs).more)
    expect(low?.pick).toBe(0)
  })

  it('asks for no more of a dropped design than the block in which it was dropped', async () => {
    // the last is far behind. The others differ by 6, -4, 6 ...: deviations of 5, S^2 = 25 n / (n - 1); h^2 of two rivals and n - 1
    // degrees of freedom is (n - 1) (20^(2 / (n - 1)) - 1): 25 n (20^(2 / (n - 1)) - 1) / 2 - n / 2 is allowed after n. 59 and
    // 55 after 50 and 53; then n or n + 5 ahead: 54.5 of 56, 51.6 of 59 (64 ahead)
    const { asked, more } = bringing([about(11, 2.5), against(10, 2.5), about(0, 0)])
    const best = (await findBest(goal(3), more))!
    expect(best.pick).toBe(0)
    const [first, second, third] = best.designs
    expect(third).toEqual(seen('dropped', firstStage))
    expect(second!.shifts).toBe(first!.shifts)
    const allowed = (n: number) => (25 * n * (20 ** (2 / (n - 1)) - 1)) / 2 - n / 2
    const ahead = (n: number) => n + (n % 2 === 0 ? 0 : 5)
    const told = [50, 53, 56, 59, 62, 66].find((n) => ahead(n) > allowed(n))
    expect(first!.shifts).toBe(told)
    for (const [design, { shifts }] of best.designs.entries()) expect(asked[design]).toBe(blocks(shifts))
  })

  it('a ratio is ranked by total over total, as the table shows it, not by the mean of the ratios of the shifts', async () => {
    // 1 / 1 and 30 / 10: mean 2, total 31 / 11 = 2.8; always 5 / 2 = 2.5
    const designs: Figures[] = [(shift) => (shift % 2 === 0 ? [9, 1, 1] : [9, 30, 10]), () => [9, 5, 2]]
    const best = await findBest(
      goal(2, { measures: [measure('ratio', 1), measure('ratio', 1)], within: 0.2, most: 2000 }),
      bringing(designs).more,
    )
    expect(best?.pick).toBe(0)
  })

  it('the winner of a ratio is that of the table, where one shift in five puts out little', async () => {
    // cost of a shift over its output, such as 630 of 3.8 thousand: 166, or 630 of 1 in a bad one
    const designs: Figures[] = [(shift) => [630, shift % 5 === 0 ? 1 : 3.8], () => [630, 3.1]]
    const ratio = measure('ratio')
    const { more } = bringing(designs)
    const best = await findBest(
      goal(2, { measures: [ratio, ratio], isLargerBetter: false, within: 2, most: 5000 }),
      more,
    )
    const shown = await Promise.all(
      designs.map(
        async (_, design) =>
          estimate(ratio, (await more(design, 500))!, { confidence: 0.95, exposure: 1 }, null).mean,
      ),
    )
    // 630 / 3.24 = 194 and 630 / 3.1 = 203; the mean of the ratios of the first is 259
    expect(shown[0]).toBeCloseTo(194.44, 2)
    expect(best?.pick).toBe(shown.indexOf(Math.min(...shown)))
  })

  it('measures may stand in another column of each design', async () => {
    const best = await findBest(
      goal(2, { measures: [measure('mean', 0), measure('mean', 1)] }),
      bringing([() => [5, 100], () => [0, 9]]).more,
    )
    expect(best?.pick).toBe(1)
  })

  it('at the most shifts allowed it is undecided, and a dropped one stays dropped', async () => {
    const { asked, more } = bringing([about(10, 8), against(10, 8), about(-90, 0)])
    expect(await findBest(goal(3, { most: 55 }), more)).toEqual({
      pick: null,
      designs: [open(55), open(55), seen('dropped', 50)],
    })
    expect(asked).toEqual([55, 55, 55])
  })

  it('fewer shifts allowed than the first stage has: undecided', async () => {
    const { asked, more } = bringing([about(10), about(90)])
    expect(await findBest(goal(2, { most: 7 }), more)).toEqual({
      pick: null,
      designs: [open(7), open(7)],
    })
    expect(asked).toEqual([7, 7])
  })

  it('one alone is the best', async () => {
    const { asked, more } = bringing([about(10)])
    expect(await findBest(goal(1), more)).toEqual({ pick: 0, designs: [seen('picked', 0)] })
    expect(asked).toEqual([0])
  })

  it('ends when it is interrupted, at once or on the way', async () => {
    const designs = [about(10, 8), against(10, 8)]
    for (const calls of [0, 101])
      await expect(findBest(goal(2), bringing(designs, calls).more)).rejects.toMatchObject({
        code: 'interrupted',
      })
  })
})

describe('with conditions', () => {
  const all = (each: Condition, designs: number) => Array.from({ length: designs }, () => [each])

  it('the best of those that keep them: the highest is refused', async () => {
    // second column: 4, 9 and 9, and at least 7 is asked
    const designs: Figures[] = [() => [30, 4], (shift) => [20 + (shift % 2), 9], () => [10, 9]]
    const { asked, more } = bringing(designs)
    const conditions = all(condition(measure('mean', 1), '>=', 7, 0.5), 3)
    expect(await findBest(goal(3, { conditions }), more)).toEqual({
      pick: 1,
      designs: [seen('refused', 50), seen('picked', 50), seen('dropped', 50)],
    })
    expect(asked).toEqual([60, 60, 60])
  })

  it('<= of a mean and of a share', async () => {
    const designs: Figures[] = [() => [30, 8, 1], () => [20, 5, 0], () => [10, 5, 0]]
    for (const [index, value, near] of [
      [1, 6, 0.5],
      [2, 0.5, 0.2],
    ] as const) {
      const conditions = all(condition(measure(index === 1 ? 'mean' : 'share', index), '<=', value, near), 3)
      const best = await findBest(goal(3, { conditions }), bringing(designs).more)
      expect(best?.pick).toBe(1)
      expect(best?.designs[0]?.verdict).toBe('refused')
    }
  })

  it('< and > are as <= and >=', async () => {
    const designs: Figures[] = [() => [30, 8], () => [20, 5]]
    const pick = async (sign: Requirement['sign']) => {
      const conditions = all(condition(measure('mean', 1), sign, 6, 0.5), 2)
      return (await findBest(goal(2, { conditions }), bringing(designs).more))?.pick
    }
    expect([await pick('<'), await pick('<='), await pick('>'), await pick('>=')]).toEqual([1, 1, 0, 0])
  })

  it('a share by hand: 50 % give or take 20 %, a risk of 2.5 % for the one test of each of two designs', async () => {
    // confidence 0.9: 0.1 / 2 / 2 = 0.025, ln 39 = 3.66; each shift tells ln(0.7 / 0.3) = 0.847: five ahead (4.3)
    const conditions = all(condition(measure('share', 1), '>=', 0.5, 0.2), 2)
    const designs: Figures[] = [() => [30, 0], () => [20, 1]]
    const { asked, more } = bringing(designs)
    expect(await findBest(goal(2, { conditions, confidence: 0.9 }), more)).toEqual({
      pick: 1,
      designs: [seen('refused', 5), seen('picked', 5)],
    })
    // a block each is there, and one that is left alone needs no selection
    expect(asked).toEqual([block, block])
  })

  it('several of one design must all hold; one that is told before is not asked again', async () => {
    const least = condition(measure('share', 1), '>=', 0.5, 0.2)
    const most = condition(measure('mean', 2), '<=', 6, 0.5)
    const designs: Figures[] = [
      () => [30, 1, 8],
      // holds in the first nine, in none after: told by then
      (shift) => [20, shift < 9 ? 1 : 0, 5],
      () => [10, 0, 5],
    ]
    const best = await findBest(
      goal(3, {
        conditions: [
          [least, most],
          [least, most],
          [least, most],
        ],
      }),
      bringing(designs).more,
    )
    expect(best?.pick).toBe(1)
    expect(best?.designs.map(({ verdict }) => verdict)).toEqual(['refused', 'picked', 'refused'])
    // the share is told after a few shifts, the mean with the first stage
    expect(best?.designs[2]?.shifts).toBeLessThan(firstStage)
    expect(best?.designs[0]?.shifts).toBe(firstStage)
  })

  it('none keeps them: no pick', async () => {
    const conditions = all(condition(measure('mean'), '>=', 90, 0.5), 2)
    expect(await findBest(goal(2, { conditions }), bringing([about(1), about(2)]).more)).toEqual({
      pick: null,
      designs: [seen('refused', 50), seen('refused', 50)],
    })
  })

  it('not told within the most shifts allowed: undecided, and not among those that are chosen from', async () => {
    // luck of 9 about the very value that is asked for
    const conditions = all(condition(measure('mean'), '>=', 10, 0.5), 2)
    const { asked, more } = bringing([about(10, 9), about(90)])
    expect(await findBest(goal(2, { conditions, most: 60 }), more)).toEqual({
      pick: 1,
      designs: [open(60), seen('picked', 50)],
    })
    expect(asked).toEqual([60, 60])
  })

  it('ends when it is interrupted while they are told', async () => {
    const conditions = all(condition(measure('mean'), '>=', 10, 0.5), 2)
    const cut = bringing([about(10), about(90)], 5).more
    await expect(findBest(goal(2, { conditions }), cut)).rejects.toMatchObject({ code: 'interrupted' })
  })

  it('shifts that the conditions took beyond those of the selection are told', async () => {
    // the condition on the first takes long, the selection is plain after the first stage
    const near = condition(measure('mean', 1), '>=', 10, 0.5)
    const designs: Figures[] = [(shift) => [30, 10.6 + (shift % 2 === 0 ? 3 : -3)], () => [20, 50]]
    const best = await findBest(goal(2, { conditions: all(near, 2) }), bringing(designs).more)
    expect(best?.pick).toBe(0)
    expect(best?.designs[0]?.shifts).toBeGreaterThan(firstStage)
    expect(best?.designs[1]).toEqual(seen('dropped', firstStage))
  })
})

describe('no pick from no evidence', () => {
  it('designs that are one and the same are told as alike, before the most shifts', async () => {
    // a figure of 10, and 1 matters: 0.9^29 is below 5 %, and the first look is at 50
    const alike = (other: number) => open(50, { reason: 'alike', other, shifts: 0 })
    expect(await findBest(goal(2), bringing([about(10), about(10)]).more)).toEqual({
      pick: null,
      designs: [alike(1), alike(0)],
    })
  })

  it('designs that differ by much, in three shifts of 200, are not told apart', async () => {
    const rare: Figures = (shift) => [shift % 60 === 7 && shift < 180 ? 0 : 100]
    const alike = (other: number) => open(200, { reason: 'alike', other, shifts: 3 })
    expect(await findBest(goal(2), bringing([rare, () => [100]]).more)).toEqual({
      pick: null,
      designs: [alike(1), alike(0)],
    })
  })

  const stop: StudyMeasure = {
    path: ['equipment', 'sealer', 'measures', 'tape-breaks'],
    label: 'Tape breaks a shift, sealer',
    unit: 'count',
    index: 1,
    kind: 'count',
  }

  it('a design that is better as long as its rare stop does not come is not picked before it has come five times', async () => {
    // every thirtieth shift, first the 20th, puts out nothing: a mean of 101.6 in truth, and 105 until then; the other one 103
    const [rare, steady]: Figures[] = [
      (shift) => (shift % 30 === 19 ? [0, 1] : [105 + (shift % 2), 0]),
      (shift) => [103 + (shift % 2), 0],
    ]
    const found = async (most: number) =>
      findBest(goal(2, { stops: [[stop], []], most, confidence: 0.95 }), bringing([rare!, steady!]).more)
    const unseen = { reason: 'unseen', stop: 'tape breaks of sealer', shifts: 4 }
    expect(await found(130)).toEqual({ pick: null, designs: [open(130, unseen), open(130)] })
    expect((await found(100_000))?.pick).toBe(1)
  })

  it('a condition waits for it too', async () => {
    const mean = measure('mean')
    const waiting: Condition = { ...condition(mean, '>=', 90, 1), stops: [stop] }
    const best = await findBest(
      goal(2, { conditions: [[waiting], [waiting]], most: 80 }),
      bringing([(shift) => [100, Number(shift % 40 === 0)], () => [95, 1]]).more,
    )
    const unseen = { reason: 'unseen', stop: 'tape breaks of sealer', shifts: 2 }
    expect(best).toEqual({ pick: 1, designs: [open(80, unseen), seen('picked', 50)] })
  })
})

describe('a shift without a figure', () => {
  it('of a mean is named: nothing can be ranked by it', async () => {
    const designs: Figures[] = [() => [10], (shift) => [shift === 6 ? Number.NaN : 10]]
    const named = { code: 'asked', message: expect.stringContaining('shift 7 of second says nothing') }
    await expect(findBest(goal(2), bringing(designs).more)).rejects.toMatchObject(named)
    const conditions = Array.from({ length: 2 }, () => [condition(measure('mean'), '<=', 50, 1)])
    await expect(findBest(goal(2, { conditions }), bringing(designs).more)).rejects.toMatchObject(named)
  })

  it('of a ratio counts in the totals: 10 and 2 but for every tenth shift, of 10 and 0, are 5.6 and not 5', async () => {
    const designs: Figures[] = [(shift) => [10, shift % 10 === 0 ? 0 : 2], () => [5.2, 1]]
    const ratios = { measures: [measure('ratio'), measure('ratio')], isLargerBetter: false, within: 0.1 }
    expect((await findBest(goal(2, { ...ratios, most: 5000 }), bringing(designs).more))?.pick).toBe(1)
    const conditions = Array.from({ length: 2 }, () => [condition(measure('ratio'), '<=', 5.4, 0.1)])
    const best = await findBest(goal(2, { ...ratios, conditions, most: 5000 }), bringing(designs).more)
    expect(best?.designs.map(({ verdict }) => verdict)).toEqual(['refused', 'picked'])
  })

  it('of a ratio in all of a first stage is an error', async () => {
    const designs: Figures[] = [() => [10, 2], () => [10, 0]]
    const ratios = { measures: [measure('ratio'), measure('ratio')] }
    await expect(findBest(goal(2, ratios), bringing(designs).more)).rejects.toMatchObject({
      code: 'asked',
      message: expect.stringContaining(`none of the first ${firstStage} shifts of second says anything`),
    })
  })
})
