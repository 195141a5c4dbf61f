/** What share of the times of a fitted law is over a length, and how well that is known: what a log leaves out is reckoned by it. */
import type { Fit } from './fit.js'
import { distributionOf, type FittedLaw } from './law.js'

/** A share of times, and the variance of its logarithm. */
export interface ShareOver {
  share: number
  logVariance: number
}

/** Of a standard error: small enough that the curve is straight, and large enough to keep digits. */
const step = 1e-3

/** The share over `from`, s, with the variance that its parameters give it to first order (delta method). */
export function shareOver({ law, parameters, covariance }: Fit, from: number): ShareOver {
  const logOf = (of: FittedLaw) => distributionOf(of).logAbove(from)
  const gradient = parameters.map(({ name, value, se }) => {
    const by = Number.isFinite(se) && se > 0 ? step * se : 0
    // towards the inside: a share may lie at the edge
    return by === 0
      ? 0
      : (logOf(withParameter(law, name, value + by)) - logOf(withParameter(law, name, value - by))) / (2 * by)
  })
  const logVariance = gradient.reduce(
    (sum, one, row) =>
      sum + gradient.reduce((inner, other, column) => inner + one * other * covariance[row]![column]!, 0),
    0,
  )
  return { share: Math.exp(logOf(law)), logVariance: Math.max(0, logVariance) }
}

/** The law with another value of the parameter `name`, which may be one of a part, `first.location`. */
function withParameter(law: FittedLaw, name: string, value: number): FittedLaw {
  const [part, inner] = name.split('.') as [string, string?]
  if (inner === undefined) return { ...law, [part]: value }
  return { ...law, [part]: { ...(law as unknown as Record<string, object>)[part], [inner]: value } }
}

/**
 * As how many events those of a log count for the rate of all, where each that was seen stands for 1 / share of them: as many as would know the rate
 * as well. `events` where the share is known.
 */
export const countFor = (events: number, { logVariance }: ShareOver): number =>
  events === 0 ? 0 : Math.max(1, Math.round(1 / (1 / events + logVariance)))
