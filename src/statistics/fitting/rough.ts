/** First looks at a sample: whether it can be fitted at all, and about what its times are. */
import type { Family } from './law.js'
import type { Sample, Seen } from './sample.js'

/**
 * Why a law cannot be fitted. `no-events`: none was seen to end, there is an upper limit at most. `few-values`: fewer than three different
 * times, which say too little of a spread. `zero`: a time of 0 s, which the family does not know. `impossible`: a time that cannot
 * be in the record: below 0, not a number, or shorter than what it shows. `no-maximum`: the likelihood grows towards the edge of the family, or is level.
 * `no-better`: laws of fewer parameters are as good. `thin-part`: one of two parts rests on fewer than ten times.
 */
export type Why =
  | 'no-better'
  | 'thin-part'
  | 'no-events'
  | 'few-values'
  | 'zero'
  | 'impossible'
  | 'no-maximum'

/** Different times that a law with a spread asks for, and one of two parts: one more than it has parameters. Project rule. */
const leastDifferent = { simple: 3, mixture: 6 }

/** It was seen to end: not right-censored. */
export const isEvent = (seen: Seen): boolean =>
  'between' in seen ? seen.between[1] < Number.POSITIVE_INFINITY : !('over' in seen)

/** How many times a sample has. */
export const timesIn = ({ counts }: Sample): number => counts.reduce((sum, count) => sum + count, 0)

/** How many times of a sample were seen to end. */
export const eventsIn = ({ seen, counts }: Sample): number =>
  seen.reduce((sum, each, index) => sum + (isEvent(each) ? counts[index]! : 0), 0)

/** What forbids a fit of `family` before one is tried; null: nothing. */
export function obstacleTo(sample: Sample, family: Family | 'mixture'): Why | null {
  const { seen, from } = sample
  if (!(from >= 0 && seen.every((each) => isPossible(each, from)))) return 'impossible'
  const events = seen.filter(isEvent)
  if (events.length === 0) return 'no-events'
  if (family === 'exponential') return null
  if (events.some((each) => 'at' in each && each.at === 0)) return 'zero'
  const different = new Set(events.map((each) => JSON.stringify(each)))
  return different.size < leastDifferent[family === 'mixture' ? 'mixture' : 'simple'] ? 'few-values' : null
}

/** It can stand in a record that shows nothing shorter than `from`. */
function isPossible(seen: Seen, from: number): boolean {
  if ('at' in seen) return seen.at >= from && seen.at < Number.POSITIVE_INFINITY
  if ('over' in seen) return seen.over >= 0 && seen.over < Number.POSITIVE_INFINITY
  if ('between' in seen) return seen.between[0] >= 0 && seen.between[1] > Math.max(seen.between[0], from)
  return (
    seen.clocked >= 0 &&
    seen.grain > 0 &&
    seen.clocked + seen.grain > from &&
    Number.isFinite(seen.clocked + seen.grain)
  )
}

/** Times with weights. */
export interface Weighted {
  values: Float64Array
  weights: Float64Array
}

/**
 * About what the times are, as if all were known and none were missing: rounded ones spread over what they may have been, those cut off
 * taken as they are. To begin a search with, never as an estimate.
 */
export function roughly({ seen, counts, from }: Sample): Weighted {
  const values: number[] = []
  const weights: number[] = []
  for (const [index, each] of seen.entries()) {
    const points = pointsOf(each, from).filter(([value]) => value > 0)
    const total = points.reduce((sum, [, weight]) => sum + weight, 0)
    for (const [value, weight] of points) {
      values.push(value)
      weights.push((counts[index]! * weight) / total)
    }
  }
  return { values: Float64Array.from(values), weights: Float64Array.from(weights) }
}

function pointsOf(seen: Seen, from: number): (readonly [value: number, weight: number])[] {
  if ('at' in seen) return [[seen.at, 1]]
  if ('over' in seen) return [[Math.max(seen.over, from), 1]]
  if ('between' in seen) {
    const low = Math.max(seen.between[0], from)
    const width = seen.between[1] - low
    if (width === Number.POSITIVE_INFINITY) return [[low, 1]]
    return [1, 3, 5].map((sixths) => [low + (width * sixths) / 6, 1] as const)
  }
  // half a grain up and down, with the weights of the triangle's quarters
  const least = Math.max(from, seen.grain / 4)
  return (
    [
      [-0.5, 1],
      [0, 2],
      [0.5, 1],
    ] as const
  ).map(([grains, weight]) => [Math.max(least, seen.clocked + grains * seen.grain), weight] as const)
}
