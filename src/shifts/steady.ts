/** The warm-up of an open-ended run: how long the line takes, from empty, to come to its stride. */

import { mser } from '../statistics/warm-up.js'
import type { Executor } from './executor.js'
import type { Task } from './work.js'

/** Runs whose average is searched: the first ones of the study, whatever its length, so that the cut is always the same. */
const runs = 20
/** Instants of a run at which the cases inside are counted. */
const instants = 1000

export interface WarmUp {
  /** What comes before is not counted, s since the start; 0 where the whole run is. */
  countFrom: number
  /** Where MSER-5 cuts, s. */
  cut: number
  /** False where the cut leaves less than half of the run. */
  isSettled: boolean
  runs: number
  /** Cases inside the line, floor stacks before it included, averaged over the runs. */
  at: number[]
  cases: number[]
}

/**
 * Finds the warm-up with MSER-5 over the averaged series. A campaign of several shifts loses whole ones, so that what remains is whole
 * shifts. `start: carry-over` is only told where its line settles: its empty start is part of the question.
 */
export async function findWarmUp(
  executor: Executor,
  of: Pick<Task, 'seed' | 'scenario' | 'design'>,
): Promise<WarmUp> {
  const { shift } = of.scenario
  const span = shift.length + shift['run-out']
  const end = span * shift.campaign
  const rows = await gather(executor, of)
  const cases = Array.from(
    { length: instants },
    (_, at) => rows.reduce((sum, row) => sum + row[at]!, 0) / runs,
  )
  const { deleted, isSettled } = mser(cases)
  const cut = (deleted / instants) * end
  const whole = shift.campaign > 1 ? Math.ceil(cut / span - 1e-9) * span : cut
  return {
    countFrom: shift.start === 'steady' ? whole : 0,
    cut,
    isSettled: isSettled && whole <= end / 2,
    runs,
    at: cases.map((_, index) => ((index + 1) / instants) * end),
    cases,
  }
}

/** One series a run, in the order of the runs. */
async function gather(
  executor: Executor,
  of: Pick<Task, 'seed' | 'scenario' | 'design'>,
): Promise<Float64Array[]> {
  const rows: Float64Array[] = []
  let next = 1
  const lane = async (): Promise<void> => {
    while (next <= runs) {
      const run = next++
      const [row] = await executor.work({ what: 'series', ...of, from: run, to: run, instants })
      rows[run - 1] = row!
    }
  }
  await Promise.all(Array.from({ length: executor.size }, lane))
  return rows
}
