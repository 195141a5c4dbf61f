/** Small symmetric systems by Cholesky's triangle: Golub & Van Loan, Matrix Computations, sec. 4.2 (from memory). */
import { dot } from '../columns.js'

export type Matrix = readonly (readonly number[])[]

/** Lower triangle L with L L' = `matrix`; null where it is not positive definite to its digits. */
export function triangleOf(matrix: Matrix): Matrix | null {
  const triangle: number[][] = []
  for (const [row, values] of matrix.entries()) {
    const line: number[] = []
    for (let column = 0; column < row; column++)
      line.push((values[column]! - dot(line, triangle[column]!)) / triangle[column]![column]!)
    const rest = values[row]! - dot(line, line)
    if (!(rest > 1e-12 * Math.abs(values[row]!))) return null
    line.push(Math.sqrt(rest))
    triangle.push(line)
  }
  return triangle
}

/** Solves L L' x = `right`. */
export function solved(triangle: Matrix, right: readonly number[]): number[] {
  const x = [...right]
  const n = x.length
  for (let row = 0; row < n; row++) {
    for (let column = 0; column < row; column++) x[row]! -= triangle[row]![column]! * x[column]!
    x[row]! /= triangle[row]![row]!
  }
  for (let row = n - 1; row >= 0; row--) {
    for (let below = row + 1; below < n; below++) x[row]! -= triangle[below]![row]! * x[below]!
    x[row]! /= triangle[row]![row]!
  }
  return x
}

/** The inverse of L L'. */
export const inverseOf = (triangle: Matrix): number[][] =>
  triangle.map((_, column) =>
    solved(
      triangle,
      triangle.map((_, row) => (row === column ? 1 : 0)),
    ),
  )
