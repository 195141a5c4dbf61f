/** Trend, independence and alikeness worked by hand, and how often they call out what is not there. */
import { describe, expect, it } from 'vitest'
import { Stream } from '../../src/engine/stream.js'
import { alike } from '../../src/statistics/alike.js'
import { andersonDarlingAbove, andersonDarlingVariance } from '../../src/statistics/anderson-darling.js'
import { autocorrelations, ljungBox, runsAboutMedian } from '../../src/statistics/independence.js'
import { normalBeyond } from '../../src/statistics/tails.js'
import { laplace, orderTrend, powerLawTrend } from '../../src/statistics/trend.js'

const near = (value: number, digits = 10) => expect.closeTo(value, digits)

const random = (purpose: string): Stream => {
  const stream = new Stream('test', purpose)
  stream.begin('statistics', 0)
  return stream
}

describe('trend by hand', () => {
  it('one event in the middle shows none; at the end, sqrt 12 / 2', () => {
    expect(laplace([5], 10)).toEqual({ statistic: 0, atMost: 0.5, pValue: 1 })
    expect(laplace([10], 10).statistic).toBeCloseTo(Math.sqrt(12) / 2, 12)
  })

  it('at a third and two thirds: 2 ln 3 + 2 ln 1.5', () => {
    const { statistic, atMost } = powerLawTrend([1, 2], 3)
    expect(statistic).toBeCloseTo(2 * Math.log(4.5), 12)
    // chi-square with 4: 1 - e^-x/2 (1 + x/2)
    const half = Math.log(4.5)
    expect(atMost).toBeCloseTo(1 - Math.exp(-half) * (1 + half), 12)
  })

  it.each([
    // all three pairs rise: 1 order of 6, and as many fall
    { gaps: [1, 2, 3], reversals: 3, tau: 1, pValue: 2 / 6 },
    { gaps: [2, 1, 3], reversals: 2, tau: 1 / 3, pValue: 1 },
    { gaps: [4, 3, 2, 1], reversals: 0, tau: -1, pValue: 2 / 24 },
    // one tie: 2 / sqrt(3 x 2); variance (66 - 18) / 18
    { gaps: [1, 1, 2], reversals: 2, tau: 2 / Math.sqrt(6), pValue: normalBeyond(2 / Math.sqrt(48 / 18)) },
    { gaps: [7, 7, 7], reversals: 0, tau: 0, pValue: 1 },
    { gaps: [7], reversals: 0, tau: 0, pValue: 1 },
  ])('gaps $gaps', ({ gaps, reversals, tau, pValue }) => {
    expect(orderTrend(gaps)).toMatchObject({ reversals, tau: near(tau), pValue: near(pValue) })
  })

  it('counts pairs as a count of all pairs does, ties or not; exact and normal p-values meet', () => {
    const stream = random('gaps')
    for (const grain of [1e-9, 0.2]) {
      const gaps = Array.from({ length: 50 }, () => Math.round(stream.next() / grain))
      const rising = gaps.flatMap((gap, index) => gaps.slice(index + 1).filter((later) => later > gap)).length
      expect(orderTrend(gaps).reversals).toBe(rising)
    }
    // 50 gaps, 700 of 1225 pairs rise
    const swapped = Array.from({ length: 50 }, (_, index) => index)
    let falling = 0
    for (let at = 49; falling < 525; at = at === 1 ? 49 : at - 1) {
      const [a, b] = [swapped[at - 1]!, swapped[at]!]
      if (a < b) {
        swapped[at - 1] = b
        swapped[at] = a
        falling++
      }
    }
    const { reversals, pValue } = orderTrend(swapped)
    expect(reversals).toBe(700)
    // exact, by scipy 1.17.1; the normal law without continuity has 0.1434
    expect(pValue).toBeCloseTo(0.1461757079, 9)
  })

  it('call out events at a constant rate once in twenty logs', () => {
    const stream = random('constant rate')
    const calls = { laplace: 0, power: 0, order: 0 }
    const logs = 2000
    for (let log = 0; log < logs; log++) {
      const times: number[] = []
      let at = -Math.log(stream.next())
      while (at < 12) {
        times.push(at)
        at -= Math.log(stream.next())
      }
      if (times.length < 2) continue
      if (laplace(times, 12).pValue <= 0.05) calls.laplace++
      if (powerLawTrend(times, 12).pValue <= 0.05) calls.power++
      const gaps = times.map((time, index) => time - (times[index - 1] ?? 0))
      if (orderTrend(gaps).pValue <= 0.05) calls.order++
    }
    // four standard errors of 5 % of 2000 logs are 1.95 %. Exact p-values of few gaps are steps, and lie below
    expect(Math.abs(calls.laplace / logs - 0.05)).toBeLessThan(0.0195)
    expect(Math.abs(calls.power / logs - 0.05)).toBeLessThan(0.0195)
    expect(calls.order / logs).toBeLessThan(0.0695)
    expect(calls.order / logs).toBeGreaterThan(0.02)
  })
})

describe('independence by hand', () => {
  it('1, 2, 3: products of -1, 0, 1 over 2', () => {
    expect(autocorrelations([1, 2, 3], 2)).toEqual([0, -0.5].map((each) => near(each)))
  })

  it('1, 2, 3, 6 to lag 1: (-2 x -1 + -1 x 0 + 0 x 3) / 14 = 1/7; 4 x 6 / 49 / 3', () => {
    expect(ljungBox([1, 2, 3, 6], 1)!.statistic).toBeCloseTo(8 / 49, 12)
  })

  it('of too few, and of values all alike, nothing is said', () => {
    expect([ljungBox([1, 2], 1), ljungBox([], 1), ljungBox([0.1, 0.1, 0.1, 0.1], 1)]).toEqual([
      null,
      null,
      null,
    ])
    expect([runsAboutMedian([]), runsAboutMedian([1, 2, 3]), runsAboutMedian([5, 5, 5, 5])]).toEqual([
      null,
      null,
      null,
    ])
  })

  it.each([
    // expected 1 + 8 / 4, variance 8 x 4 / (16 x 3)
    { values: [1, 4, 2, 3], runs: 4, statistic: 1 / Math.sqrt(2 / 3) },
    { values: [1, 2, 3, 4], runs: 2, statistic: -1 / Math.sqrt(2 / 3) },
    // the one on the median is left out
    { values: [1, 2, 2.5, 3, 4], runs: 2, statistic: -1 / Math.sqrt(2 / 3) },
  ])('runs of $values', ({ values, runs, statistic }) => {
    expect(runsAboutMedian(values)).toMatchObject({ runs, expected: 3, statistic: near(statistic) })
  })
})

describe('alike by hand', () => {
  it('1, 2 against 3, 4: 2 x (1/0.75 + 9/2.75) x 2 / 2 x 3/16, of 6 deals 2 as far', () => {
    // gaps 1, 3, 3, 1 over 0.75, 2.75, 2.75, 0.75 in both samples
    const a2 = (2 * (2 / 0.75 + 18 / 2.75) * 3) / 2 / 16
    const found = alike(
      [
        [1, 2],
        [3, 4],
      ],
      random('deals'),
      20_000,
    )!
    expect(found.statistic).toBeCloseTo((a2 - 1) / Math.sqrt(andersonDarlingVariance([2, 2])), 12)
    expect(found.by).toBe('lot')
    // four standard errors of 1/3 in 20,000
    expect(Math.abs(found.pValue - 1 / 3)).toBeLessThan(0.0134)
  })

  it('the variance is that over all deals of 2 and 3 values, and the mean is 1', () => {
    // the statistic of the paper whose variance it is, eq. 3 for two samples: no midranks, over j = 1 to N - 1
    const statistics: number[] = []
    for (let deal = 0; deal < 32; deal++) {
      const isFirst = [0, 1, 2, 3, 4].map((bit) => ((deal >> bit) & 1) === 1)
      if (isFirst.filter(Boolean).length !== 2) continue
      let sum = 0
      for (let j = 1; j < 5; j++) {
        const own = isFirst.slice(0, j).filter(Boolean).length
        const gap = (5 * own - 2 * j) ** 2 / (j * (5 - j))
        sum += gap / 2 + gap / 3
      }
      statistics.push(sum / 5)
    }
    expect(statistics).toHaveLength(10)
    const mean = statistics.reduce((sum, each) => sum + each, 0) / 10
    expect(mean).toBeCloseTo(1, 12)
    const variance = statistics.reduce((sum, each) => sum + (each - mean) ** 2, 0) / 10
    expect(andersonDarlingVariance([2, 3])).toBeCloseTo(variance, 12)
  })

  it('p-values by the limit fall without a jump, to as far out as 40 standard deviations', () => {
    let last = 1
    for (let statistic = -1.2; statistic < 40; statistic += 0.1) {
      const p = andersonDarlingAbove(statistic, 3)
      expect(p).toBeLessThanOrEqual(last)
      if (statistic > 0) expect(p / last).toBeGreaterThan(0.75)
      last = p
    }
    expect(last).toBeGreaterThan(0)
  })

  it('all alike says nothing', () => {
    expect(
      alike(
        [
          [2, 2],
          [2, 2, 2],
        ],
        random('none'),
      ),
    ).toBeNull()
  })

  it('is called out once in twenty where it is so, rounded to six values or not', () => {
    const stream = random('size')
    for (const grain of [0, 1]) {
      let calls = 0
      const logs = grain === 0 ? 500 : 300
      for (let log = 0; log < logs; log++) {
        const samples = [8, 15, 10].map((size) =>
          Array.from({ length: size }, () => {
            const time = -Math.log(stream.next())
            return grain === 0 ? time : Math.floor(time)
          }),
        )
        if (alike(samples, stream, 199)!.pValue <= 0.05) calls++
      }
      // four standard errors of 5 %
      expect(Math.abs(calls / logs - 0.05), `grain ${grain}`).toBeLessThan(4 * Math.sqrt(0.0475 / logs))
    }
  })
})
