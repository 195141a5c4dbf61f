/** The search for the cheapest design, driven by figures made by hand: what it tries, in which order, what it asks for and picks. */
import { describe, expect, it } from 'vitest'
import type { Candidate } from '../../src/questions/size/search.js'
import { condition, drive } from './searches.js'

/** Designs that nothing rules out and of which none is below another. */
const plain = (count: number): Candidate[] =>
  Array.from({ length: count }, () => ({ ruledOut: () => null, isBelow: () => false }))

/** Designs that each have no more than all that cost more. */
const chain = (count: number): Candidate[] =>
  Array.from({ length: count }, (_, design) => ({
    ruledOut: () => null,
    isBelow: (other) => design <= other,
  }))

/** Always kept from that place in the order of cost on, and never before. */
const from = (least: number) => (design: number) => [design >= least ? 1 : 0]

describe('which design is picked', () => {
  it('the cheapest that holds, when nothing is known of what is below what', async () => {
    const { found, tried } = await drive({ figure: from(2), candidates: plain(5) })
    expect(found!.pick).toBe(2)
    // in order of cost, and none that costs more than the pick
    expect(tried).toEqual([0, 1, 2])
    expect(found!.tried.map(({ verdict }) => verdict)).toEqual(['refused', 'refused', 'accepted'])
  })

  it('none where none holds; all are told', async () => {
    const { found, tried } = await drive({ figure: () => [0], candidates: plain(4) })
    expect(found!.pick).toBeNull()
    expect(tried).toEqual([0, 1, 2, 3])
    expect((await drive({ figure: () => [0], candidates: [] })).found).toEqual({ tried: [], pick: null })
  })

  it('not one that pencil and paper rule out: it is told first, with its reason, and not simulated', async () => {
    const candidates = plain(3).map((each, design) => ({
      ...each,
      ruledOut: () => (design < 2 ? `too slow ${design}` : null),
    }))
    const { found, asked } = await drive({ figure: () => [1], candidates })
    expect(found!.pick).toBe(2)
    expect(found!.tried.slice(0, 2)).toEqual(
      [0, 1].map((design) => ({
        ...{ design, verdict: 'refused', without: { reason: `too slow ${design}` } },
        ...{ figures: [], shifts: 0 },
      })),
    )
    expect(new Set(asked.map(([design]) => design))).toEqual(new Set([2]))
  })

  it('only one that keeps every promise; the first that it does not keep ends it', async () => {
    const promises = () => [condition(0), condition(1)]
    const figure = (design: number) => [1, design === 2 ? 1 : 0]
    const { found } = await drive({ figure, candidates: plain(4), goal: { promises } })
    expect(found!.pick).toBe(2)
    // of each there is the share of the shifts, and no interval after a test that ended them
    const of = (share: number) => ({ mean: share, low: null, high: null })
    expect(found!.tried[2]!.figures).toEqual([of(1), of(1)])
    expect(found!.tried[0]!.figures).toEqual([of(1), of(0)])
  })

  it('a promise of at most, of shares and of means', async () => {
    const share = () => [condition(0, { isLeast: false, value: 0.2, near: 0.1 })]
    const { found } = await drive({
      figure: (design) => [design === 1 ? 0 : 1],
      candidates: plain(3),
      goal: { promises: share },
    })
    expect(found!.pick).toBe(1)
    const mean = () => [condition(0, { isShare: false, isLeast: false, value: 40, near: 1 })]
    // one above, one below by turns, so that there is a spread: means of 50, 44, 38, 32
    const figure = (design: number, shift: number) => [50 - 6 * design + (shift % 2 === 0 ? 1 : -1)]
    const means = await drive({ figure, candidates: plain(4), goal: { promises: mean } })
    expect(means.found!.pick).toBe(2)
    // the spread is taken to be known after 50 shifts, and 38 is far enough below 40 for those
    expect(means.found!.tried.map(({ design, shifts }) => [design, shifts])).toEqual([
      [0, 50],
      [1, 50],
      [2, 50],
    ])
  })
})

describe('what is ruled out by problem', () => {
  it('a refused design refuses those below it, which are told at once and not simulated', async () => {
    const { found, tried } = await drive({ figure: from(6), candidates: chain(7) })
    expect(found!.pick).toBe(6)
    // 3 is in the middle of 7; of 4, 5 and 6 the middle is 5
    expect(tried).toEqual([3, 0, 1, 2, 5, 4, 6])
    expect(found!.tried[1]).toEqual({
      ...{ design: 0, verdict: 'refused', without: { worseThan: 3 } },
      ...{ figures: [], shifts: 0 },
    })
    expect(found!.tried[5]!.without).toEqual({ worseThan: 5 })
  })

  it('an accepted design ends all that cost more, which are not told', async () => {
    const { found, tried } = await drive({ figure: from(0), candidates: chain(7) })
    expect(found!.pick).toBe(0)
    // 3 of 7; of 0, 1 and 2 the middle; then 0
    expect(tried).toEqual([3, 1, 0])
  })

  it('one that costs more but has less is refused too', async () => {
    // 2 has less than 0, yet costs more
    const candidates: Candidate[] = plain(3).map((each, design) => ({
      ...each,
      isBelow: (other) => design === other || (design === 2 && other === 0),
    }))
    const { found } = await drive({ figure: () => [0], candidates })
    expect(found!.pick).toBeNull()
    expect(found!.tried.map(({ design, without }) => [design, without])).toEqual([
      [0, null],
      [2, { worseThan: 0 }],
      [1, null],
    ])
  })
})

describe('which is tried next, by hand', () => {
  const firstOf = async (candidates: Candidate[]) => (await drive({ figure: () => [1], candidates })).tried[0]

  it('of a chain of five the middle: it rules out three either way, its neighbours two', async () => {
    expect(await firstOf(chain(5))).toBe(2)
    // of four 1 rules out 3 or 2, 2 rules out 2 or 3: the cheaper of equals
    expect(await firstOf(chain(4))).toBe(1)
  })

  it('of two separate chains of three, costs by turns, the top of what is cheaper than half', async () => {
    // places 0 2 4 are one chain, 1 3 5 the other: accepted rules out 6 - place, refused place / 2 + 1, rounded down:
    // 0: 6 1, 1: 5 1, 2: 4 2, 3: 3 2, 4: 2 3, 5: 1 3, so that 2 is the cheapest of those that rule out two
    const two = chain(6).map((each, design) => ({
      ...each,
      isBelow: (other: number) => design <= other && design % 2 === other % 2,
    }))
    expect(await firstOf(two)).toBe(2)
  })

  it('of a grid of three by three', async () => {
    // cost 3 a + b: the design at (a, b) has below it (a + 1) (b + 1), and 9 - place cost as much or more:
    // (0,2): 3 of 7; (1,1): 4 of 5; (1,2): 6 of 4; (2,0): 3 of 3
    const grid = chain(9).map((each, design) => ({
      ...each,
      isBelow: (other: number) => Math.floor(design / 3) <= Math.floor(other / 3) && design % 3 <= other % 3,
    }))
    expect(await firstOf(grid)).toBe(4)
  })

  it('of a thousand in a chain one near the middle, and ten more are enough', async () => {
    const { found, told } = await drive({ figure: from(700), candidates: chain(1000) })
    expect(found!.pick).toBe(700)
    const simulated = told.filter(({ without }) => without === null)
    expect(simulated[0]!.design).toBeGreaterThan(490)
    expect(simulated[0]!.design).toBeLessThan(510)
    // halving 1000 takes 10; only one of 200 places is weighed, which may miss the middle by 5
    expect(simulated.length).toBeLessThanOrEqual(12)
  })
})

describe('how many shifts are asked for', () => {
  // shares of 0.25 and 0.75 as the ends: each shift tells ln 3. Of the i-th design the risk is 0.025 / (i (i + 1)), so the
  // first needs ln((1 - r) / r) = ln 79 with r = 0.0125: 3.98 of ln 3; the second ln 239, 4.98; the third ln 479, 5.62
  it('no more than its rule looked at', async () => {
    const { found, made } = await drive({ figure: from(2), candidates: plain(5) })
    expect(found!.tried.map(({ shifts }) => shifts)).toEqual([4, 5, 6])
    expect(made).toEqual([
      [0, 4],
      [1, 5],
      [2, 6],
    ])
  })

  it('never more than the most', async () => {
    // by turns kept and missed: nothing is ever told
    const { found, made } = await drive({
      figure: (_, shift) => [shift % 2],
      candidates: plain(1),
      goal: { most: 50 },
    })
    expect(made).toEqual([[0, 50]])
    const figures = [{ mean: 0.5, low: null, high: null }]
    expect(found!.tried).toEqual([{ design: 0, verdict: 'undecided', without: null, figures, shifts: 50 }])
  })

  it('the risk of the i-th design is 0.025 / (i (i + 1)), each way, which sums to 5 % over any number', async () => {
    const { found } = await drive({ figure: () => [0], candidates: plain(60) })
    // shifts that are all missed tell how large the risk was: the least n with n ln 3 >= ln((1 - r) / r)
    let spent = 0
    for (const [index, { shifts }] of found!.tried.entries()) {
      const risk = 0.025 / ((index + 1) * (index + 2))
      expect(shifts).toBe(Math.ceil(Math.log((1 - risk) / risk) / Math.log(3)))
      // what so many shifts can have spent at most: 3^n = (1 - r) / r
      spent += 2 * Math.max(risk, 1 / (1 + 3 ** shifts))
    }
    // 1 - 1 / 61 of it
    expect(spent).toBeCloseTo(0.05 * (60 / 61), 12)
    expect(spent).toBeLessThanOrEqual(0.05)
  })

  it('of two promises each may refuse with half the risk', async () => {
    const promises = () => [condition(0), condition(1)]
    const { found } = await drive({ figure: () => [1, 0], candidates: plain(1), goal: { promises } })
    // refused at ln(q / (1 - r)) with q = 0.00625, r = 0.0125: 5.06 of ln 3 is 4.61: five
    expect(Math.log(0.9875 / 0.00625) / Math.log(3)).toBeCloseTo(4.61, 2)
    expect(found!.tried[0]).toMatchObject({ verdict: 'refused', shifts: 5 })
  })
})

describe('a design that stays undecided', () => {
  it('is passed over: it rules out nothing, and the next one is picked', async () => {
    // 0 and 1 are never told
    const figure = (design: number, shift: number) => [design < 2 ? shift % 2 : 1]
    const { found, tried } = await drive({ figure, candidates: chain(4), goal: { most: 30 } })
    expect(found!.pick).toBe(2)
    expect(tried).toEqual([1, 2, 0])
    expect(found!.tried.map(({ verdict }) => verdict)).toEqual(['undecided', 'accepted', 'undecided'])
  })

  it('is one whose shifts say nothing', async () => {
    const promises = () => [condition(0, { isShare: false, near: 0.1 })]
    const { found } = await drive({
      figure: () => [Number.NaN],
      candidates: plain(1),
      goal: { promises, most: 60 },
    })
    expect(found!.pick).toBeNull()
    expect(found!.tried[0]).toMatchObject({ verdict: 'undecided', shifts: 60 })
  })
})

describe('every design to the end', () => {
  const goal = { isFull: true, most: 50 }

  it('is simulated for the most shifts, and judged by its figures alone', async () => {
    const candidates = chain(4).map((each) => ({ ...each, ruledOut: () => 'too slow' }))
    // of 50 shifts 24, 25 and 26 are kept, then all; 25 is just enough
    const figure = (design: number, shift: number) => [shift <= [24, 25, 26, 50][design]! ? 1 : 0]
    const { found, asked } = await drive({ figure, candidates, goal })
    expect(found!.pick).toBe(1)
    expect(
      found!.tried.map(({ design, verdict, figures, shifts }) => [design, verdict, figures[0]!.mean, shifts]),
    ).toEqual([
      [0, 'refused', 0.48, 50],
      [1, 'accepted', 0.5, 50],
      [2, 'accepted', 0.52, 50],
      [3, 'accepted', 1, 50],
    ])
    // the number of shifts was fixed before, so the interval covers as it says
    for (const { figures } of found!.tried.slice(0, 3)) {
      expect(figures[0]!.low).toBeLessThan(figures[0]!.mean!)
      expect(figures[0]!.high).toBeGreaterThan(figures[0]!.mean!)
    }
    expect(asked).toEqual([0, 1, 2, 3].map((design) => [design, 50]))
  })

  it('a ratio is total over total, as the study prints it, and not the mean of the ratios', async () => {
    // 10 in 1, then 10 in 9: 20 in 10 are 2, where the mean of 10 and 1.11 is 5.6
    const ratio = { ...condition(0).measure, kind: 'ratio' as const }
    const promises = () => [condition(0, { measure: ratio, isShare: false, isLeast: false, value: 3 })]
    const figure = (_: number, shift: number) => [10, shift % 2 === 0 ? 9 : 1]
    const { found } = await drive({ figure, candidates: plain(1), goal: { ...goal, promises } })
    expect(found!.tried[0]!.figures[0]!.mean).toBeCloseTo(2, 12)
    expect(found!.pick).toBe(0)
  })

  it('a promise of at most is judged by its figure too', async () => {
    const promises = () => [condition(0, { isLeast: false, value: 0.5 })]
    const figure = (design: number, shift: number) => [shift <= [26, 25][design]! ? 1 : 0]
    const { found } = await drive({ figure, candidates: plain(2), goal: { ...goal, promises } })
    expect(found!.pick).toBe(1)
  })
})

describe('a search that is cancelled, and one that goes on', () => {
  it('ends with null, having told what was done', async () => {
    const { found, told, asked } = await drive({ figure: from(9), candidates: plain(9), cancelAfter: 12 })
    expect(found).toBeNull()
    expect(told.map(({ design }) => design)).toEqual([0, 1])
    expect(asked).toHaveLength(3)
    const full = await drive({
      figure: from(9),
      candidates: plain(9),
      cancelAfter: 50,
      goal: { isFull: true, most: 30 },
    })
    expect([full.found, full.tried]).toEqual([null, [0]])
  })

  it('does not simulate again what is known, and ends with the very same', async () => {
    const figure = (design: number, shift: number) => [design >= 11 || (shift * 7 + design) % 5 < 1 ? 1 : 0]
    const all = await drive({ figure, candidates: chain(16) })
    const simulated = all.told.filter(({ without }) => without === null)
    expect(simulated.length).toBeGreaterThanOrEqual(4)
    for (let count = 0; count <= simulated.length; count++) {
      const kept = new Map(simulated.slice(0, count).map((each) => [each.design, each]))
      const again = await drive({
        figure,
        candidates: chain(16),
        known: (design) => kept.get(design) ?? null,
      })
      expect(again.found).toEqual(all.found)
      expect(again.told).toEqual(all.told)
      expect(again.asked.some(([design]) => kept.has(design))).toBe(false)
      expect(new Set(again.asked.map(([design]) => design)).size).toBe(simulated.length - count)
    }
  })
})
