/** Powers and cube roots by hand, and against those of the machine, which rounds its own in its own way. */
import { expect, it } from 'vitest'
import { cubeRoot, power } from '../../src/engine/powers.js'
import { Stream } from '../../src/engine/stream.js'

it('are those of arithmetic', () => {
  expect(power(2, 10)).toBeCloseTo(1024, 10)
  expect(power(0.25, 0.5)).toBeCloseTo(0.5, 15)
  // (2 x 0.025)^(-2 / 4): one over the root of a twentieth
  expect(power(0.05, -0.5)).toBeCloseTo(Math.sqrt(20), 14)
  expect([power(0, 2), power(7, 0), power(0, 0), power(1, 1e6)]).toEqual([0, 1, 1, 1])
  expect([cubeRoot(0), cubeRoot(1), cubeRoot(-Infinity)]).toEqual([0, 1, -Infinity])
  expect(cubeRoot(27)).toBeCloseTo(3, 15)
  expect(cubeRoot(-0.008)).toBeCloseTo(-0.2, 15)
  expect(cubeRoot(Number.NaN)).toBeNaN()
})

it('lie within rounding of those of the machine, over 20,000 values of each', () => {
  const stream = new Stream('powers', 'test')
  stream.begin('near the machine', 1)
  // a power is off by the rounding of y ln x, here below 20, of the exponential, and of the machine's own
  const [ofPower, ofRoot] = [32 * Number.EPSILON, 2 * Number.EPSILON]
  const parting: string[] = []
  for (let k = 0; k < 20_000; k++) {
    const [x, y] = [stream.next() * 10, stream.next() * 16 - 8]
    if (Math.abs(power(x, y) / x ** y - 1) > ofPower && Math.abs(y * Math.log(x)) < 20)
      parting.push(`${x} ** ${y}`)
    if (Math.abs(cubeRoot(x) / Math.cbrt(x) - 1) > ofRoot) parting.push(`cube root of ${x}`)
  }
  expect(parting).toEqual([])
})
