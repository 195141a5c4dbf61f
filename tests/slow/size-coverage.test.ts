/** How often the interval of the design that a sizing picks covers what is known, over many searches among designs of a known law. */
import { describe, expect, it } from 'vitest'
import type { Condition } from '../../src/answers/condition.js'
import type { Interval } from '../../src/answers/difference-figure.js'
import { Stream } from '../../src/engine/stream.js'
import type { ShiftResult } from '../../src/line/line.js'
import { freshShifts } from '../../src/questions/size/judged-afresh.js'
import { promiseFigure } from '../../src/questions/size/promise-figure.js'
import { findCheapest, type Tried } from '../../src/questions/size/search.js'
import { shareEstimate } from '../../src/statistics/estimate.js'
import { brought, condition, shiftOf } from '../questions/searches.js'
import { confidence, seedOf } from './studies.js'

/** Of so many a share of 95 % has a standard error of 0.28 %. */
const runs = 6000
const most = 2000

/** Designs, in order of cost, by what they keep in the long run, and what a shift is of one that draws `uniform`. */
interface Known {
  truths: readonly number[]
  promise: Condition
  figure: (truth: number, uniform: number) => number
}

/** Uniform numbers of one study: those of a search in the order of its shifts, and others, from a stream of their own, for fresh ones. */
function uniformsOf(run: number, part: 'search' | 'fresh'): (index: number) => number {
  const stream = new Stream('line', part)
  stream.begin(seedOf(run), 1)
  const drawn: number[] = []
  return (index) => {
    while (drawn.length <= index) drawn.push(stream.next())
    return drawn[index]!
  }
}

/** Searches among them; all see the same numbers, one a shift. Tells what came of the pick, and its figure on fresh shifts. */
async function searchOnce(
  { truths, promise, figure }: Known,
  run: number,
): Promise<{ truth: number; own: Tried; fresh: Interval } | null> {
  const [ofSearch, ofFresh] = [uniformsOf(run, 'search'), uniformsOf(run, 'fresh')]
  let last = { design: -1, shifts: [] as ShiftResult[] }
  const found = await findCheapest({
    candidates: truths.map(() => ({ ruledOut: () => null, isBelow: () => false })),
    goal: { promises: () => [promise], confidence, most, isFull: false },
    more: async (design, count, isEnough) => {
      if (last.design !== design) last = { design, shifts: [] }
      return brought(last.shifts, count, isEnough, (shift) =>
        shiftOf([figure(truths[design]!, ofSearch(shift - 1))]),
      )
    },
    known: () => null,
    onTried: () => {},
  })
  if (found!.pick === null) return null
  const truth = truths[found!.pick]!
  const own = found!.tried.find(({ design }) => design === found!.pick)!
  const fresh = Array.from({ length: freshShifts(own, most).count }, (_, index) =>
    shiftOf([figure(truth, ofFresh(index))]),
  )
  return { truth, own, fresh: promiseFigure(promise, fresh, { confidence, exposure: 1 }) }
}

const covers = ({ low, high }: { low: number | null; high: number | null }, truth: number): boolean =>
  low !== null && high !== null && low <= truth && truth <= high

/** Shares of the picks of which the fresh interval covers, and of which one over the shifts of the search itself would. */
async function coverage(known: Known, ownInterval: (own: Tried) => { low: number; high: number } | null) {
  let [picks, fresh, before, shifts] = [0, 0, 0, 0]
  for (let run = 1; run <= runs; run++) {
    const found = await searchOnce(known, run)
    if (found === null) continue
    picks++
    shifts += found.own.shifts
    if (covers(found.fresh, found.truth)) fresh++
    const own = ownInterval(found.own)
    if (own && covers(own, found.truth)) before++
  }
  const of = { picks, fresh: fresh / picks, before: before / picks, shifts: shifts / picks }
  console.log(JSON.stringify(of))
  return of
}

/** Wilson's interval over the shifts at which the test stopped, as if their number had been fixed before. */
const plainOf = ({ figures, shifts }: Tried): { low: number; high: number } => {
  const kept = Math.round(figures[0]!.mean! * shifts)
  return shareEstimate(
    Array.from({ length: shifts }, (_, shift) => (shift < kept ? 1 : 0)),
    confidence,
  )
}

describe(`the interval of the pick, of ${runs} searches`, () => {
  it('of a share of shifts: covers on fresh shifts, and would not over those of the search', async () => {
    const { picks, fresh, before } = await coverage(
      {
        truths: [0.78, 0.795, 0.81, 0.825, 0.84, 0.855, 0.87, 0.885, 0.9],
        promise: condition(0, { value: 0.85, near: 0.04 }),
        figure: (share, uniform) => (uniform < share ? 1 : 0),
      },
      plainOf,
    )
    expect(picks).toBeGreaterThan(0.95 * runs)
    expect(fresh).toBeGreaterThanOrEqual(0.93)
    expect(fresh).toBeLessThanOrEqual(0.97)
    expect(before).toBeLessThan(0.93)
  })

  it('of a mean: covers on fresh shifts', async () => {
    const { picks, fresh } = await coverage(
      {
        truths: [9.7, 9.8, 9.9, 9.95, 10, 10.05, 10.1, 10.3],
        promise: condition(0, { isShare: false, value: 10, near: 0.1 }),
        // exponential about its mean, of spread 1
        figure: (mean, uniform) => mean - 1 - Math.log(uniform),
      },
      () => null,
    )
    expect(picks).toBeGreaterThan(0.95 * runs)
    expect(fresh).toBeGreaterThanOrEqual(0.93)
    expect(fresh).toBeLessThanOrEqual(0.97)
  })
})
