/** Sequential selection of the best, by hand. */
import { describe, expect, it } from 'vitest'
import { Selection } from '../../src/statistics/select.js'

/**
 * Two designs at 63/64, six shifts at first. Differences one above and one below their mean by turns vary with S^2 = 6/5, and h^2 of five
 * degrees is 15 (see evidence.test.ts): with an indifference amount of 1 a sum may lie 15 x 1.2 / 2 - 6 / 2 = 6 behind.
 */
const two = (isLargerBetter = true, isSeen?: (design: number) => boolean) =>
  new Selection(2, {
    confidence: 63 / 64,
    within: 1,
    isLargerBetter,
    firstStage: 6,
    ...(isSeen ? { isSeen } : {}),
  })

/** So many rows, these in turn. */
const turns = (count: number, ...rows: number[][]) =>
  Array.from({ length: count }, (_, index) => rows[index % rows.length]!)

function feed(selection: Selection, rows: readonly (readonly number[])[]): Selection {
  for (const row of rows) selection.add(row)
  return selection
}

describe('selections by hand', () => {
  it('differences 3 and 1: 12 behind is more than the 6 that are allowed after six shifts', () => {
    const selection = feed(two(), turns(5, [3, 0], [1, 0]))
    expect(selection).toMatchObject({ isDone: false, best: null, shifts: 5 })
    selection.add([1, 0])
    expect(selection).toMatchObject({ isDone: true, best: 0, survivors: [0], shifts: 6, used: [6, 6] })
    expect(selection.figure(0)).toBe(2)
  })

  it('the same figures, smaller is better: the other', () => {
    const selection = feed(two(false), turns(6, [3, 0], [1, 0]))
    expect(selection).toMatchObject({ best: 1, survivors: [1] })
    expect(selection.figure(0)).toBe(2)
  })

  it('hardly less behind than allowed is not dropped: differences 1.9 and -0.1, then one of 0.9', () => {
    const selection = feed(two(), turns(6, [1.9, 0], [-0.1, 0]))
    expect(selection).toMatchObject({ survivors: [0, 1], isDone: false })
    // variance 1, h^2 of six degrees 13.0: 3 allowed, 6.3 behind
    selection.add([0.9, 0])
    expect(selection).toMatchObject({ best: 0, shifts: 7 })
  })

  it('equal in all but luck it goes on, until the sum says which', () => {
    // after eleven nothing is allowed any more
    const selection = feed(two(), [...turns(10, [1, 0], [0, 1]), [0, 0]])
    expect(selection).toMatchObject({ isDone: false, survivors: [0, 1] })
    selection.add([0, 0.5])
    expect(selection.best).toBe(1)
  })

  it('three designs: the last is dropped early and its figures are not looked at any more', () => {
    // differences of the first two: 1 and -1 by turns; of either and the last 101 and 100, and nothing is allowed
    const selection = new Selection(3, {
      confidence: 31 / 32,
      within: 1,
      isLargerBetter: true,
      firstStage: 6,
    })
    feed(selection, turns(6, [101, 100, 0], [100, 101, 0]))
    expect(selection).toMatchObject({ survivors: [0, 1], isDone: false })
    feed(selection, turns(4, [9, 0, Number.NaN]).slice(0, 1))
    expect(selection.used).toEqual([7, 7, 6])
  })

  it('who is dropped still drops others in the same look, as the paper compares with all that were in before', () => {
    // 0 less 1, and 1 less 2: 2.1 and 0.1, 6.6 ahead where 6 are allowed. 0 less 2: 4.2 and 0.2, S^2 = 4.8, 13.2 ahead where
    // 15 x 4.8 / 2 - 3 = 33 are, so that 2 is dropped for 1 alone
    const selection = new Selection(3, {
      confidence: 31 / 32,
      within: 1,
      isLargerBetter: true,
      firstStage: 6,
    })
    feed(selection, turns(6, [4.2, 2.1, 0], [0.2, 0.1, 0]))
    expect(selection).toMatchObject({ best: 0, shifts: 6 })
  })

  it('one design is selected from the start', () => {
    expect(new Selection(1, { confidence: 0.95, within: 1, isLargerBetter: true }).best).toBe(0)
  })
})

describe('no pick from no evidence', () => {
  it('one and the same: it ends where even a whole shift of difference could not matter, without a pick', () => {
    // a figure of 5: a difference in one shift of five would matter, and 0.8^19 = 0.0144 is below 1/64 = 0.0156
    const selection = feed(two(), turns(18, [5, 5], [5, 5]))
    expect(selection.isDone).toBe(false)
    selection.add([5, 5])
    expect(selection).toMatchObject({ isDone: true, best: null, survivors: [0, 1] })
    expect(selection.alike(1)).toEqual({ from: 0, differing: 0 })
  })

  it('different in one shift: it goes on for longer, and tells the number', () => {
    // 0.8^n + 0.2 n 0.8^(n - 1): 0.0187 after 27, 0.0128 after 29, the next look
    const selection = feed(two(), [[6, 5], ...turns(26, [5, 5])])
    expect(selection).toMatchObject({ isDone: false, shifts: 27 })
    feed(selection, turns(2, [5, 5]))
    expect(selection).toMatchObject({ isDone: true, best: null, shifts: 29 })
    expect(selection.alike(0)).toEqual({ from: 1, differing: 1 })
  })

  it('different by much in four shifts of fifty: not told; in five it is', () => {
    const of = (different: number) =>
      feed(
        new Selection(2, { confidence: 0.95, within: 10, isLargerBetter: true }),
        Array.from({ length: 50 }, (_, shift) => (shift < different ? [100, 0] : [100, 100])),
      )
    expect(of(4)).toMatchObject({ isDone: false, survivors: [0, 1] })
    expect(of(4).alike(0)).toMatchObject({ differing: 4 })
    // variance 918, 6.2 of one size: 14.1 degrees, h^2 5.45; 500 ahead, and 5.45 x 918 / 20 - 250 = 0.2 are allowed
    expect(of(5).best).toBe(0)
  })

  it('different by the same amount in every shift is evidence', () => {
    expect(feed(two(), turns(6, [5, 4], [3, 2]))).toMatchObject({ best: 0, shifts: 6 })
  })

  it('nothing is told of a design before it has shown all that may happen in it', () => {
    let isSeen = false
    const selection = two(true, (design) => design === 0 || isSeen)
    feed(selection, turns(6, [3, 0], [1, 0]))
    expect(selection.isDone).toBe(false)
    isSeen = true
    selection.add([2, 0])
    expect(selection.best).toBe(0)
  })
})

it('a ratio is ranked by total over total: 1 / 1 and 30 / 10 by turns are 2.8, their mean is 2, and 5 / 2 lies between', () => {
  const selection = new Selection(2, { confidence: 0.95, within: 0.2, isLargerBetter: true })
  for (let shift = 0; !selection.isDone && shift < 2000; shift++)
    selection.add(shift % 2 === 0 ? [1, 5] : [30, 5], shift % 2 === 0 ? [1, 2] : [10, 2])
  expect(selection.best).toBe(0)
})

describe('what it does not take', () => {
  const usual = { confidence: 0.95, within: 1, isLargerBetter: true }
  it.each([
    ['no design', 0, {}],
    ['a confidence that guessing has', 2, { confidence: 0.5 }],
    ['certainty', 2, { confidence: 1 }],
    ['no indifference', 2, { within: 0 }],
    ['a first stage without spread', 2, { firstStage: 1 }],
  ])('%s', (_, designs, odd) => {
    expect(() => new Selection(designs, { ...usual, ...odd })).toThrow(RangeError)
  })

  it('a survivor without a figure, or a shift after the end', () => {
    const selection = two()
    expect(() => selection.add([1, Number.NaN])).toThrow('design 1 has no figure of shift 1')
    expect(() => selection.add([1])).toThrow(RangeError)
    expect(() => selection.add([1, 1], [1, Number.NaN])).toThrow(RangeError)
    expect(selection.shifts).toBe(0)
    feed(selection, turns(6, [3, 0], [1, 0]))
    expect(() => selection.add([1, 0])).toThrow('the selection is over')
  })
})
