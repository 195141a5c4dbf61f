/**
 * Contours of figures on a grid by marching squares: each cell of four points is crossed by straight lines where the level lies between
 * neighbours; in a saddle the mean of the four says which way. Lorensen & Cline, Computer Graphics 21 (1987) 163-169, in
 * two dimensions (from memory).
 */

type ContourPoint = readonly [x: number, y: number]

/** A line of a contour, from end to end; the first point stands again at the end where it is closed. */
export type ContourLine = ContourPoint[]

/**
 * The lines at which `z` is `level`: `z[row][column]` stands at (x[column], y[row]), and both ascend. A cell with a point that is
 * not known (NaN) has none. What lies on the level counts as above it.
 */
export function contour(
  x: readonly number[],
  y: readonly number[],
  z: readonly (readonly number[])[],
  level: number,
): ContourLine[] {
  const pieces: [ContourPoint, ContourPoint][] = []
  for (let row = 0; row + 1 < y.length; row++)
    for (let column = 0; column + 1 < x.length; column++)
      pieces.push(...cellLines(cornersOf(x, y, z, row, column), level))
  return joined(pieces)
}

interface Corner {
  x: number
  y: number
  z: number
}

/** Corners of a cell, around it. */
const cornersOf = (
  x: readonly number[],
  y: readonly number[],
  z: readonly (readonly number[])[],
  row: number,
  column: number,
): Corner[] =>
  [
    [row, column],
    [row, column + 1],
    [row + 1, column + 1],
    [row + 1, column],
  ].map(([r, c]) => ({ x: x[c!]!, y: y[r!]!, z: z[r!]![c!]! }))

function cellLines(corners: readonly Corner[], level: number): [ContourPoint, ContourPoint][] {
  if (corners.some((corner) => Number.isNaN(corner.z))) return []
  const isAbove = corners.map((corner) => corner.z >= level)
  const met = [0, 1, 2, 3].filter((side) => isAbove[side] !== isAbove[(side + 1) % 4])
  const on = (side: number): ContourPoint => between(corners[side]!, corners[(side + 1) % 4]!, level)
  if (met.length === 2) return [[on(met[0]!), on(met[1]!)]]
  if (met.length === 0) return []
  // a saddle: the corners that are unlike the middle are cut off
  const middle = corners.reduce((sum, corner) => sum + corner.z, 0) / 4
  const isMiddleAbove = middle >= level
  return [0, 1, 2, 3]
    .filter((corner) => isAbove[corner] !== isMiddleAbove)
    .map((corner) => [on((corner + 3) % 4), on(corner)])
}

/** Where the level lies between two corners, reckoned from the same end whichever cell asks. */
function between(one: Corner, other: Corner, level: number): ContourPoint {
  const [a, b] = one.x < other.x || (one.x === other.x && one.y < other.y) ? [one, other] : [other, one]
  const part = (level - a.z) / (b.z - a.z)
  return [a.x + (b.x - a.x) * part, a.y + (b.y - a.y) * part]
}

const keyOf = ([x, y]: ContourPoint) => `${x} ${y}`

/** Joins pieces that have an end in common into lines, in the order of their first piece. */
function joined(pieces: readonly (readonly [ContourPoint, ContourPoint])[]): ContourLine[] {
  const left = new Set(pieces.filter(([a, b]) => keyOf(a) !== keyOf(b)))
  const atEnd = new Map<string, Set<readonly [ContourPoint, ContourPoint]>>()
  for (const piece of left)
    for (const end of piece) atEnd.set(keyOf(end), (atEnd.get(keyOf(end)) ?? new Set()).add(piece))
  const goOn = (line: ContourLine): void => {
    for (;;) {
      const end = line.at(-1)!
      const next = [...(atEnd.get(keyOf(end)) ?? [])].find((piece) => left.has(piece))
      if (!next) return
      left.delete(next)
      line.push(keyOf(next[0]) === keyOf(end) ? next[1] : next[0])
    }
  }
  const lines: ContourLine[] = []
  for (const piece of pieces) {
    if (!left.delete(piece)) continue
    const line: ContourLine = [...piece]
    goOn(line)
    line.reverse()
    goOn(line)
    lines.push(line)
  }
  return lines
}
