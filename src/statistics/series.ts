/** The figure of a measure as shifts come: a mean, or a ratio as total over total. */

/** Numbers of a measure shift by shift. */
export class Series {
  private readonly values: number[] = []
  /** What each is divided by; 1 where the measure is a mean. */
  private readonly overs: number[] = []
  private total = 0
  private totalOver = 0

  add(value: number, over: number): void {
    this.values.push(value)
    this.overs.push(over)
    this.total += value
    this.totalOver += over
  }

  /** Total over total; NaN where there is nothing to divide by. */
  get figure(): number {
    return this.totalOver === 0 ? Number.NaN : this.total / this.totalOver
  }

  /**
   * Shifts as numbers whose mean is the figure: of a ratio the residuals value - ratio x over, divided by the mean of `over`. Cochran, Sampling
   * Techniques (1977), ch. 6 (from memory). The ratio moves as shifts come, and all of them with it.
   */
  linear(): number[] {
    const { figure, values, overs } = this
    const scale = values.length / this.totalOver
    return values.map((value, shift) => figure + (value - figure * overs[shift]!) * scale)
  }

  /** In how many shifts the numbers are not those of the other one, which has as many. */
  differing(other: Series): number {
    let count = 0
    for (const [shift, value] of this.values.entries())
      if (value !== other.values[shift] || this.overs[shift] !== other.overs[shift]) count++
    return count
  }
}
