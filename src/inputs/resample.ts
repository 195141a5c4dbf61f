/** Observations drawn anew from those that were made. */
import type { RandomNumbers } from '../engine/draw.js'
import type { Observed } from '../scenario/law.js'

/** Of so many, what the sample leaves open is less than a hundredth of their deviation: they stand as they are. */
const enough = 20_000

/** As many values, each drawn from all of them: the bootstrap of Efron, Annals of Statistics 7 (1979) 1-26 (from memory). Where days are known, whole days. */
export function resampled(law: Observed, stream: RandomNumbers): Observed {
  const { values, byDay } = law
  if (byDay) return byDays(law, byDay, stream)
  if (values.length > enough) return law
  const times = timesDrawn(values.length, stream)
  // they stay sorted
  return { ...law, values: values.flatMap((value, index) => Array<number>(times[index]!).fill(value)) }
}

/** How often each of so many is drawn, in as many draws. */
function timesDrawn(count: number, stream: RandomNumbers): Uint32Array {
  const times = new Uint32Array(count)
  for (let draw = 0; draw < count; draw++) {
    stream.advance()
    times[Math.floor(stream.value * count)]!++
  }
  return times
}

/**
 * As many days, each with all of its values: the bootstrap of clusters; Davison & Hinkley, Bootstrap Methods and Their Application (1997), sec. 3.8 (from
 * memory). Of very many values as many as say all that they do stand for them, evenly spaced among them.
 */
function byDays(
  { byDay: _, ...law }: Observed,
  { of, count }: NonNullable<Observed['byDay']>,
  stream: RandomNumbers,
): Observed {
  const times = timesDrawn(count, stream)
  const ends = new Float64Array(law.values.length)
  let length = 0
  for (const [index, day] of of.entries()) {
    length += times[day]!
    ends[index] = length
  }
  const kept = Math.min(length, enough)
  let place = 0
  const values = Array.from({ length: kept }, (_each, rank) => {
    const wanted = ((rank + 0.5) * length) / kept
    while (ends[place]! <= wanted) place++
    return law.values[place]!
  })
  return { ...law, values }
}

/** Owner of the random numbers of a law whose days are drawn: all columns of one file see the same days. */
export const ownerOfDays = ({ file, day }: Observed): string =>
  JSON.stringify(['days', file.replace(/^(\.\/)+/, ''), day])
