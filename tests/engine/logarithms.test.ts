/** Logarithms and exponentials: the library's digits, whichever function gives them. */
import libraryExp from '@stdlib/math-base-special-exp'
import libraryExpm1 from '@stdlib/math-base-special-expm1'
import libraryLn from '@stdlib/math-base-special-ln'
import libraryLog1p from '@stdlib/math-base-special-log1p'
import { expect, it } from 'vitest'
import { exp, expm1, ln, log1p, sameEverywhere } from '../../src/engine/logarithms.js'
import { Stream } from '../../src/engine/stream.js'

it('are those of the library to the last digit, over 20,000 values of each that the probes did not see', () => {
  const stream = new Stream('logarithms', 'test')
  stream.begin('same digits', 1)
  const parting: string[] = []
  for (let k = 0; k < 20_000; k++) {
    const u = stream.next()
    if (ln(u) !== libraryLn(u)) parting.push(`ln ${u}`)
    if (ln(u * 1e6) !== libraryLn(u * 1e6)) parting.push(`ln ${u * 1e6}`)
    if (exp(u * 80 - 40) !== libraryExp(u * 80 - 40)) parting.push(`exp ${u * 80 - 40}`)
    if (log1p(-u) !== libraryLog1p(-u)) parting.push(`log1p ${-u}`)
    if (expm1(u * 10 - 5) !== libraryExpm1(u * 10 - 5)) parting.push(`expm1 ${u * 10 - 5}`)
  }
  expect(parting).toEqual([])
})

it('takes the machine at its word only where it gives the same digits', () => {
  const alike = (x: number) => libraryLn(x)
  const sloppy = (x: number) => libraryLn(x) * (1 + (x > 1.9 ? Number.EPSILON : 0))
  expect(sameEverywhere(libraryLn, alike, [0, 2])).toBe(alike)
  expect(sameEverywhere(libraryLn, sloppy, [0, 2])).toBe(libraryLn)
})

it('are the logarithms and exponentials of the textbooks', () => {
  expect([ln(1), exp(0), log1p(0), expm1(0)]).toEqual([0, 1, 0, 0])
  expect(ln(10)).toBeCloseTo(Math.LN10, 15)
  expect(exp(1)).toBeCloseTo(Math.E, 15)
  expect([ln(0), exp(-800), log1p(-1)]).toEqual([Number.NEGATIVE_INFINITY, 0, Number.NEGATIVE_INFINITY])
})
