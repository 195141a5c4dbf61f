/** Laws about a mixture, in coordinates in which its likelihood is nearly round. */
import type { Mixture } from './expectation.js'

/** Laws about a mixture: logit of the share, then location in spreads and logarithm of the spread of either part. */
export function lawsNear({ share, first, second }: Mixture): (x: readonly number[]) => Mixture {
  const odds = share / (1 - share)
  const part = (of: Mixture['first'], along: number, wider: number): Mixture['first'] => ({
    family: 'lognormal',
    location: of.location + of.spread * along,
    spread: of.spread * Math.exp(wider),
  })
  return (x) => ({
    family: 'mixture',
    share: 1 / (1 + 1 / (odds * Math.exp(x[0]!))),
    first: part(first, x[1]!, x[2]!),
    second: part(second, x[3]!, x[4]!),
  })
}
