/** Have model and plant one mean and one spread? The regression of their difference on their sum asks both at once. */
import { mean, sum } from 'simple-statistics'
import { regression } from './regression.js'
import { fAbove } from './tails.js'

export interface DifferenceOnSum {
  intercept: number
  slope: number
  f: number
  degreesOfFreedom: readonly [number, number]
  p: number
}

/**
 * Regresses D = model - plant on Q = model + plant over paired days: with one mean and one variance both intercept and slope are 0, and
 * F = ((sum D^2 - RSS) / 2) / (RSS / (n - 2)). Kleijnen, Bettonvil & van Groenendaal, Management Science 44 (1998) 812-819 (abstract). A
 * model's figure must be of one run: a mean of many varies less than a day does, and a perfect model would be refused. Null of fewer than three
 * pairs, and where the sums do not vary or the line leaves nothing.
 */
export function differenceOnSum(plant: readonly number[], model: readonly number[]): DifferenceOnSum | null {
  const n = plant.length
  const differences = model.map((value, day) => value - plant[day]!)
  const fitted = regression(
    model.map((value, day) => [value + plant[day]!]),
    differences,
    0.95,
  )
  if (!fitted || !(fitted.residual > 0)) return null
  const degrees = n - 2
  const left = fitted.residual ** 2 * degrees
  const f = Math.max(0, (sum(differences.map((each) => each * each)) - left) / 2 / (left / degrees))
  return {
    intercept: fitted.intercept,
    slope: fitted.slopes[0]!.mean,
    f,
    degreesOfFreedom: [2, degrees],
    p: fAbove(f, 2, degrees),
  }
}

/** Sums that are equal but for their rounding count as equal. */
const hair = 1e-9

/**
 * p of the F of `differenceOnSum`, by exchanging plant and model pair by pair, `draws` times at random: where both have one law, their difference D is as
 * likely to be -D, and their sum is the same. Exact for any law, by the count of those that reach it, itself among them; Fisher, The Design of
 * Experiments (1935), sec. 21, for pairs (from memory). The law of F wants normal days: of days that a breakdown now and then
 * makes far worse it refuses a perfect model much too often.
 */
export function pByExchange(
  plant: readonly number[],
  model: readonly number[],
  { draws, uniform }: { draws: number; uniform: () => number },
): number {
  const n = plant.length
  const differences = model.map((value, pair) => value - plant[pair]!)
  const sums = model.map((value, pair) => value + plant[pair]!)
  const centre = mean(sums)
  const offs = sums.map((value) => value - centre)
  const ofSums = sum(offs.map((off) => off * off))
  /** What intercept and slope explain of the squares of D, which exchanging leaves alone: F rises with it. */
  const explained = (sign: () => number): number => {
    let [straight, along] = [0, 0]
    for (let pair = 0; pair < n; pair++) {
      const difference = sign() * differences[pair]!
      straight += difference
      along += difference * offs[pair]!
    }
    return straight ** 2 / n + (ofSums > 0 ? along ** 2 / ofSums : 0)
  }
  const seen = explained(() => 1) * (1 - hair)
  let reached = 1
  for (let draw = 0; draw < draws; draw++)
    if (explained(() => (uniform() < 1 / 2 ? -1 : 1)) >= seen) reached++
  return reached / (draws + 1)
}
