/** Markov chains of few states, by their rows: chances after a step, after many, and in the long run. */

/** A row for each state: the chance of each state after the next step. */
export type Chain = Float64Array[]

/** The chance of being there: all of it at `state`. */
export function surely(state: number, states: number): Float64Array {
  const chances = new Float64Array(states)
  chances[state] = 1
  return chances
}

/** Chances after a step of the chain. */
export function after(chances: Float64Array, chain: Chain): Float64Array {
  const next = new Float64Array(chances.length)
  for (let from = 0; from < chances.length; from++) {
    const chance = chances[from]!
    if (chance === 0) continue
    const row = chain[from]!
    for (let to = 0; to < row.length; to++) next[to]! += chance * row[to]!
  }
  return next
}

/** A step of the first and then one of the second. */
export const inTurn = (first: Chain, second: Chain): Chain => first.map((row) => after(row, second))

/** `count` steps in one; 0 stays where it is. */
export function steps(chain: Chain, count: number): Chain {
  if (count === 0) return chain.map((_, state) => surely(state, chain.length))
  const half = steps(chain, Math.floor(count / 2))
  const even = inTurn(half, half)
  return count % 2 === 1 ? inTurn(even, chain) : even
}

/** A chance below this is rounding. */
const none = 1e-15

/**
 * Chances in the long run, of a chain in which every state leads to the last. By elimination without subtraction, from the last state down as far
 * as states lead further down; those below are left for good. Grassmann, Taksar & Heyman, Operations Research 33 (1985), from memory.
 */
export function stationary(chain: Chain): Float64Array {
  const rows = chain.map((row) => row.slice())
  let lowest = rows.length - 1
  while (lowest > 0 && eliminate(rows, lowest)) lowest--
  const chances = new Float64Array(rows.length)
  chances[lowest] = 1
  let total = 1
  for (let state = lowest + 1; state < rows.length; state++) {
    for (let from = lowest; from < state; from++) chances[state]! += chances[from]! * rows[from]![state]!
    total += chances[state]!
  }
  return chances.map((chance) => chance / total)
}

/** Takes `state` out of the states below it, whose chances go on past it; false, and nothing done, where it leads to none of them. */
function eliminate(rows: Chain, state: number): boolean {
  const row = rows[state]!
  let away = 0
  for (let to = 0; to < state; to++) away += row[to]!
  if (away < none) return false
  for (let from = 0; from < state; from++) {
    const share = rows[from]![state]! / away
    rows[from]![state] = share
    if (share === 0) continue
    for (let to = 0; to < state; to++) rows[from]![to]! += share * row[to]!
  }
  return true
}
