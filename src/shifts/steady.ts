/** The warm-up of an open-ended run: how long the line takes, from empty, to come to its stride. */

import { Fault } from '../scenario/fault.js'
import type { Scenario } from '../scenario/schema.js'
import { mser } from '../statistics/warm-up.js'
import type { Executor } from './executor.js'
import { inOrder } from './lanes.js'
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
  const rows = await inOrder(runs, executor.size, async (run) => {
    const [row] = await executor.work({ what: 'series', ...of, from: run + 1, to: run + 1, instants })
    return row!
  })
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

/** The line does not come to its stride in the time that it is given: says what was seen and what would mend it. */
export function unsettled({ cases, cut, runs }: WarmUp, { shift }: Scenario): Fault {
  const quarter = Math.floor(cases.length / 4)
  const average = (from: number) => {
    const part = cases.slice(from, from + quarter)
    return (part.reduce((sum, each) => sum + each, 0) / part.length).toPrecision(3)
  }
  const length = (shift.length + shift['run-out']) * shift.campaign
  const hours = (seconds: number) => `${Number((seconds / 3600).toPrecision(3))} h`
  return new Fault(
    'unsettled',
    `shift.start: with \`steady\` the line must reach a steady state in the first half of the run, but it did not (MSER-5 over the average of ${runs} runs of ${hours(length)}: cut at ${hours(cut)}).\n` +
      `    seen:  cases in the line, mean of the quarters: ${[0, 1, 2, 3].map((each) => average(each * quarter)).join(', ')}\n` +
      `    fix:   use a longer run, such as ${shift.campaign > 1 ? `\`campaign: ${shift.campaign * 4}\`` : `\`length: ${hours(length * 4)}\``}; if the cases only grow, more arrive than the line can pass, and there is no steady state`,
  )
}
