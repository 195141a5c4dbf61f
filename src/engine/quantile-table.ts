/** Tables of quantile functions that take long to work out. */
import { unset } from './unset.js'

/**
 * A standard law with the differential equation of its quantile function: dy/du = slope(y), in a coordinate y in which it runs
 * smoothly. The slope is one over the density of y. Steinbrecher & Shaw, European Journal of Applied Mathematics 19 (2008) 87-112
 * (from memory).
 */
interface StandardLaw {
  /** y below which the share `u` lies, on (0, 1): a table begins with it, and what lies beyond a table is read from it. */
  exact(u: number): number
  slope(y: number): number
  /** The value of the law at y. */
  value(y: number): number
}

/** Octaves of a tail that are tabulated: shares from 1/2 down, each half of the one before. */
const octaves = 28
const cells = 64
/** Points of an octave: the interpolation reads one before and two beyond. */
const points = cells + 4

/**
 * A quantile function read from a table by cubic interpolation (Lagrange, four points), in equal cells of each octave of the two
 * tails: within 1e-7 of the mean, or of the deviation where that is larger. Its points follow the differential equation from far out in a
 * tail, where each error shrinks on the way in. An exact gamma quantile takes some microseconds, and a shift draws thousands. The
 * table is made when it is first read: not every line that is built is simulated.
 */
export class QuantileTable {
  /** What was read last. */
  value = unset
  private table: Float64Array | null = null

  constructor(private readonly law: StandardLaw) {}

  /** Reads the quantile of the share `of.value`, on (0, 1). */
  read(of: { readonly value: number }): void {
    const u = of.value
    const p = Math.min(u, 1 - u)
    // the half itself is the last point of the first octave
    const octave = Math.max(1, Math.clz32(p * 2 ** 32))
    if (octave > octaves) {
      this.value = this.law.value(this.law.exact(u))
      return
    }
    this.table ??= tabulated(this.law)
    const place = (p * (2 << octave) - 1) * cells
    const cell = Math.floor(place)
    const t = place - cell
    const first = rowOf(u > 0.5, octave) + cell
    const before = this.table[first]!
    const at = this.table[first + 1]!
    const next = this.table[first + 2]!
    const after = this.table[first + 3]!
    this.value =
      (-t * (t - 1) * (t - 2) * before) / 6 +
      ((t + 1) * (t - 1) * (t - 2) * at) / 2 -
      ((t + 1) * t * (t - 2) * next) / 2 +
      ((t + 1) * t * (t - 1) * after) / 6
  }
}

const rowOf = (isUpper: boolean, octave: number): number => ((isUpper ? octaves : 0) + octave - 1) * points

function tabulated(law: StandardLaw): Float64Array {
  const table = new Float64Array(2 * octaves * points)
  for (const isUpper of [false, true]) {
    const share = 2 ** -(octaves + 1) * (1 - 1 / cells)
    let y = law.exact(isUpper ? 1 - share : share)
    for (let octave = octaves; octave >= 1; octave--) {
      const step = (isUpper ? -1 : 1) / (cells * 2 ** (octave + 1))
      const row = rowOf(isUpper, octave)
      let next = y
      for (let point = 0; point < points; point++) {
        table[row + point] = law.value(y)
        // there the next octave begins, a cell of its own before its first share
        if (point === cells - 1) next = y
        y = stepped(law, y, step)
      }
      y = next
    }
  }
  return table
}

/** y a step of the share further on: the classical method of Runge and Kutta. */
function stepped(law: StandardLaw, y: number, step: number): number {
  const first = step * law.slope(y)
  const second = step * law.slope(y + first / 2)
  const third = step * law.slope(y + second / 2)
  const fourth = step * law.slope(y + third)
  return y + (first + 2 * (second + third) + fourth) / 6
}

/** Tables made so far, by law: one takes some milliseconds, and the lines of a study that differ in a belt speed share all. */
const tables = new Map<string, QuantileTable>()
const mostTables = 64

/** The table of the standard law that is called `name`. */
export function tableOf(name: string, law: () => StandardLaw): QuantileTable {
  const known = tables.get(name)
  if (known) return known
  if (tables.size === mostTables) tables.clear()
  const made = new QuantileTable(law())
  tables.set(name, made)
  return made
}
