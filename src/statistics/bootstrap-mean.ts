/** A mean and how far it may be off, without any law of what it is a mean of: the days drawn anew. */

/**
 * Interval of the mean of `values` at `confidence`, by `draws` samples of the same size with replacement and the quantiles of their means.
 * Kleijnen, Cheng & Bettonvil, Management Science 47 (2001) 1533-1538 (abstract), hold the mean difference to be the statistic whose
 * bootstrap keeps its error. Null of fewer than two values.
 */
export function bootstrapMean(
  values: readonly number[],
  { confidence, draws, uniform }: { confidence: number; draws: number; uniform: () => number },
): { low: number; high: number } | null {
  const n = values.length
  if (n < 2) return null
  const means = Float64Array.from({ length: draws }, () => {
    let sum = 0
    for (let index = 0; index < n; index++) sum += values[Math.floor(uniform() * n)]!
    return sum / n
  }).sort()
  const beyond = (1 - confidence) / 2
  const place = (share: number) => Math.min(draws - 1, Math.max(0, Math.floor(share * (draws + 1)) - 1))
  return { low: means[place(beyond)]!, high: means[draws - 1 - place(beyond)]! }
}
