/** The law of the k-sample Anderson-Darling statistic where all samples come from one law and no two values are alike. */
import { chiSquareAbove } from './tails.js'

/** Variance of A^2 for samples of these sizes, four values in all or more: Scholz & Stephens, J. Am. Stat. Assoc. 82 (1987) 918-924, eq. 4. */
export function andersonDarlingVariance(sizes: readonly number[]): number {
  const k = sizes.length
  const n = sizes.reduce((sum, size) => sum + size, 0)
  const H = sizes.reduce((sum, size) => sum + 1 / size, 0)
  let [h, g] = [0, 0]
  // h the sum of 1 / i to n - 1; g the sum of 1 / ((n - i) j) over i < j < n, whose inner sum is gathered from j = n - 1 down
  for (let i = n - 1; i >= 1; i--) {
    g += h / (n - i)
    h += 1 / i
  }
  const a = (4 * g - 6) * (k - 1) + (10 - 6 * g) * H
  const b = (2 * g - 4) * k * k + 8 * h * k + (2 * g - 14 * h - 4) * H - 8 * h + 4 * g - 6
  const c = (6 * h + 2 * g - 2) * k * k + (4 * h - 4 * g + 6) * k + (2 * h - 6) * H + 4 * h
  const d = (2 * h + 6) * k * k - 4 * h * k
  return (((a * n + b) * n + c) * n + d) / ((n - 1) * (n - 2) * (n - 3))
}

/** Terms of the limit that are taken as they are; of the rest, the mean. */
const terms = 100

/**
 * Chance that A^2 less its mean `m`, one less than the number of samples, over its standard deviation is above `statistic`, in large samples. The limit is the sum over j of chi-square with m degrees of
 * freedom over j (j + 1) (Scholz & Stephens, sec. 3), whose tail is found by inversion of its characteristic function (Imhof, Biometrika 48
 * (1961) 419-426, with the midpoint steps of Davies, Biometrika 60 (1973) 415-417; from memory), and far out, where a difference from 1/2
 * would have no digits left, by its largest term: Zolotarev, Theory of Probability 6 (1961) 201-204 (from memory); the
 * product of 1 - 2 / (j (j + 1)) over j from 2 on is 1/3.
 */
export function andersonDarlingAbove(statistic: number, m: number): number {
  const x = m + statistic * Math.sqrt((2 * m * (Math.PI ** 2 - 9)) / 3)
  if (x <= 0) return 1
  const farOut = Math.min(1, 3 ** (m / 2) * chiSquareAbove(2 * x, m))
  if (x > 12 + 4 * m) return farOut
  const found = inverted(x - m / (terms + 1), m)
  // the sum of some thousand steps is good to some 1e-12
  return found < 1e-8 ? farOut : Math.min(1, found)
}

/** P(sum > x) = 1/2 + 1/pi integral of sin(angle) / (u size) du. */
function inverted(x: number, m: number): number {
  const step = 1 / (m + 2)
  let [sum, size] = [0, 1]
  for (let index = 0; size < 1e14; index++) {
    const u = (index + 0.5) * step
    let [angle, logSize] = [-x * u, 0]
    for (let j = 1; j <= terms; j++) {
      const part = u / (j * (j + 1))
      angle += m * Math.atan(part)
      logSize += m * Math.log1p(part * part)
    }
    size = Math.exp(logSize / 4)
    sum += Math.sin(angle / 2) / (u * size)
  }
  return 0.5 + (sum * step) / Math.PI
}
