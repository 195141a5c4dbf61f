/** The top of a smooth function of a few numbers, by Newton with damping: Levenberg and Marquardt; Nocedal & Wright, Numerical Optimization, ch. 10 (from memory). */
import { dot } from '../columns.js'
import { type Matrix, solved, triangleOf } from './cholesky.js'

/** A top: where, how high, and the negative second derivatives there, which are positive definite. */
export interface Top {
  at: readonly number[]
  value: number
  information: Matrix
}

/** Of differences; arguments are scaled so that the function bends within about 1. With two step lengths the error is of the fourth order. */
const step = 0.003
const rounds = 100
const farthest = 1
/** Rise that the quadratic through the place promises, below which it is the top: far below the digits of a log-likelihood. */
const arrived = 1e-12
/** Rise of a step, in logarithms of likelihood, below which a place that does not bend down is a plateau. */
const level = 1e-4
/** Damping from which no step is taken to lead up. */
const hopeless = 1e10

/**
 * The top of `f` that is reached from `start`, where it has to be finite; null where it has none: it rises to an end without one, or is level
 * there. `f` may be -Infinity or NaN beyond its borders. Stops after a fixed number of rounds, whatever `f` is.
 */
export function maximise(f: (x: readonly number[]) => number, start: readonly number[]): Top | null {
  let [at, value] = [start, f(start)]
  let [damping, rise] = [0, Number.POSITIVE_INFINITY]
  for (let round = 0; round < rounds && Number.isFinite(value); round++) {
    const { gradient, information } = bendAt(f, at, value)
    const { newton, promised } = quadraticTop(gradient, information)
    if (promised < arrived) return { at: at.map((each, index) => each + newton[index]!), value, information }
    if (Number.isNaN(promised) && rise < level) return null
    const next = upward(f, at, value, gradient, information, damping)
    // where no step leads up by a digit, it is the top as well as the digits of `f` can tell
    if (next === null)
      return promised < 1e-9 * Math.max(1, Math.abs(value)) ? { at, value, information } : null
    rise = next.value - value
    ;({ at, value, damping } = next)
  }
  return null
}

/** The step to the top of the quadratic through a place, and how much higher it is: NaN where that has none. */
function quadraticTop(gradient: readonly number[], information: Matrix) {
  const triangle = triangleOf(information)
  const newton = triangle === null ? [] : solved(triangle, gradient)
  return { newton, promised: triangle === null ? Number.NaN : dot(gradient, newton) / 2 }
}

/** A step that leads up: Newton's, held back more and more until it does; null where none does. */
function upward(
  f: (x: readonly number[]) => number,
  at: readonly number[],
  value: number,
  gradient: readonly number[],
  information: Matrix,
  from: number,
): { at: readonly number[]; value: number; damping: number } | null {
  const size = Math.max(...information.map((row, index) => Math.abs(row[index]!)), 1e-300)
  for (let damping = from; damping < hopeless; damping = Math.max(10 * damping, 1e-3)) {
    const held = information.map((row, i) => row.map((each, j) => each + (i === j ? damping * size : 0)))
    const triangle = triangleOf(held)
    if (triangle === null) continue
    const by = solved(triangle, gradient)
    const shorter = Math.min(1, farthest / Math.max(...by.map(Math.abs)))
    const next = at.map((each, index) => each + shorter * by[index]!)
    const reached = f(next)
    if (reached > value) return { at: next, value: reached, damping: damping < 1e-3 ? 0 : damping / 10 }
  }
  return null
}

/** Slopes and negative second derivatives of `f` at a place, by differences of two lengths, extrapolated (Richardson). */
function bendAt(f: (x: readonly number[]) => number, at: readonly number[], value: number) {
  const gradient: number[] = at.map(() => 0)
  const information: number[][] = at.map(() => at.map(() => 0))
  const moved = (i: number, by: number, j: number, also: number) => {
    const x = [...at]
    x[i]! += by
    x[j]! += also
    return f(x)
  }
  for (const [length, share] of [
    [step, 4 / 3],
    [2 * step, -1 / 3],
  ] as const)
    for (let i = 0; i < at.length; i++) {
      const [up, down] = [moved(i, length, i, 0), moved(i, -length, i, 0)]
      gradient[i]! += (share * (up - down)) / (2 * length)
      information[i]![i]! -= (share * (up - 2 * value + down)) / length ** 2
      for (let j = 0; j < i; j++) {
        const same = moved(i, length, j, length) + moved(i, -length, j, -length)
        const apart = moved(i, length, j, -length) + moved(i, -length, j, length)
        const bend = (share * (same - apart)) / (4 * length ** 2)
        information[i]![j]! -= bend
        information[j]![i]! -= bend
      }
    }
  return { gradient, information }
}
