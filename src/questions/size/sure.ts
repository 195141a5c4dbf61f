/** Which designs keep their promises in how many draws of the inputs, and the cheapest that does so in the share that is asked for. */
import type { KeptDraws } from '../../statistics/kept-draws.js'
import { riskOf, type Search, type Tried, tryOne } from './search.js'

/** What came of a draw, from 1, of a design. */
export type VerdictOf = (design: number, draw: number) => Promise<Tried['verdict']>

export const nothingDrawn: KeptDraws = { kept: 0, missed: 0, open: 0 }

const drawsRun = ({ kept, missed, open }: KeptDraws): number => kept + missed + open

/** Draws that are not known to keep; one that was not told is none that keeps. */
const notKept = ({ missed, open }: KeptDraws): number => missed + open

const counters = { accepted: 'kept', refused: 'missed', undecided: 'open' } as const satisfies Record<
  Tried['verdict'],
  keyof KeptDraws
>

/** Runs draws of a design in their order, on from `before`, until all are run or more than `allowed` are not kept. */
export async function keptIn(
  design: number,
  draws: number,
  verdictOf: VerdictOf,
  allowed = draws,
  before = nothingDrawn,
): Promise<KeptDraws> {
  const counted = { ...before }
  while (drawsRun(counted) < draws && notKept(counted) <= allowed)
    counted[counters[await verdictOf(design, drawsRun(counted) + 1)]]++
  return counted
}

/** Fewest of so many draws that are the share. A hair is taken off: 90 % of 60 are 54, whatever their product is in binary. */
export const leastKept = (share: number, draws: number): number => Math.ceil(share * draws - 1e-9)

/** What was found of the designs that keep their promises with the inputs as they are given. */
export interface Surest {
  /** The cheapest that keeps them in as many draws as are asked for; null where none does. */
  pick: number | null
  /** Without one that of most draws kept, of equals the cheapest; null where none was drawn. */
  surest: number | null
  /** Of each that was drawn. */
  kept: Map<number, KeptDraws>
}

/**
 * Goes up the designs, `holding` in order of cost, until one keeps its promises in the share of the draws. A design of which so many
 * draws are not kept that the rest cannot make up for it is left at once; one that is below such a one is not drawn, for it has less
 * of what never hurts. Where none is left over, those that were left are drawn on, those first that lasted longest, each
 * until it is passed by the surest or passes it: which is the surest over all draws is known for certain then.
 */
export async function findSure(
  holding: AsyncIterable<number>,
  {
    share,
    draws,
    isBelow,
  }: { share: number; draws: number; isBelow: (design: number, other: number) => boolean },
  verdictOf: VerdictOf,
): Promise<Surest> {
  const kept = new Map<number, KeptDraws>()
  const allowed = draws - leastKept(share, draws)
  for await (const design of holding) {
    if ([...kept.keys()].some((short) => isBelow(design, short))) continue
    const counted = await keptIn(design, draws, verdictOf, allowed)
    kept.set(design, counted)
    if (notKept(counted) <= allowed) return { pick: design, surest: null, kept }
  }
  return { pick: null, surest: await surestOf(kept, draws, verdictOf), kept }
}

/** The surest over all draws; what is run for it is counted in `kept`. */
async function surestOf(
  kept: Map<number, KeptDraws>,
  draws: number,
  verdictOf: VerdictOf,
): Promise<number | null> {
  const lasting = [...kept].sort(([one, a], [other, b]) => drawsRun(b) - drawsRun(a) || one - other)
  let surest: number | null = null
  for (const [design, before] of lasting) {
    const best = surest === null ? null : kept.get(surest)!
    // of as many the cheaper one is the surest
    const isCheaper = surest !== null && design < surest
    const allowed = best === null ? draws : draws - best.kept - (isCheaper ? 0 : 1)
    const counted = await keptIn(design, draws, verdictOf, allowed, before)
    kept.set(design, counted)
    if (drawsRun(counted) === draws && notKept(counted) <= allowed) surest = design
  }
  return surest
}

/**
 * The designs that keep their promises with the inputs as they are given, from the pick of a search on up in order of cost, one after the other,
 * so that no more are simulated than are asked for. What the search found is taken over; the others are ruled out or simulated as it does
 * it, with the risks that come next in its row, and added to `tried`.
 */
export async function* holdingFrom(pick: number, tried: Tried[], search: Search): AsyncGenerator<number> {
  const { candidates, goal, known, onTried } = search
  const refusal = (design: number): Tried['without'] => {
    const { isBelow, ruledOut } = candidates[design]!
    const worse = tried.find(
      ({ design: other, verdict, without }) => verdict === 'refused' && without === null && isBelow(other),
    )
    if (worse) return { worseThan: worse.design }
    const reason = ruledOut()
    return reason === null ? null : { reason }
  }
  const find = async (design: number): Promise<Tried> => {
    const without = refusal(design)
    if (without) return { design, verdict: 'refused', without, figures: [], shifts: 0 }
    const simulated = tried.filter((each) => each.without === null).length + 1
    return known(design) ?? (await tryOne(design, search, riskOf(simulated, goal)))
  }
  for (let design = pick; design < candidates.length; design++) {
    let found = tried.find((each) => each.design === design)
    if (!found) {
      found = await find(design)
      tried.push(found)
      onTried(found)
    }
    if (found.verdict === 'accepted') yield design
  }
}
