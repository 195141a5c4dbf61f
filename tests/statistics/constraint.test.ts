/** Tests of a requirement shift by shift: decision lines by the published formulas, and by hand. */
import { describe, expect, it } from 'vitest'
import { type ConstraintTest, MeanTest, ShareTest, type Verdict } from '../../src/statistics/constraint.js'

/** Feeds figures until something is clear; the verdict and the shifts that it took, null where nothing is. */
function decide(test: ConstraintTest, figures: readonly number[]): [Verdict, number] | null {
  for (const [index, figure] of figures.entries()) {
    const verdict = test.add(figure)
    if (verdict) return [verdict, index + 1]
  }
  return null
}

/**
 * Sequential sampling plan for a share of defectives: acceptance number -h1 + s n, rejection number h2 + s n.
 * NIST/SEMATECH e-Handbook of Statistical Methods, sec. 6.2.6, after Wald, Sequential Analysis (1947), sec. 5.3 (both
 * from memory).
 */
function plan({ p1, p2, alpha, beta }: { p1: number; p2: number; alpha: number; beta: number }) {
  const k = Math.log10((p2 * (1 - p1)) / (p1 * (1 - p2)))
  return {
    k,
    h1: Math.log10((1 - alpha) / beta) / k,
    h2: Math.log10((1 - beta) / alpha) / k,
    s: Math.log10((1 - p1) / (1 - p2)) / k,
  }
}

/** A row of shifts that is good more or less often, without randomness: whole multiples of an irrational number. */
const row = (length: number, share: number) =>
  Array.from({ length }, (_, index) => (((index + 1) * Math.SQRT2) % 1 < share ? 1 : 0))

describe('a share: the lines of the published plan', () => {
  it('the formulas of this test give its example: 0.01 and 0.10 at 5 % and 10 %', () => {
    const { k, h1, h2, s } = plan({ p1: 0.01, p2: 0.1, alpha: 0.05, beta: 0.1 })
    expect(k).toBeCloseTo(1.0414, 4)
    expect(h1).toBeCloseTo(0.939, 3)
    expect(h2).toBeCloseTo(1.205, 3)
    expect(s).toBeCloseTo(0.0397, 4)
  })

  // a share that is held is one of defectives less than 1; of both ends of the zone the one nearer 1 is that of p1.
  // The last three zones end halfway to 0 or 1: 0.9725 between 0.945 and 1, 0.995 between 0.99 and 1, 0.005 below 0.01
  it.each([
    { least: 0.9, near: 0.05, alpha: 0.05, beta: 0.05, p1: 0.05, p2: 0.15 },
    { least: 0.5, near: 0.1, alpha: 0.01, beta: 0.01, p1: 0.4, p2: 0.6 },
    { least: 0.95, near: 0.02, alpha: 0.005, beta: 0.005, p1: 0.03, p2: 0.07 },
    { least: 0.9, near: 0.05, alpha: 0.05, beta: 0.1, p1: 0.05, p2: 0.15 },
    { least: 0.9, near: 0.05, alpha: 0.2, beta: 0.01, p1: 0.05, p2: 0.15 },
    { least: 0.945, near: 0.045, alpha: 0.05, beta: 0.05, p1: 0.0275, p2: 0.1 },
    { least: 0.99, near: 0.02, alpha: 0.1, beta: 0.1, p1: 0.005, p2: 0.03 },
    { least: 0.01, near: 0.02, alpha: 0.1, beta: 0.1, p1: 0.97, p2: 0.995 },
  ])('at least $least, give or take $near, at $alpha and $beta', ({ least, near, alpha, beta, p1, p2 }) => {
    const { h1, h2, s } = plan({ p1, p2, alpha, beta })
    let decisions = 0
    for (const share of [0, (1 - p2) / 2, 1 - p2, least, 1 - p1, 1 - p1 / 2, 1]) {
      // alpha: what is good is refused, beta: what is bad is accepted
      const test = new ShareTest(least, near, beta, alpha)
      let defective = 0
      for (const [index, figure] of row(5000, share).entries()) {
        defective += 1 - figure
        const n = index + 1
        const wanted = defective <= -h1 + s * n ? 'accepted' : defective >= h2 + s * n ? 'refused' : null
        const verdict = test.add(figure)
        expect([share, n, verdict]).toEqual([share, n, wanted])
        if (verdict === null) continue
        decisions++
        break
      }
    }
    expect(decisions).toBeGreaterThanOrEqual(4)
  })
})

describe('a share by hand', () => {
  // 0.25 against 0.75: each shift tells ln 3, for or against
  it('at 5 % (ln 19, 2.68 of ln 3) three ahead are needed', () => {
    const test = () => new ShareTest(0.5, 0.25, 0.05)
    expect(decide(test(), [1, 1])).toBeNull()
    expect(decide(test(), [1, 1, 1])).toEqual(['accepted', 3])
    expect(decide(test(), [0, 1, 0, 0, 1, 0, 0])).toEqual(['refused', 7])
  })

  it('at 20 % (ln 4, 1.26 of ln 3) two ahead are', () => {
    const test = () => new ShareTest(0.5, 0.25, 0.2)
    expect(decide(test(), [0, 0])).toEqual(['refused', 2])
    expect(decide(test(), [0, 1, 1, 0, 1, 1])).toEqual(['accepted', 6])
    expect(decide(test(), [0, 1, 1, 0, 1, 0])).toBeNull()
  })

  it('0.8 against 0.9 at 10 %: ln 9 is 18.65 shifts of ln 9/8, and each that is missed costs ln 2, 5.88 of these', () => {
    const test = () => new ShareTest(0.85, 0.05, 0.1)
    const held = (count: number) => new Array<number>(count).fill(1)
    expect(decide(test(), held(30))).toEqual(['accepted', 19])
    // 18.65 + 5.88 = 24.54 held ones
    expect(decide(test(), [0, ...held(30)])).toEqual(['accepted', 26])
    // ln 9 is 3.17 of ln 2
    expect(decide(test(), [0, 0, 0, 0])).toEqual(['refused', 4])
  })

  it('a zone wider than halfway to 0 and 1 ends there: of 0.5 at 0.25 and 0.75', () => {
    const half = (near: number) => decide(new ShareTest(0.5, near, 0.05), [0, 0, 1, 0, 1, 0, 0])
    expect(half(0.25)).toEqual(['refused', 7])
    expect(half(0.4)).toEqual(half(0.25))
    expect(half(7)).toEqual(half(0.25))
  })

  it.each([
    [1, 0.02],
    [0, 0.02],
    [0.5, 0],
    [0.5, -0.1],
    [Number.NaN, 0.02],
    [0.5, Number.NaN],
  ])('%d, give or take %d, leaves nothing to tell apart', (least, near) => {
    expect(() => new ShareTest(least, near, 0.05)).toThrow(RangeError)
  })
})

/** So many figures, these in turn. */
const turns = (count: number, ...figures: number[]) =>
  Array.from({ length: count }, (_, index) => figures[index % figures.length]!)

/**
 * Six shifts at first at a risk of 1/64. Figures one above and one below their mean by turns vary with 6/5, and h^2 of five degrees is 15
 * (see evidence.test.ts): with a nearness of 1 the sum may reach 15 x 1.2 / 2 - 6 / 2 = 6.
 */
const mean = (least = 0, isSeen?: () => boolean) => new MeanTest(least, 1, 1 / 64, 6, isSeen)

describe('a mean by hand', () => {
  it('3 and 1 by turns: 12 is more than the 6 that are allowed after six shifts', () => {
    expect(decide(mean(), turns(6, 3, 1))).toEqual(['accepted', 6])
    expect(decide(mean(), turns(6, -3, -1))).toEqual(['refused', 6])
    // the same about 10
    expect(decide(mean(10), turns(6, 13, 11))).toEqual(['accepted', 6])
    expect(decide(mean(10), turns(6, 7, 9))).toEqual(['refused', 6])
  })

  it('1.9 and -0.1 by turns: 5.4 after six (6 allowed), then 6.3 of seven (3 allowed)', () => {
    // of a seventh in the middle: variance 1, h^2 of six degrees 6 (2^(5/3) - 1) = 13.0: 6.5 - 3.5
    expect(decide(mean(), turns(6, 1.9, -0.1))).toBeNull()
    expect(decide(mean(), [...turns(6, 1.9, -0.1), 0.9])).toEqual(['accepted', 7])
    expect(decide(mean(), [...turns(6, -1.9, 0.1), -0.9])).toEqual(['refused', 7])
  })

  it('at the tip, after eleven, the sign decides; a sum of nothing keeps what is required', () => {
    // variance 1, h^2 of ten degrees 10: 5 - 5.5 is below nothing
    expect(decide(mean(), turns(10, 1, -1))).toBeNull()
    expect(decide(mean(), [...turns(10, 1, -1), 0])).toEqual(['accepted', 11])
    expect(decide(mean(), [...turns(10, 1, -1), -0.01])).toEqual(['refused', 11])
    expect(decide(mean(), [...turns(10, 1, -1), 0.01])).toEqual(['accepted', 11])
  })

  it('nothing is told before the first stage is over, however far', () => {
    expect(decide(mean(), turns(5, 100, 90))).toBeNull()
    expect(decide(mean(), turns(6, 100, 90))).toEqual(['accepted', 6])
  })

  it('without spread the first stage says all', () => {
    expect(decide(mean(5), turns(6, 5.1))).toEqual(['accepted', 6])
    expect(decide(mean(5), turns(6, 4.9))).toEqual(['refused', 6])
  })

  it('spread that comes later counts', () => {
    // quiet about 0.2 would be told at six; a first loss of 9 leaves 0.2 x 6 - 9, and one deviation is too little to know
    expect(decide(mean(), turns(6, 0.3, 0.1))).toEqual(['accepted', 6])
    expect(decide(mean(), [...turns(5, 0.3, 0.1), -9, ...turns(30, 0.3, 0.1)])).toBeNull()
  })

  it('four bad shifts of fifty are too few to tell, five are enough', () => {
    const shifts = (bad: number) => Array.from({ length: 50 }, (_, shift) => (shift < bad ? 80 : 100))
    // deviations of five: -18 and 2, 1800^2 / (5 x 18^4 + 45 x 2^4) = 6.2 of one size; of four: -18.4 and 1.6, 4.7
    const test = () => new MeanTest(50, 10, 0.05)
    expect(decide(test(), shifts(5))).toEqual(['accepted', 50])
    expect(decide(test(), shifts(4))).toBeNull()
  })

  it('nothing is told before all that may happen was seen', () => {
    let isSeen = false
    const test = mean(0, () => isSeen)
    expect(decide(test, turns(40, 3, 1))).toBeNull()
    isSeen = true
    // the look after 39 is at 41
    expect(decide(test, turns(40, 3, 1))?.[0]).toBe('accepted')
  })

  it('a ratio is total over total: 1 / 1 and 30 / 10 by turns are 2.8, where the mean of the ratios is 2', () => {
    const told = (least: number) => {
      const test = new MeanTest(least, 0.3, 0.05)
      for (let shift = 0; shift < 2000; shift++) {
        const verdict = shift % 2 === 0 ? test.add(1, 1) : test.add(30, 10)
        if (verdict) return verdict
      }
      return null
    }
    expect(told(2.4)).toBe('accepted')
    expect(told(3.2)).toBe('refused')
  })
})
