/** Powers with the same digits on every machine, of logarithms and exponentials that have them. Squares are products already, in every engine. */
import { exp, ln } from './logarithms.js'

/** `x`, 0 or more, to the power of `y`. Off by up to about |y ln x| / 1e16 of itself. */
export const power = (x: number, y: number): number => (y === 0 ? 1 : exp(y * ln(x)))

/** The number whose third power is `x`: a first guess, and a step of Newton's that leaves rounding alone. */
export function cubeRoot(x: number): number {
  if (x === 0 || !Number.isFinite(x)) return x
  const guess = exp(ln(Math.abs(x)) / 3)
  const root = guess - (guess - Math.abs(x) / (guess * guess)) / 3
  return x < 0 ? -root : root
}
