/**
 * Plans that fill the space of several factors: Latin hypercubes, of which the best of some tries is taken. McKay, Beckman & Conover,
 * Technometrics 21 (1979) 239-245; the largest least distance: Johnson, Moore & Ylvisaker, Journal of Statistical
 * Planning and Inference 26 (1990) 131-148 (both from memory).
 */
import { Stream } from '../../engine/stream.js'

/** Hypercubes that are drawn; more change little. Project rule. */
export const planTries = 200

/**
 * `size` points in the unit cube of `factors`, a row a point. Of each factor one value lies in each stratum of 1 / size, anywhere
 * within it; of all tries the plan is taken whose two nearest points are farthest apart.
 */
export function latinHypercube(seed: string, size: number, factors: number, tries = planTries): number[][] {
  let best: number[][] = []
  let apart = -1
  const stream = new Stream('sweep', 'plan')
  for (let attempt = 1; attempt <= tries; attempt++) {
    stream.begin(seed, attempt)
    const columns = Array.from({ length: factors }, () =>
      shuffled(size, stream).map((stratum) => (stratum + stream.next()) / size),
    )
    const plan = Array.from({ length: size }, (_, point) => columns.map((column) => column[point]!))
    const least = leastDistance(plan)
    if (least > apart) {
      best = plan
      apart = least
    }
  }
  return best
}

/** Squared distance of the two nearest points; infinite of fewer than two. */
export function leastDistance(plan: readonly (readonly number[])[]): number {
  let least = Infinity
  for (const [index, point] of plan.entries())
    for (const other of plan.slice(index + 1)) {
      const distance = point.reduce((sum, value, factor) => sum + (value - other[factor]!) ** 2, 0)
      if (distance < least) least = distance
    }
  return least
}

/** The numbers from 0 to `size` - 1 in random order: Fisher and Yates; Knuth, The Art of Computer Programming 2, algorithm P. */
function shuffled(size: number, stream: Stream): number[] {
  const numbers = Array.from({ length: size }, (_, index) => index)
  for (let left = size - 1; left > 0; left--) {
    const taken = Math.floor(stream.next() * (left + 1))
    ;[numbers[left], numbers[taken]] = [numbers[taken]!, numbers[left]!]
  }
  return numbers
}
