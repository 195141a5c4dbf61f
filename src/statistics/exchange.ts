/** Pairs of which either might have been the other: how often exchanging them at random makes as much of a difference as they show. No law is asked for. */
import { mean, sum } from 'simple-statistics'

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
