/** Have model and plant one mean and one spread? The regression of their difference on their sum asks both at once. */
import { sum } from 'simple-statistics'
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
