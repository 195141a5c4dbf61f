/** Stops by cause, of the plant and of the model, and which of them would explain why their good cases differ. */
import { mean, sampleStandardDeviation } from 'simple-statistics'
import { type Comparison, family } from '../../statistics/family.js'
import { studentT, studentTBeyond } from '../../statistics/quantile.js'
import { sampleSkewness, skewedInterval, withoutSkewness } from '../../statistics/skewness.js'
import type { Cause, Stopped } from './causes.js'
import type { CauseResult, Explanation, GapResult } from './document.js'

/** Stops of a day, cause by cause. */
export interface StoppedDay {
  plant: readonly Stopped[]
  model: readonly Stopped[]
}

const hair = 1e-12
/** Days from which the skewness of stops makes their test better; of fewer it is mostly luck. */
const leastForSkewness = 8

/** A row a cause, all gaps judged together; what neither side ever had is left out. `isPutIn`: the stops of the plant were put in, there is nothing to compare. */
export function gapsOf(
  causes: readonly Cause[],
  days: readonly StoppedDay[],
  confidence: number,
  isPutIn: (path: string | null) => boolean = () => false,
): CauseResult[] {
  const seen = [...causes.entries()].filter(([place]) =>
    days.some(({ plant, model }) => plant[place]!.stops > 0 || model[place]!.stops > 0),
  )
  const rows = seen.map(([place, { path, words }]) => {
    const isIn = isPutIn(path)
    const of = (side: keyof StoppedDay, what: keyof Stopped) => days.map((day) => day[side][place]![what])
    const gap = (what: keyof Stopped) => gapOf(of('plant', what), of('model', what), path !== null && !isIn)
    const mean = (side: keyof StoppedDay) => ({
      stops: average(of(side, 'stops')),
      seconds: average(of(side, 'seconds')),
    })
    const sides = { plant: mean('plant'), model: mean('model') }
    return { path, words, isPutIn: isIn, ...sides, stops: gap('stops'), seconds: gap('seconds') }
  })
  const compared = rows.flatMap(({ stops, seconds }) => [stops, seconds]).filter(isComparable)
  for (const [index, { estimate, adjustedP, isShown }] of family(
    compared.map(({ comparison }) => comparison),
    confidence,
  ).entries())
    Object.assign(compared[index]!.gap, { low: estimate.low, high: estimate.high, p: adjustedP, isShown })
  return rows.map((row) => ({ ...row, stops: row.stops.gap, seconds: row.seconds.gap }))
}

const average = (values: readonly number[]) => mean(values as number[])

/** A gap, and what a family of them judges it by; null where it is not compared. */
interface Judgeable {
  gap: GapResult
  comparison: Comparison | null
}

const isComparable = (each: Judgeable): each is Judgeable & { comparison: Comparison } =>
  each.comparison !== null

/**
 * Mean of model less plant over the days, by Student. What no cause is named for is not compared, for a log need not hold all stops, nor is
 * what was put in.
 */
function gapOf(plant: readonly number[], model: readonly number[], isCompared: boolean): Judgeable {
  const differences = model.map((value, day) => value - plant[day]!)
  const n = differences.length
  const centre = average(differences)
  const sd = n > 1 ? sampleStandardDeviation(differences) : 0
  const error = sd / Math.sqrt(n)
  const gap = { mean: centre, low: null, high: null, standardised: null, p: null, isShown: false }
  // equal ones differ by their rounding
  if (!isCompared || !(error > hair * Math.max(...differences.map(Math.abs))))
    return { gap, comparison: null }
  const standardised = centre / error
  // stops of a day are few or none, and now and then many or long: Student alone would find a difference twice as often as it says
  const skewness = n >= leastForSkewness ? sampleSkewness(differences) / Math.sqrt(n) : 0
  return {
    gap: { ...gap, standardised },
    comparison: {
      pValue: studentTBeyond(withoutSkewness(standardised, skewness), n - 1),
      at: (confidence) => ({
        ...{ mean: centre, sd, n },
        ...skewedInterval(centre, error, studentT((1 + confidence) / 2, n - 1), skewness),
      }),
    },
  }
}

/**
 * The gap that lies farthest from 0 in its own standard errors. Those that go the way of the output come first, more good cases by the model
 * from fewer or shorter stops, and of these such as are shown. `gap`: good cases a day by which the model has more; `perSecond`: good cases of the plant in a second that it ran.
 */
export function explanationOf(
  causes: readonly CauseResult[],
  gap: number,
  perSecond: number,
): Explanation | null {
  const candidates = causes.flatMap(({ path, words, plant, model, ...gaps }) =>
    (['stops', 'seconds'] as const).flatMap((what) => {
      const { standardised, isShown, mean: difference } = gaps[what]
      if (standardised === null || path === null) return []
      const worth = -gaps.seconds.mean * perSecond
      const isAlong = difference * gap < 0 && worth * gap > 0
      const told = { path, words, what, plant: plant[what], model: model[what], isShown, worth, isAlong }
      return [{ told, size: Math.abs(standardised) }]
    }),
  )
  const order = ({ told }: (typeof candidates)[number]) => (told.isAlong ? 2 : 0) + (told.isShown ? 1 : 0)
  const first = (a: (typeof candidates)[number], b: (typeof candidates)[number]) =>
    order(b) - order(a) || b.size - a.size
  return candidates.sort(first)[0]?.told ?? null
}
