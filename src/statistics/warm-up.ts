/**
 * Warm-up of an open-ended run by MSER-5: cut where the standard error of what remains is least. White, Cobb & Spratt,
 * Proc. Winter Simulation Conference 2000, 755-761; White, Simulation 69 (1997) 323-334 (both from memory).
 */
import { mean } from 'simple-statistics'

/** Observations that are averaged into one before the search. */
const perBatch = 5

export interface Cut {
  /** Observations deleted, a whole number of batches. */
  deleted: number
  /** The least mean square that was found: sum of squares of the rest over the square of their number. */
  least: number
  /** False where the least lies at the end of the first half: the series has not come to rest. */
  isSettled: boolean
}

/** The cut of `series` by batches of `size` observations; what does not fill a batch at the end is left out. At least two batches. */
export function mser(series: ArrayLike<number>, size = perBatch): Cut {
  const batches = Array.from({ length: Math.floor(series.length / size) }, (_, index) =>
    mean(Array.from({ length: size }, (_each, place) => series[index * size + place]!)),
  )
  const last = Math.floor(batches.length / 2)
  let [at, least] = [0, Infinity]
  // towards the end of a series few batches are left and any lull looks like rest: only the first half is searched
  for (let deleted = 0; deleted <= last; deleted++) {
    const rest = batches.slice(deleted)
    const average = mean(rest)
    const value = rest.reduce((sum, each) => sum + (each - average) ** 2, 0) / rest.length ** 2
    if (value < least) [at, least] = [deleted, value]
  }
  return { deleted: at * size, least, isSettled: at < last }
}
