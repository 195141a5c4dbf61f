/** Contours on grids small enough for pencil and paper. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { contour } from '../../src/statistics/contour.js'

/** Nine decimals, each line from its lower end: which end comes first says nothing. */
const rounded = (lines: ReturnType<typeof contour>) =>
  lines.map((line) => {
    const points = line.map((point) => point.map((value) => Number(value.toFixed(9))))
    const [first, last] = [points[0]!, points.at(-1)!]
    return first[1]! > last[1]! || (first[1] === last[1] && first[0]! > last[0]!) ? points.reverse() : points
  })

describe('a contour on 3 by 3 points', () => {
  const x = [0, 1, 2]
  const y = [0, 10, 20]

  it('of a slope is a straight line between the points', () => {
    // z = x: 0.5 lies halfway between the first two columns
    const z = [x, x, x]
    expect(rounded(contour(x, y, z, 0.5))).toEqual([
      [
        [0.5, 0],
        [0.5, 10],
        [0.5, 20],
      ],
    ])
  })

  it('around a peak is closed', () => {
    const z = [
      [0, 0, 0],
      [0, 4, 0],
      [0, 0, 0],
    ]
    const lines = rounded(contour(x, y, z, 1))
    expect(lines).toHaveLength(1)
    const [line] = lines
    expect(line).toHaveLength(5)
    expect(line![0]).toEqual(line![4])
    // a quarter of the way up each of the four edges
    expect(new Set(line!.map(String))).toEqual(
      new Set(
        [
          [0.25, 10],
          [1.75, 10],
          [1, 2.5],
          [1, 17.5],
        ].map(String),
      ),
    )
  })

  it('by hand: 90, 95 and 99 % of the shifts', () => {
    const z = [
      [0.8, 0.92, 0.96],
      [0.88, 0.96, 1],
      [0.94, 1, 1],
    ]
    // bottom row: 0.95 at 1 + 0.03 / 0.04; second: 0.07 / 0.08; third: 0.01 / 0.06; column 1: 0.03 / 0.04 of 10
    expect(rounded(contour(x, y, z, 0.95))).toEqual([
      [
        [1.75, 0],
        [1, 7.5],
        [0.875, 10],
        [0.166666667, 20],
      ],
    ])
    expect(contour(x, y, z, 0.9)).toHaveLength(1)
    expect(contour(x, y, z, 0.99)).toHaveLength(1)
    expect(contour(x, y, z, 1.01)).toEqual([])
  })

  it('in a saddle goes by the mean of the four', () => {
    const saddle = (corner: number) => [
      [corner, 0],
      [0, corner],
    ]
    // mean 2 is above 1: the two low corners are cut off, at 3/4 of the way from high to low
    const above = rounded(contour([0, 1], [0, 1], saddle(4), 1))
    expect(above).toEqual([
      [
        [0.75, 0],
        [1, 0.25],
      ],
      [
        [0, 0.75],
        [0.25, 1],
      ],
    ])
    // mean 0.75 is below 1: the two high corners are
    const below = rounded(contour([0, 1], [0, 1], saddle(1.5), 1))
    const third = Number((1 / 3).toFixed(9))
    expect(new Set(below.flat().map(String))).toEqual(
      new Set(
        [
          [third, 0],
          [0, third],
          [1, 1 - third],
          [1 - third, 1],
        ].map((point) => String(point.map((value) => Number(value.toFixed(9))))),
      ),
    )
  })

  it('has none where a point of the cell is not known', () => {
    const z = [
      [0, 1, 2],
      [0, Number.NaN, 2],
      [0, 1, 2],
    ]
    expect(contour(x, y, z, 0.5)).toEqual([])
  })
})

describe('any contour', () => {
  it('of a plane lies on it, and ends only at the edge', () => {
    const number = fc.double({ min: -5, max: 5, noNaN: true })
    fc.assert(
      fc.property(number, number, number, (a, b, level) => {
        const x = [0, 1, 3, 4]
        const y = [0, 2, 3]
        const z = y.map((up) => x.map((right) => a * right + b * up))
        for (const line of contour(x, y, z, level)) {
          for (const [right, up] of line) expect(a * right + b * up).toBeCloseTo(level, 6)
          for (const end of [line[0]!, line.at(-1)!]) {
            const isAtEdge = end[0] === 0 || end[0] === 4 || end[1] === 0 || end[1] === 3
            expect(isAtEdge || String(line[0]) === String(line.at(-1))).toBe(true)
          }
        }
      }),
      { seed: 20261129 },
    )
  })
})
