/** The cheapest design that is sure enough, driven by draws made by hand: what is drawn, when a design is left, which is the surest. */
import { describe, expect, it } from 'vitest'
import { type Candidate, findCheapest, type Search, type Tried } from '../../src/questions/size/search.js'
import { findSure, holdingFrom, keptIn, leastKept } from '../../src/questions/size/sure.js'
import { brought, condition, shiftOf } from './searches.js'

const verdicts = { k: 'accepted', m: 'refused', o: 'undecided' } as const

/** Seeks the surest of designs whose ten draws are kept, missed or open as written; tells what was drawn. */
async function sure(
  written: Record<number, string>,
  share = 0.8,
  isBelow = (_: number, __: number) => false,
) {
  const asked: string[] = []
  async function* holding() {
    yield* Object.keys(written).map(Number)
  }
  const found = await findSure(holding(), { share, draws: 10, isBelow }, async (design, draw) => {
    asked.push(`${design}:${draw}`)
    return verdicts[written[design]![draw - 1] as 'k']
  })
  const drawn = (design: number) => asked.filter((each) => each.startsWith(`${design}:`)).length
  return { ...found, asked, drawn }
}

describe('the cheapest design that is sure enough', () => {
  it('is the first of which at most two of ten draws are not kept, for 80 %', async () => {
    const { pick, surest, kept, drawn } = await sure({ 3: 'kmkmmkkkkk', 5: 'mkkkkkmkkk', 6: 'kkkkkkkkkk' })
    expect([pick, surest]).toEqual([5, null])
    // left at the third that is not kept; the next one to its end, and none that costs more
    expect([drawn(3), drawn(5), drawn(6)]).toEqual([5, 10, 0])
    expect(kept.get(3)).toEqual({ kept: 2, missed: 3, open: 0 })
    expect(kept.get(5)).toEqual({ kept: 8, missed: 2, open: 0 })
  })

  it('a draw that could not be told is not kept', async () => {
    const { pick, drawn } = await sure({ 0: 'okokokkkkk', 1: 'kkkkkkkkko' })
    expect([pick, drawn(0)]).toEqual([1, 5])
  })

  it('one that has less of what never hurts than one that was left is not drawn', async () => {
    const all = { 0: 'mmmkkkkkkk', 1: 'kkkkkkkkkk', 2: 'kkkkkkkkkk' }
    const { pick, drawn } = await sure(all, 0.8, (design, other) => design === 1 && other === 0)
    expect([pick, drawn(1)]).toEqual([2, 0])
  })

  it('of 60 draws 90 % are 54, 95 % 57, 99 % all', () => {
    expect([0.9, 0.95, 0.99].map((share) => leastKept(share, 60))).toEqual([54, 57, 60])
    // 0.07 of 100 is 7.000000000000001 in binary
    expect(leastKept(0.07, 100)).toBe(7)
  })
})

describe('where none is sure enough the surest', () => {
  it('has most draws kept over all, whichever lasted longest; what cannot pass it is left', async () => {
    // 1 lasts longest, 6 of 10; 0 was left after three draws and keeps all the others; 2 misses the fourth one too
    const { pick, surest, kept, drawn } = await sure({
      ...{ 0: 'mmmkkkkkkk', 1: 'kkkkkkmmmm', 2: 'mmmmkkkkkk' },
    })
    expect([pick, surest]).toEqual([null, 0])
    expect(kept.get(0)).toEqual({ kept: 7, missed: 3, open: 0 })
    expect(kept.get(1)).toEqual({ kept: 6, missed: 4, open: 0 })
    // to pass 7 kept it may miss two: it had missed three
    expect(drawn(2)).toBe(3)
  })

  it('of equals is the cheapest, though another lasted longer', async () => {
    const { surest } = await sure({ 0: 'mmmkkkkkkk', 1: 'kkkkkkkmmm' })
    expect(surest).toBe(0)
    expect((await sure({ 0: 'kkkkkkkmmm', 1: 'mmmkkkkkkk' })).surest).toBe(0)
  })

  it('there is none where none holds with the inputs as they are given', async () => {
    expect(await sure({})).toMatchObject({ pick: null, surest: null, asked: [] })
  })
})

describe('draws of one design', () => {
  it('are all run where nothing is asked of them, and gone on with where some were', async () => {
    const asked: number[] = []
    const verdictOf = async (_: number, draw: number) => {
      asked.push(draw)
      return draw % 2 === 0 ? ('accepted' as const) : ('refused' as const)
    }
    expect(await keptIn(0, 10, verdictOf)).toEqual({ kept: 5, missed: 5, open: 0 })
    const before = { kept: 3, missed: 3, open: 1 }
    expect(await keptIn(0, 10, verdictOf, 10, before)).toEqual({ kept: 5, missed: 4, open: 1 })
    expect(asked).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 8, 9, 10])
    expect(before).toEqual({ kept: 3, missed: 3, open: 1 })
  })
})

describe('designs that hold with the inputs as they are given', () => {
  const goal = { promises: () => [condition(0)], confidence: 0.95, most: 400, isFull: false }

  /** Of designs that are always kept or never, those that hold, from the pick on, as many as are asked for. */
  async function holding(keeps: readonly boolean[], candidates: readonly Candidate[], count = Infinity) {
    const simulated: number[] = []
    const more: Search['more'] = async (design, count, isEnough) => {
      simulated.push(design)
      return brought([], count, isEnough, () => shiftOf([keeps[design] ? 1 : 0]))
    }
    const told: Tried[] = []
    const search = { candidates, goal, more, known: () => null, onTried: () => {} }
    const { tried, pick } = await findCheapest(search)
    const found: number[] = []
    const onTried = (each: Tried) => told.push(each)
    for await (const design of holdingFrom(pick!, tried, { ...search, onTried })) {
      found.push(design)
      if (found.length >= count) break
    }
    return { found, simulated, told, tried }
  }

  const plain: Candidate[] = Array.from({ length: 5 }, () => ({ ruledOut: () => null, isBelow: () => false }))

  it('come in order of cost, none simulated before it is asked for; the risks go on in one row', async () => {
    const { found, simulated, told } = await holding([false, true, false, true, true], plain, 2)
    expect(found).toEqual([1, 3])
    expect(simulated).toEqual([0, 1, 2, 3])
    // the i-th has 0.025 / (i (i + 1)): shifts that are all alike tell which risk it was, each telling ln 3
    const shifts = (index: number) => {
      const risk = 0.025 / (index * (index + 1))
      return Math.ceil(Math.log((1 - risk) / risk) / Math.log(3))
    }
    expect(told.map(({ design, verdict, shifts: of }) => [design, verdict, of])).toEqual([
      [2, 'refused', shifts(3)],
      [3, 'accepted', shifts(4)],
    ])
  })

  it('what pencil and paper or a refused design rules out is not simulated', async () => {
    const candidates = plain.map((each, design) => ({
      ...each,
      ruledOut: () => (design === 2 ? 'too slow' : null),
      // 3 has less than 0 though it costs more
      isBelow: (other: number) => design === other || (design === 3 && other === 0),
    }))
    const { found, simulated, tried } = await holding([false, true, true, true, true], candidates)
    expect(found).toEqual([1, 4])
    expect(simulated).toEqual([0, 1, 4])
    expect(tried.find(({ design }) => design === 2)!.without).toEqual({ reason: 'too slow' })
    expect(tried.find(({ design }) => design === 3)!.without).toEqual({ worseThan: 0 })
  })

  it('those that the search found are not simulated again', async () => {
    // a chain: the search begins in its middle; of 0 and 1 either rules out one, so that the cheaper comes first
    const chain = plain.map((each, design) => ({ ...each, isBelow: (other: number) => design <= other }))
    const { found, simulated } = await holding([true, true, true, true, true], chain)
    expect(found).toEqual([0, 1, 2, 3, 4])
    expect(simulated).toEqual([2, 0, 1, 3, 4])
  })
})
