/** Survival curve without a law: Kaplan & Meier, J. Am. Stat. Assoc. 53 (1958) 457-481. */
import { isEvent } from './rough.js'
import type { Sample, Seen } from './sample.js'

/** The curve from a time on, until the next. */
export interface Step {
  /** Time at which some ended, s. */
  at: number
  /** How many were known to have lasted until then. */
  atRisk: number
  ended: number
  /** Share that lasts longer than `at`, of those that last longer than `from`. */
  survival: number
  /** Greenwood's standard error: Kalbfleisch & Prentice, The Statistical Analysis of Failure Time Data (2002), sec. 1.4 (from memory). */
  se: number
}

/**
 * Steps of the survival curve of `sample`, in order; none where none ended. A rounded time counts as what was read or the middle of where it lies. Times
 * cut off at a time at which others ended count as longer.
 */
export function survivalCurve(sample: Sample): Step[] {
  const { seen, counts, from } = sample
  const times = seen
    .map((each, index) => ({ at: timeOf(each, from), ended: isEvent(each), count: counts[index]! }))
    .sort((one, other) => one.at - other.at)
  let atRisk = counts.reduce((sum, count) => sum + count, 0)
  let [survival, hazards] = [1, 0]
  const steps: Step[] = []
  for (let index = 0; index < times.length; ) {
    const { at } = times[index]!
    let [gone, ended] = [0, 0]
    for (; index < times.length && times[index]!.at === at; index++) {
      gone += times[index]!.count
      if (times[index]!.ended) ended += times[index]!.count
    }
    if (ended > 0) {
      survival *= 1 - ended / atRisk
      hazards += ended / (atRisk * (atRisk - ended))
      // where all have ended there is no chance left to be wrong about
      steps.push({ at, atRisk, ended, survival, se: survival === 0 ? 0 : survival * Math.sqrt(hazards) })
    }
    atRisk -= gone
  }
  return steps
}

function timeOf(seen: Seen, from: number): number {
  if ('at' in seen) return seen.at
  if ('over' in seen) return Math.max(seen.over, from)
  if ('clocked' in seen) return seen.clocked
  const [low, high] = seen.between
  return isEvent(seen) ? (Math.max(low, from) + high) / 2 : low
}
