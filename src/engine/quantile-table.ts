/** Tables of quantile functions that take long to work out. */
import { unset } from './unset.js'

/** The value below which the share `u` of a law lies; `u` on the open interval (0, 1). */
type Inverse = (u: number) => number

/** Share of each tail that is not tabulated: there a quantile bends too sharply for its table. */
const tail = 1 / 128
const cells = 4096
const step = (1 - 2 * tail) / cells

/**
 * A quantile function read from a table by cubic interpolation (Lagrange, four points), within 1e-6 of the mean
 * between the tails and exact in them. An exact gamma quantile takes a microsecond, and a shift draws thousands. The
 * table is made when it is first read: not every line that is built is simulated.
 */
export class QuantileTable {
  /** What was read last. */
  value = unset
  private table: Float64Array | null = null

  constructor(private readonly exact: Inverse) {}

  /** Reads the quantile of the share `of.value`, on (0, 1). */
  read(of: { readonly value: number }): void {
    const u = of.value
    const place = (u - tail) / step
    if (!(place >= 0 && place < cells)) {
      this.value = this.exact(u)
      return
    }
    this.table ??= this.make()
    const cell = Math.floor(place)
    const t = place - cell
    const before = this.table[cell]!
    const at = this.table[cell + 1]!
    const next = this.table[cell + 2]!
    const after = this.table[cell + 3]!
    this.value =
      (-t * (t - 1) * (t - 2) * before) / 6 +
      ((t + 1) * (t - 1) * (t - 2) * at) / 2 -
      ((t + 1) * t * (t - 2) * next) / 2 +
      ((t + 1) * t * (t - 1) * after) / 6
  }

  private make(): Float64Array {
    return Float64Array.from({ length: cells + 3 }, (_, index) => this.exact(tail + (index - 1) * step))
  }
}

/** Tables made so far, by law: one takes some milliseconds, and the lines of a study that differ in a belt speed share all. */
const tables = new Map<string, QuantileTable>()
const mostTables = 64

/** The table of the quantile function `exact` of the standard law that is called `law`. */
export function tableOf(law: string, exact: Inverse): QuantileTable {
  const known = tables.get(law)
  if (known) return known
  if (tables.size === mostTables) tables.clear()
  const made = new QuantileTable(exact)
  tables.set(law, made)
  return made
}
