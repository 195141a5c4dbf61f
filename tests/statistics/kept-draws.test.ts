/** The share of draws that keep a promise: by hand, and how often its limits cover where draws are judged wrongly now and then. */
import { describe, expect, it } from 'vitest'
import { Stream } from '../../src/engine/stream.js'
import { shareOfDraws } from '../../src/statistics/kept-draws.js'

describe('limits of the share of draws that keep', () => {
  // Clopper & Pearson (1934), 95 %: of none in n the upper limit is 1 - 0.025^(1/n)
  const none = 1 - 0.025 ** (1 / 10)

  it('by hand: all of ten, none of ten, and judged without error', () => {
    expect(shareOfDraws({ kept: 10, missed: 0, open: 0 }, 0.95, 0)).toMatchObject({ share: 1, high: 1 })
    expect(shareOfDraws({ kept: 10, missed: 0, open: 0 }, 0.95, 0).low).toBeCloseTo(1 - none, 9)
    const missed = shareOfDraws({ kept: 0, missed: 10, open: 0 }, 0.95, 0)
    expect(missed).toMatchObject({ share: 0, low: 0 })
    expect(missed.high).toBeCloseTo(none, 9)
  })

  it('are moved by what a wrong judgement in 40 allows: P <= q + (1 - q) / 40, and P >= q (1 - 1 / 40)', () => {
    const all = shareOfDraws({ kept: 10, missed: 0, open: 0 }, 0.95, 1 / 40)
    expect(all.low).toBeCloseTo((1 - none - 1 / 40) / (39 / 40), 9)
    expect(all.high).toBe(1)
    const missed = shareOfDraws({ kept: 0, missed: 10, open: 0 }, 0.95, 1 / 40)
    expect(missed.low).toBe(0)
    expect(missed.high).toBeCloseTo(none / (39 / 40), 9)
  })

  it('a draw that was not told is none that keeps below, and one above', () => {
    const { share, low, high } = shareOfDraws({ kept: 0, missed: 9, open: 1 }, 0.95, 0)
    expect([share, low]).toEqual([0, 0])
    // the upper limit p of 1 in 10: (1 - p)^10 + 10 p (1 - p)^9 = 0.025
    expect((1 - high) ** 10 + 10 * high * (1 - high) ** 9).toBeCloseTo(0.025, 9)
  })

  it('cover at least as often as they say, though the worst error is made: 2000 studies of 60 draws', () => {
    const wrongly = 0.025
    const luck = new Stream('draws', 'test')
    for (const [index, share] of [0.1, 0.5, 0.9].entries()) {
      // always to the same side, and to either
      for (const side of [0, 1] as const) {
        luck.begin('kept', 10 * index + side + 1)
        let covered = 0
        for (let study = 0; study < 2000; study++) {
          let kept = 0
          for (let draw = 0; draw < 60; draw++) {
            luck.advance()
            const keeps = luck.value < share
            luck.advance()
            const isWrong = luck.value < wrongly && keeps === (side === 1)
            if (keeps !== isWrong) kept++
          }
          const { low, high } = shareOfDraws({ kept, missed: 60 - kept, open: 0 }, 0.95, wrongly)
          if (low <= share && share <= high) covered++
        }
        // exact limits cover more than 95 %: 93.5 % is three standard errors of 2000 below that
        expect([share, side, covered / 2000 > 0.935]).toEqual([share, side, true])
      }
    }
  })
})
