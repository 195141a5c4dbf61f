/** What a Markov chain in continuous time is expected to do from a known start: by uniformisation, and by Runge-Kutta steps. */

/** States are numbered from 0; `moves` tells where a state leads, and at what rate, 1/s. */
export interface Chain {
  states: number
  moves(state: number): readonly { to: number; rate: number }[]
}

/** What is earned a second in a state. */
export type Reward = (state: number) => number

/** Customers in a queue of one server from 0 up to `most`, beyond which nobody comes. Rates in 1/s. */
export const birthDeath = (arrivalRate: number, serviceRate: number, most: number): Chain => ({
  states: most + 1,
  moves: (state) => [
    ...(state < most ? [{ to: state + 1, rate: arrivalRate }] : []),
    ...(state > 0 ? [{ to: state - 1, rate: serviceRate }] : []),
  ],
})

/**
 * Expected reward at time `time`, s, and its expected integral from 0 to there, from state `start`. Uniformisation: the chain
 * moves, or stays, at the instants of a Poisson process as fast as its fastest state. Grassmann, European Journal of
 * Operational Research 1 (1977) 396-402 (from memory).
 */
export function expected(
  chain: Chain,
  start: number,
  reward: Reward,
  time: number,
): { atEnd: number; integral: number } {
  const { from, to, rate, leaving } = listed(chain)
  const fastest = Math.max(...leaving)
  const mean = fastest * time
  let shares = new Float64Array(chain.states)
  shares[start] = 1
  let logWeight = -mean
  let above = 1
  let [atEnd, integral] = [0, 0]
  // past ten standard deviations a Poisson number lies with less than 1e-20
  const last = Math.ceil(mean + 10 * Math.sqrt(mean) + 50)
  for (let step = 0; step <= last; step++) {
    if (step > 0) logWeight += Math.log(mean / step)
    const weight = Math.exp(logWeight)
    above = Math.max(0, above - weight)
    const earned = dot(shares, reward)
    atEnd += weight * earned
    integral += (above * earned) / fastest
    const next = shares.map((share, state) => share * (1 - leaving[state]! / fastest))
    for (let move = 0; move < from.length; move++)
      next[to[move]!]! += (shares[from[move]!]! * rate[move]!) / fastest
    shares = next
  }
  return { atEnd, integral }
}

export interface Moments {
  mean: number
  sd: number
  /** Third central moment over sd^3. */
  skewness: number
  /** Fourth central moment over sd^4, less 3. */
  excess: number
}

/**
 * Moments of the reward's average over time from 0 to `time`, from state `start`: the k-th moment of the integral, split by the
 * state at its end, grows by what moves bring and by k x reward x the moment before. Classical Runge-Kutta steps.
 */
export function momentsOfAverage(
  chain: Chain,
  start: number,
  reward: Reward,
  time: number,
  steps: number,
): Moments {
  const { from, to, rate, leaving } = listed(chain)
  const { states } = chain
  const earned = Float64Array.from({ length: states }, (_, state) => reward(state) / time)
  const orders = [0, 1, 2, 3, 4]
  const slope = (at: Float64Array): Float64Array => {
    const result = new Float64Array(at.length)
    for (const order of orders) {
      const base = order * states
      for (let state = 0; state < states; state++)
        result[base + state] =
          -leaving[state]! * at[base + state]! +
          (order > 0 ? order * earned[state]! * at[base - states + state]! : 0)
      for (let move = 0; move < from.length; move++)
        result[base + to[move]!]! += rate[move]! * at[base + from[move]!]!
    }
    return result
  }
  const step = time / steps
  let at = new Float64Array(orders.length * states)
  at[start] = 1
  const ahead = (along: Float64Array, by: number) => at.map((value, index) => value + by * along[index]!)
  for (let done = 0; done < steps; done++) {
    const first = slope(at)
    const second = slope(ahead(first, step / 2))
    const third = slope(ahead(second, step / 2))
    const fourth = slope(ahead(third, step))
    at = at.map(
      (value, index) =>
        value + (step / 6) * (first[index]! + 2 * second[index]! + 2 * third[index]! + fourth[index]!),
    )
  }
  const [, m1, m2, m3, m4] = orders.map((order) =>
    at.subarray(order * states, (order + 1) * states).reduce((sum, value) => sum + value, 0),
  ) as [number, number, number, number, number]
  const variance = m2 - m1 * m1
  const third = m3 - 3 * m1 * m2 + 2 * m1 ** 3
  const fourth = m4 - 4 * m1 * m3 + 6 * m1 * m1 * m2 - 3 * m1 ** 4
  return {
    mean: m1,
    sd: Math.sqrt(variance),
    skewness: third / variance ** 1.5,
    excess: fourth / variance ** 2 - 3,
  }
}

function listed(chain: Chain) {
  const moves = Array.from({ length: chain.states }, (_, from) =>
    chain.moves(from).map(({ to, rate }) => ({ from, to, rate })),
  ).flat()
  const leaving = new Float64Array(chain.states)
  for (const { from, rate } of moves) leaving[from]! += rate
  return {
    from: Int32Array.from(moves, (move) => move.from),
    to: Int32Array.from(moves, (move) => move.to),
    rate: Float64Array.from(moves, (move) => move.rate),
    leaving,
  }
}

function dot(shares: Float64Array, reward: Reward): number {
  let sum = 0
  for (let state = 0; state < shares.length; state++) sum += shares[state]! * reward(state)
  return sum
}
