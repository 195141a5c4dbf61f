/** Times of stops by mean and spread alone: how many are longer than a time, and by how much. */
import exp from '@stdlib/math-base-special-exp'

/** A part of the stops of a kind: a constant time and an exponential one after it, s. */
export interface Shape {
  weight: number
  constant: number
  tail: number
}

/**
 * Shapes with the same mean and standard deviation: a constant and an exponential part up to a coefficient of variation of 1, above it
 * two exponential laws with balanced means (Tijms, Stochastic Models (1994), appendix B; from memory).
 */
export function shapesOf(mean: number, cv: number): Shape[] {
  if (cv <= 1) return [{ weight: 1, constant: mean * (1 - cv), tail: mean * cv }]
  const skew = Math.sqrt((cv * cv - 1) / (cv * cv + 1))
  return [1 + skew, 1 - skew].map((part) => ({ weight: part / 2, constant: 0, tail: mean / part }))
}

const over = (shapes: readonly Shape[], of: (shape: Shape) => number): number =>
  shapes.reduce((total, shape) => total + shape.weight * of(shape), 0)

/** Share of the stops that are longer than `time`. */
export const longer = (time: number, shapes: readonly Shape[]): number =>
  over(shapes, ({ constant, tail }) => (time < constant ? 1 : tail > 0 ? exp((constant - time) / tail) : 0))
/** Mean of what stops are longer than `time`, those that are not counted as 0, s. */
export const excess = (time: number, shapes: readonly Shape[]): number =>
  over(shapes, ({ constant, tail }) =>
    time < constant ? constant - time + tail : tail > 0 ? tail * exp((constant - time) / tail) : 0,
  )
/** Mean square of the same, s2. */
export const excessSquared = (time: number, shapes: readonly Shape[]): number =>
  over(shapes, ({ constant, tail }) => {
    const left = constant - time
    if (left > 0) return left * left + 2 * left * tail + 2 * tail * tail
    return tail > 0 ? 2 * tail * tail * exp(left / tail) : 0
  })
