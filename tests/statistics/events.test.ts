/** Few events: exact limits against published values, bunches, and what rests on too few. */
import { describe, expect, it } from 'vitest'
import { countEstimate, shareEstimate } from '../../src/statistics/estimate.js'
import { bunching, chanceLimits, countLimits, isFewOf } from '../../src/statistics/events.js'

describe('limits of a count', () => {
  it('are those of published examples', () => {
    const per = (events: number, exposure: number, confidence = 0.95) => {
      const { low, high } = countLimits(events, confidence)
      return [low / exposure, high / exposure]
    }
    // the example of R's poisson.test: 137 in 24.19893 (its help page; Garwood's limits)
    const [low, high] = per(137, 24.19893)
    expect(low).toBeCloseTo(4.753125, 5)
    expect(high).toBeCloseTo(6.692709, 5)
    // deaths by horse kicks in Prussian corps, von Bortkiewicz (1898): 122 in 200 corps-years; limits by R 4.2.2
    expect(per(122, 200)).toEqual([expect.closeTo(0.5065681, 6), expect.closeTo(0.7283408, 6)])
  })

  it('of none end at 3.6889, of three run from 0.6187 to 8.7673: any table of Poisson limits, from memory', () => {
    expect(countLimits(0, 0.95)).toEqual({ low: 0, high: expect.closeTo(3.68888, 4) })
    expect(countLimits(3, 0.95)).toEqual({
      low: expect.closeTo(0.61867, 4),
      high: expect.closeTo(8.76727, 4),
    })
  })

  it('of bunches are as wide as of so many bunches: 12 in bunches of 4 as 3, fourfold', () => {
    const [three, twelve] = [countLimits(3, 0.95), countLimits(12, 0.95, 4)]
    expect(twelve.low).toBeCloseTo(4 * three.low, 10)
    expect(twelve.high).toBeCloseTo(4 * three.high, 10)
  })
})

describe('limits of a chance', () => {
  it('are those of published examples', () => {
    // 682 of 925: Conover, Practical Nonparametric Statistics (1971), p. 97, as in R's help of binom.test (from memory)
    const { low, high } = chanceLimits(682, 925, 0.95)
    expect(low).toBeCloseTo(0.7076683, 6)
    expect(high).toBeCloseTo(0.7654066, 6)
  })

  it('of 3 and of 0 in 4000: by R 4.2.2', () => {
    const three = chanceLimits(3, 4000, 0.95)
    expect(three.low).toBeCloseTo(1.546947e-4, 9)
    expect(three.high).toBeCloseTo(2.190239e-3, 8)
    expect(chanceLimits(0, 4000, 0.95)).toEqual({ low: 0, high: expect.closeTo(9.217947e-4, 9) })
  })

  it('stand for shares of which one side is rare: 50 of 50 is at least 0.025^(1/50) = 92.9 %', () => {
    const all = shareEstimate(new Array(50).fill(1), 0.95)
    expect(all).toMatchObject({ mean: 1, high: 1, low: expect.closeTo(0.025 ** (1 / 50), 8) })
  })
})

describe('bunches', () => {
  it('by hand: 0 0 0 8 0 0 0 8 has mean 2, variance 96 / 7', () => {
    expect(bunching([0, 0, 0, 8, 0, 0, 0, 8])).toBeCloseTo(96 / 7 / 2, 12)
  })

  it('of horse kicks are not shown: 109 65 22 3 1 corps-years with 0 to 4, dispersion 199.31 of 199', () => {
    // von Bortkiewicz (1898); index of dispersion by R 4.2.2
    const counts = [109, 65, 22, 3, 1].flatMap((years, kicks) => new Array<number>(years).fill(kicks))
    const mean = 0.61
    const index = counts.reduce((sum, each) => sum + (each - mean) ** 2, 0) / mean
    expect(index).toBeCloseTo(199.31148, 4)
    expect(bunching(counts)).toBeNull()
  })

  it('of none are not known', () => {
    expect(bunching([0, 0, 0])).toBeNull()
  })
})

describe('a count over shifts', () => {
  it('of none in 10 shifts is at most 0.37 a shift, and is no certainty', () => {
    const none = countEstimate(new Array(10).fill(0), 0.95, 1)
    expect(none).toMatchObject({ mean: 0, low: 0, few: { events: 0, of: 'events' } })
    expect(none.high).toBeCloseTo(0.368888, 5)
  })

  it('counts the shifts that a value stands for: 0.5 a shift in 4 campaigns of 2 are 4 events in 8', () => {
    const { mean, low, high, few } = countEstimate([0.5, 0.5, 0.5, 0.5], 0.95, 2)
    const limits = countLimits(4, 0.95)
    expect([mean, low, high]).toEqual([0.5, limits.low / 8, limits.high / 8])
    expect(few).toEqual({ events: 4, of: 'events' })
  })

  it('that is one of two numbers has the limits of the share of shifts with the larger', () => {
    const of = (threes: number, shifts: number) =>
      countEstimate(
        Array.from({ length: shifts }, (_, shift) => (shift < threes ? 3 : 2)),
        0.95,
        1,
      )
    // 20 of 50, Wilson by hand: (0.4 + 1.96^2 / 100 -+ 1.96 sqrt(0.24 / 50 + 1.96^2 / 10000)) / (1 + 1.96^2 / 50) = 0.27607 and 0.53819
    expect(of(20, 50).mean).toBeCloseTo(2.4, 12)
    expect(of(20, 50).low).toBeCloseTo(2.27607, 4)
    expect(of(20, 50).high).toBeCloseTo(2.53819, 4)
    // 4 of 50, fewer than five: the limits of Clopper and Pearson, whose ends at 0.0222 and 0.1923 have a tail of 2.5 % each
    const { low, high } = of(4, 50)
    const atMost = (some: number, chance: number) =>
      Array.from({ length: some + 1 }, (_, k) => k).reduce((sum, k) => {
        const ways = Array.from({ length: k }, (_, i) => (50 - i) / (i + 1)).reduce(
          (product, x) => product * x,
          1,
        )
        return sum + ways * chance ** k * (1 - chance) ** (50 - k)
      }, 0)
    expect(1 - atMost(3, low - 2)).toBeCloseTo(0.025, 9)
    expect(atMost(4, high - 2)).toBeCloseTo(0.025, 9)
    // of 29 shifts nobody knows that there are but two
    const few = of(12, 29)
    expect(few.high - few.mean).toBeCloseTo(few.mean - few.low, 9)
  })

  it('from 30 events on is a mean like any other', () => {
    const values = Array.from({ length: 10 }, (_, shift) => (shift % 2 === 0 ? 2 : 4))
    expect(countEstimate(values, 0.95, 1).few).toBeUndefined()
    expect(countEstimate(values, 0.95, 1).high - 3).toBeCloseTo(
      (2.262157 * Math.sqrt(10 / 9)) / Math.sqrt(10),
      5,
    )
  })
})

describe('few of many', () => {
  it('is fewer than 30 and than half, and some', () => {
    expect(isFewOf(0, 100)).toBe(false)
    expect(isFewOf(29, 100)).toBe(true)
    expect(isFewOf(30, 100)).toBe(false)
    expect(isFewOf(9, 20)).toBe(true)
    expect(isFewOf(10, 20)).toBe(false)
  })
})
