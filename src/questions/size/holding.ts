/** The designs that keep their promises with the inputs as they are given, from the pick of a search on up in order of cost. */
import { type Candidate, type MoreOf, riskOf, type SizeGoal, type Tried, tryOne } from './search.js'

/**
 * Tells one after the other, so that no more are simulated than are asked for. What the search found is taken over; the others are
 * ruled out or simulated as it does it, with the risks that come next in its row, and added to `tried`.
 */
export async function* holdingFrom(
  pick: number,
  tried: Tried[],
  candidates: readonly Candidate[],
  goal: SizeGoal,
  more: MoreOf,
  known: (design: number) => Tried | null,
  onTried: (tried: Tried) => void,
): AsyncGenerator<number> {
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
    return known(design) ?? (await tryOne(design, goal, riskOf(simulated, goal), more))
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
