/**
 * Logarithms and exponentials with the same digits on every machine, so that a seed gives the same shifts in each version of Node and in a browser. Engines
 * are free to round these as they like in the last digit; those of the library are made of sums and products alone, which the standard of floating-point
 * numbers fixes (IEEE 754). Where the machine's own are the same, they are taken: they are faster, and allocate nothing.
 */
import libraryExp from '@stdlib/math-base-special-exp'
import libraryExpm1 from '@stdlib/math-base-special-expm1'
import libraryLn from '@stdlib/math-base-special-ln'
import libraryLog1p from '@stdlib/math-base-special-log1p'

type OfOne = (x: number) => number

/** Where engines differ they do so for one value in ten: so many that are the same are no chance. */
const probes = 2000
const goldenRatio = (Math.sqrt(5) - 1) / 2

/** `machine` where it gives the library's digits all over (`low`, `high`), else the library's function. */
export function sameEverywhere(
  library: OfOne,
  machine: OfOne,
  [low, high]: readonly [number, number],
): OfOne {
  for (let probe = 1; probe <= probes; probe++) {
    const x = low + (high - low) * ((probe * goldenRatio) % 1)
    if (library(x) !== machine(x)) return library
  }
  return machine
}

/** Natural logarithm. */
export const ln: OfOne = sameEverywhere(libraryLn, Math.log, [0, 2])
/** e to the power of `x`. */
export const exp: OfOne = sameEverywhere(libraryExp, Math.exp, [-20, 20])
/** Natural logarithm of 1 + `x`. */
export const log1p: OfOne = sameEverywhere(libraryLog1p, Math.log1p, [-1, 1])
/** e to the power of `x`, less 1. */
export const expm1: OfOne = sameEverywhere(libraryExpm1, Math.expm1, [-2, 2])
