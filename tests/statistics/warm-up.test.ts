/** MSER-5: series whose cuts were worked out by an independent implementation of the published rule. */
import { describe, expect, it } from 'vitest'
import { mser } from '../../src/statistics/warm-up.js'

const series = (n: number, of: (i: number) => number) =>
  Array.from({ length: n }, (_, index) => of(index + 1))

// White, Simulation 69 (1997) 323-334; White, Cobb & Spratt, Proc. Winter Simulation Conference 2000. They print no
// data; these series are made for the purpose and their cuts agree with a second implementation of the rule.
const rising = series(100, (i) => 10 * (1 - 0.8 ** i) + (((7 * i) % 11) - 5) / 10)
const falling = series(200, (i) => 20 * 0.9 ** i + (((13 * i) % 17) - 8) / 4)
const dead = [0, 0, 0, 0, 0, 5, 5, 5, 5, 5, ...series(50, (i) => [4, 6, 5, 5, 4, 6][(i - 1) % 6]!)]

// printed with ten figures
describe('the cut', () => {
  it.each([
    ['rising', rising, 1, 13, 0.001166220314],
    ['rising', rising, 5, 20, 0.0004393038541],
    ['falling', falling, 1, 27, 0.008857926432],
    ['falling', falling, 5, 30, 0.003216174047],
    ['dead at first', dead, 1, 5, 0.01123966942],
    ['dead at first', dead, 5, 5, 0.001983471074],
  ])('of the %s series by batches', (_name, values, size, deleted, least) => {
    const cut = mser(values, size)
    expect(cut.deleted).toBe(deleted)
    expect(cut.least).toBeCloseTo(least, 11)
    expect(cut.isSettled).toBe(true)
  })

  it('of a series that only grows lies at the end of the first half: it has not settled', () => {
    for (const size of [1, 5])
      expect(
        mser(
          series(50, (i) => i),
          size,
        ).isSettled,
      ).toBe(false)
  })

  it('of a series that never moves is none', () => {
    expect(mser(series(40, () => 3))).toEqual({ deleted: 0, least: 0, isSettled: true })
  })
})
