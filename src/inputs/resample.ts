/** Observations drawn anew from those that were made. */
import type { RandomNumbers } from '../engine/draw.js'
import type { Observed } from '../scenario/law.js'

/** Of so many, what the sample leaves open is less than a hundredth of their deviation: they stand as they are. */
const enough = 20_000

/** As many values, each drawn from all of them: the bootstrap of Efron, Annals of Statistics 7 (1979) 1-26 (from memory). */
export function resampled(law: Observed, stream: RandomNumbers): Observed {
  const { length } = law.values
  if (length > enough) return law
  const times = new Uint32Array(length)
  for (let draw = 0; draw < length; draw++) {
    stream.advance()
    times[Math.floor(stream.value * length)]!++
  }
  // they stay sorted
  return { ...law, values: law.values.flatMap((value, index) => Array<number>(times[index]!).fill(value)) }
}
