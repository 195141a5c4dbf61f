/** Money by hand: what a year of owning a machine costs. */

/**
 * Yearly amount that pays back `capital` over `years` at the yearly interest `rate`: the annuity
 * A = I i (1+i)^n / ((1+i)^n - 1); without interest I / n. Textbook formula of engineering economics.
 */
export function capitalRecovery(capital: number, rate: number, years: number): number {
  if (rate === 0) return capital / years
  return (capital * rate) / (1 - Math.exp(-years * Math.log1p(rate)))
}
