/** Sequential selection of the best: constants, and selections worked by hand. */
import { describe, expect, it } from 'vitest'
import { Selection, selectionConstants } from '../../src/study/select.js'

describe('constants', () => {
  // Kim & Nelson, ACM TOMACS 11 (2001) 251-273, for c = 1; values computed apart from this project by the formula
  it.each([
    { confidence: 0.95, designs: 2, n: 10, eta: 0.3340503, hSquared: 6.012905 },
    { confidence: 0.95, designs: 5, n: 10, eta: 0.6349673, hSquared: 11.42941 },
    { confidence: 0.95, designs: 20, n: 10, eta: 1.104574, hSquared: 19.88233 },
    { confidence: 0.95, designs: 3, n: 20, eta: 0.1853628, hSquared: 7.043787 },
    { confidence: 0.95, designs: 10, n: 24, eta: 0.239442, hSquared: 11.01433 },
    { confidence: 0.9, designs: 5, n: 24, eta: 0.1487884, hSquared: 6.844264 },
  ])('$designs designs, $n shifts, $confidence', ({ confidence, designs, n, eta, hSquared }) => {
    const constants = selectionConstants(designs, confidence, n)
    expect(constants.eta).toBeCloseTo(eta, 6)
    expect(constants.hSquared / hSquared).toBeCloseTo(1, 6)
  })

  it('solve the equation that the paper sets for c = 1: (1 + 2 eta)^(-(n0 - 1) / 2) / 2 = alpha / (k - 1)', () => {
    for (const designs of [2, 7, 40])
      for (const n of [2, 10, 24]) {
        const { eta } = selectionConstants(designs, 0.95, n)
        expect((1 + 2 * eta) ** (-(n - 1) / 2) / 2).toBeCloseTo(0.05 / (designs - 1), 12)
      }
  })
})

/**
 * Two designs at 75 %, two shifts at first: eta = (0.5^-2 - 1) / 2 = 1.5, h^2 = 3. A difference that varies with S^2 =
 * 2 has, with an indifference amount of 1, the reach 6: after r shifts a total may lie (6 - r) / 2 behind, and at most
 * 7 shifts are needed.
 */
const two = (isLargerBetter = true) =>
  new Selection(2, { confidence: 0.75, within: 1, isLargerBetter, firstStage: 2 })

function feed(selection: Selection, rows: readonly (readonly number[])[]): Selection {
  for (const row of rows) selection.add(row)
  return selection
}

describe('selections by hand', () => {
  it('differences 1, 3: 4 behind is more than the 2 that are allowed after two shifts', () => {
    const selection = two()
    selection.add([1, 0])
    expect(selection).toMatchObject({ isDone: false, best: null, atMost: Infinity, shifts: 1 })
    selection.add([3, 0])
    expect(selection).toMatchObject({
      isDone: true,
      best: 0,
      survivors: [0],
      atMost: 7,
      shifts: 2,
      used: [2, 2],
    })
    expect(selection.mean(0)).toBe(2)
  })

  it('the same figures, smaller is better: the other', () => {
    const selection = feed(two(false), [
      [1, 0],
      [3, 0],
    ])
    expect(selection).toMatchObject({ best: 1, survivors: [1] })
    expect(selection.mean(0)).toBe(2)
  })

  it('differences 1, -1, then 1, 0.5: totals 1 after three (1.5 allowed) and 1.5 after four (1 allowed)', () => {
    const selection = feed(two(), [
      [1, 0],
      [0, 1],
      [1, 0],
    ])
    expect(selection).toMatchObject({ isDone: false, survivors: [0, 1] })
    selection.add([0.5, 0])
    expect(selection).toMatchObject({ isDone: true, best: 0, shifts: 4 })
  })

  it('as far behind as allowed is not dropped', () => {
    // 1 after four shifts, where 1 is allowed
    const selection = feed(two(), [
      [1, 0],
      [0, 1],
      [1, 0],
      [0, 0],
    ])
    expect(selection.survivors).toEqual([0, 1])
    // after five 0.5 is
    selection.add([0, 0])
    expect(selection.best).toBe(0)
  })

  it('equal to the end: the seventh shift decides, and of equal ones the first is selected', () => {
    const even = [
      [1, 0],
      [0, 1],
      [0, 0],
      [0, 0],
      [0, 0],
      [0, 0],
    ]
    const selection = feed(two(), even)
    expect(selection).toMatchObject({ isDone: false, shifts: 6, atMost: 7 })
    selection.add([0, 0.01])
    expect(selection.best).toBe(1)
    expect(feed(two(), [...even, [0, 0]]).best).toBe(0)
  })

  it('three designs: h^2 = 15; the last is dropped early and its figures are not looked at any more', () => {
    // 2 alpha / (k - 1) = 1 / 4: eta = (16 - 1) / 2, h^2 = 15. Differences of 0 and 1: 1, -1, S^2 = 2, reach 30;
    // of 0 and 2: 101, 100, S^2 = 0.5, reach 7.5; of 1 and 2: 100, 101, the same
    const selection = new Selection(3, { confidence: 0.75, within: 1, isLargerBetter: true, firstStage: 2 })
    feed(selection, [
      [101, 100, 0],
      [100, 101, 0],
    ])
    expect(selection).toMatchObject({ survivors: [0, 1], isDone: false, atMost: 31 })
    // after three shifts 0 and 1 may lie 13.5 apart, after four 13
    selection.add([13.5, 0, Number.NaN])
    expect(selection.survivors).toEqual([0, 1])
    selection.add([0, 0, Number.NaN])
    expect(selection).toMatchObject({ best: 0, used: [4, 4, 2] })
  })

  it('who is dropped still drops others in the same look, as the paper compares with all that were in before', () => {
    // 0 less 1, and 1 less 2: 8.5 and 6.5, S^2 = 2, reach 30: 15 behind, 14 allowed. 0 less 2: 17 and 13, S^2 = 8,
    // reach 120: 30 behind, 59 allowed, so that 2 is dropped for 1 alone
    const selection = new Selection(3, { confidence: 0.75, within: 1, isLargerBetter: true, firstStage: 2 })
    feed(selection, [
      [17, 8.5, 0],
      [13, 6.5, 0],
    ])
    expect(selection).toMatchObject({ best: 0, atMost: 121, shifts: 2 })
  })

  it('designs that are one and the same: no spread, nothing to wait for', () => {
    const selection = feed(two(), [
      [5, 5],
      [6, 6],
    ])
    expect(selection).toMatchObject({ best: 0, atMost: 2 })
  })

  it('one design is selected from the start', () => {
    expect(new Selection(1, { confidence: 0.95, within: 1, isLargerBetter: true }).best).toBe(0)
  })
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
    expect(selection.shifts).toBe(0)
    feed(selection, [
      [1, 0],
      [3, 0],
    ])
    expect(() => selection.add([1, 0])).toThrow('the selection is over')
  })
})
