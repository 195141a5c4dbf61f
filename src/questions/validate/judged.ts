/** What the days say of the model: its good cases against those of the plant, day by day and in the mean. */
import { mean, median, sum } from 'simple-statistics'
import { Stream } from '../../engine/stream.js'
import { bootstrapMean } from '../../statistics/bootstrap-mean.js'
import { differenceOnSum, pByExchange } from '../../statistics/difference-on-sum.js'
import { equivalence } from '../../statistics/equivalence.js'
import { binomialAtMost, studentT, studentTBeyond } from '../../statistics/quantile.js'
import { type Between, betweenRuns, liesBetween, runsBelow } from '../../statistics/ranks.js'
import { covered } from './asked.js'
import type { DayResult, GoodResult, Known, RanksResult, ValidateResult } from './document.js'
import type { SimulatedDay } from './simulated.js'

/** How it is judged. */
export interface Judging {
  margin: number
  confidence: number
  seed: string
}

/** Samples of days that are drawn, and times that plant and model are exchanged. */
const draws = 4999

/** Days among their runs. Ties are broken with numbers of their own. */
export function daysAmongRuns(days: readonly SimulatedDay[], seed: string): DayResult[] {
  const lot = new Stream('validate', 'ties')
  lot.begin(seed, 1)
  return days.map(({ day, shifts, drivenBy, good, runs }): DayResult => {
    const between = betweenRuns(runs.length, covered)
    const sorted = [...runs].sort((a, b) => a - b)
    const below = runsBelow(good, runs, lot.next())
    return {
      ...{ day, shifts: shifts.length, drivenBy, plant: good },
      model: {
        ...{ mean: mean(runs), median: median(runs) },
        ...{ low: sorted[between.low - 1]!, high: sorted[between.high - 1]! },
      },
      below,
      isInside: liesBetween(below, between),
    }
  })
}

/** How many days lie where they should, and how often so few would if the model were the plant. */
export function ranksOf(days: readonly DayResult[], runs: number): RanksResult {
  const between: Between = betweenRuns(runs, covered)
  const inside = days.filter(({ isInside }) => isInside).length
  return { ...between, inside, p: binomialAtMost(inside, days.length, between.share) }
}

/** Good cases of plant and model in the mean, and whether they are alike within the margin. */
export function goodOf(days: readonly DayResult[], { margin, confidence, seed }: Judging): GoodResult {
  const plants = days.map((day) => day.plant)
  const models = days.map((day) => day.model.mean)
  const found = equivalence(plants, models, margin, 1 - confidence)
  const differences = models.map((model, day) => model - plants[day]!)
  const hasSpread = found.low !== null
  const lot = new Stream('validate', 'days drawn anew')
  lot.begin(seed, 1)
  const uniform = () => lot.next()
  return {
    plant: mean(plants),
    model: mean(models),
    difference: pairedT(differences, confidence, hasSpread),
    bootstrap: hasSpread ? bootstrapMean(differences, { confidence, draws, uniform }) : null,
    share: { mean: Number.isFinite(found.share) ? found.share : 0, low: found.low, high: found.high },
    p: found.p,
    verdict: found.verdict,
  }
}

/** Mean of the differences of pairs with Student's interval; nothing of it where they have no spread. */
function pairedT(
  differences: readonly number[],
  confidence: number,
  hasSpread: boolean,
): Known & { t: number | null; degreesOfFreedom: number; p: number | null } {
  const n = differences.length
  const centre = mean(differences as number[])
  const degreesOfFreedom = Math.max(0, n - 1)
  if (!hasSpread) return { mean: centre, low: null, high: null, t: null, degreesOfFreedom, p: null }
  const error = Math.sqrt(sum(differences.map((each) => (each - centre) ** 2)) / degreesOfFreedom / n)
  const half = studentT((1 + confidence) / 2, degreesOfFreedom) * error
  const t = centre / error
  return {
    ...{ mean: centre, low: centre - half, high: centre + half, t, degreesOfFreedom },
    p: studentTBeyond(t, degreesOfFreedom),
  }
}

/**
 * Have both one mean and one spread? Of the first run of each day: a mean of all runs would vary less than a day does. p by exchanging the two, day by
 * day: days are not normal.
 */
export function regressionOf(days: readonly SimulatedDay[]): ValidateResult['regression'] {
  const plants = days.map(({ good }) => good)
  const models = days.map(({ runs }) => runs[0]!)
  const found = differenceOnSum(plants, models)
  if (!found) return null
  const lot = new Stream('validate', 'exchanged')
  lot.begin('difference on sum', 1)
  const p = pByExchange(plants, models, { draws, uniform: () => lot.next() })
  return { ...found, degreesOfFreedom: [...found.degreesOfFreedom], p }
}
