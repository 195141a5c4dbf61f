/**
 * Control variates: the random numbers that arrivals drew in a shift have known means, so what output owes to luck with
 * them can be taken out. Lavenberg & Welch, Management Science 27 (1981) 322-335; Law, Simulation Modeling and
 * Analysis, ch. 11 (both from memory).
 */

/** What the controls explain of one row of values. */
interface Explained {
  /** What of the mean of the values is luck with the controls. */
  shift: number
  /** Standard deviation of the corrected mean. */
  deviation: number
  degreesOfFreedom: number
  /** What of each value they do not explain. */
  rest: number[]
}

/**
 * Shifts from which controls are used. What they leave of a figure is often skewed where the figure itself was not: of 30
 * shifts 95 % intervals covered 92 to 93 %, and of 50 shifts that of the cases that arrived, of which they leave a single
 * interval, still 92.8 %.
 */
export const leastControlled = 100

/** Spread of a control, as a share of its size, below which it is rounding and no control. */
const hair = 1e-9

/**
 * Least squares on the controls, which have mean 0 in truth: the estimate is the intercept of
 * `value = intercept + slopes x controls`, its variance that of an intercept.
 */
export class ControlBasis {
  private constructor(
    /** Controls less their means, made orthogonal and of length 1: a column of n numbers each. */
    private readonly columns: readonly Float64Array[],
    /** Mean of each control in the coordinates of those columns. */
    private readonly means: readonly number[],
  ) {}

  /** The basis of controls of one number of columns, a row a shift; null where they are few or say nothing. */
  static of(rows: readonly ArrayLike<number>[]): ControlBasis | null {
    const n = rows.length
    if (n < leastControlled) return null
    const columns: Float64Array[] = []
    const means: number[] = []
    for (let control = 0; control < rows[0]!.length; control++) {
      const column = Float64Array.from(rows, (row) => row[control]!)
      let average = sum(column) / n
      const size = Math.sqrt(dot(column, column))
      for (let index = 0; index < n; index++) column[index]! -= average
      for (const [index, earlier] of columns.entries()) {
        const along = dot(column, earlier)
        for (let row = 0; row < n; row++) column[row]! -= along * earlier[row]!
        average -= along * means[index]!
      }
      const length = Math.sqrt(dot(column, column))
      if (!(length > hair * size)) continue
      columns.push(column.map((value) => value / length))
      means.push(average / length)
    }
    return columns.length === 0 ? null : new ControlBasis(columns, means)
  }

  /** What they explain of `values`, as many as there were rows. */
  explain(values: readonly number[]): Explained {
    const n = values.length
    const average = sum(values) / n
    const rest = Float64Array.from(values, (value) => value - average)
    let shift = 0
    let leverage = 1 / n
    for (const [index, column] of this.columns.entries()) {
      const slope = dot(rest, column)
      const at = this.means[index]!
      for (let row = 0; row < n; row++) rest[row]! -= slope * column[row]!
      shift += slope * at
      leverage += at * at
    }
    const degreesOfFreedom = n - 1 - this.columns.length
    return {
      shift,
      deviation: Math.sqrt((dot(rest, rest) / degreesOfFreedom) * leverage),
      degreesOfFreedom,
      rest: [...rest],
    }
  }
}

function sum(values: ArrayLike<number>): number {
  let total = 0
  for (let index = 0; index < values.length; index++) total += values[index]!
  return total
}

function dot(a: ArrayLike<number>, b: ArrayLike<number>): number {
  let total = 0
  for (let index = 0; index < a.length; index++) total += a[index]! * b[index]!
  return total
}
