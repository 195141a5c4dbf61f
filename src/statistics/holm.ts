/** Several tests on one record: p-values that may all be called out together. */

/**
 * For each p-value the least risk of the whole family at which that test would be called out, however the tests hang together: step-down, Holm,
 * Scandinavian Journal of Statistics 6 (1979) 65-70 (from memory). NaN, a test that could not be made, stays NaN and is no member of the family.
 */
export function holm(pValues: readonly number[]): number[] {
  const order = pValues
    .map((p, index) => ({ p, index }))
    .filter(({ p }) => !Number.isNaN(p))
    .sort((a, b) => a.p - b.p)
  const adjusted = pValues.map(() => Number.NaN)
  let least = 0
  for (const [rank, { p, index }] of order.entries()) {
    least = Math.min(1, Math.max(least, (order.length - rank) * p))
    adjusted[index] = least
  }
  return adjusted
}
