/** Where a search finds no design that holds: which one came nearest, and what it leaves to be widened. */
import { isQuantity, isRising } from '../../scenario/choices.js'
import { leastSpare, promiseFigure } from './promise-figure.js'
import type { Search, SizeGoal, Tried } from './search.js'

/** Designs that are weighed against each other as the nearest, and over how many shifts of each at least. */
export const weighed = { designs: 8, shifts: 200 }

/**
 * Of the designs that were simulated the one that came nearest to keeping all its promises: one that could not be told before one
 * that was refused, then the one with most to spare where it has least, then the cheapest. A design far off is refused after some
 * fifty shifts, which tell little of which is better: the nearest few are simulated further, over the same shifts as each other,
 * and stand in `tried` with these. `design` is null where none was simulated.
 */
export async function nearestOf(
  tried: readonly Tried[],
  { goal, more }: Pick<Search, 'goal' | 'more'>,
): Promise<{ design: number | null; tried: Tried[] }> {
  const { promises, confidence, most } = goal
  const simulated = tried.filter(({ without }) => without === null)
  const open = simulated.filter(({ verdict }) => verdict === 'undecided')
  const nearest = inOrder(open.length > 0 ? open : simulated, promises).slice(0, weighed.designs)
  const longer = new Map(nearest.map((each) => [each.design, each]))
  const least = nearest.length > 1 ? Math.min(most, weighed.shifts) : 0
  for (const each of nearest) {
    if (each.shifts >= least) continue
    const come = await more(each.design, least)
    const figures = promises(each.design).map((promise) => {
      const { mean } = promiseFigure(promise, come.slice(0, least), { confidence, exposure: 1 })
      return { mean, low: null, high: null }
    })
    longer.set(each.design, { ...each, figures, shifts: least })
  }
  return {
    design: inOrder([...longer.values()], promises)[0]?.design ?? null,
    tried: tried.map((each) => longer.get(each.design) ?? each),
  }
}

/** The nearest first, of equals the cheapest. */
function inOrder(tried: readonly Tried[], promises: SizeGoal['promises']): Tried[] {
  return tried
    .map((each) => ({ each, spare: leastSpare(each.figures, promises(each.design)) }))
    .sort((a, b) => (a.spare === b.spare ? a.each.design - b.each.design : b.spare - a.spare))
    .map(({ each }) => each)
}

/** A choice whose value in a design is the first or the last of those offered. */
export interface AtEnd {
  path: string
  value: unknown
  end: 'smallest' | 'largest'
}

/**
 * The choices of numbers that stand at an end of what is offered in a design: what was offered cuts them off, so a better one may lie
 * beyond. Of a choice of which more never hurts only the largest is such an end, and below one of something there is none. One value
 * alone is no range.
 */
export function endsOf(
  choices: readonly { path: string; values: readonly unknown[] }[],
  set: Readonly<Record<string, unknown>>,
  rising: readonly string[],
): AtEnd[] {
  return choices.flatMap(({ path, values }): AtEnd[] => {
    if (values.length < 2 || !values.every(isQuantity)) return []
    const falling = [...values].reverse()
    const inOrder = isRising(values) ? values : isRising(falling) ? falling : []
    const value = set[path]
    const isAt = (end: unknown) => end !== undefined && JSON.stringify(end) === JSON.stringify(value)
    if (isAt(inOrder.at(-1))) return [{ path, value, end: 'largest' }]
    return isAt(inOrder[0]) && value !== 1 && !rising.includes(path) ? [{ path, value, end: 'smallest' }] : []
  })
}
