/** What the report of a sweep has for the page alone. */

import { checklistTable } from '../../answers/checklist.js'
import type { StudyRecord } from '../../answers/record.js'
import { ofAll } from '../../answers/record.js'
import { counted } from '../../report/format.js'
import type { SweepResult } from './document.js'
import { sweepSummary } from './summary.js'

/** Of a sweep; `headline` is what its report says first. */
export function sweepRecord(result: SweepResult, headline: readonly string[]): StudyRecord {
  const summary = sweepSummary(result, headline)
  return {
    summary,
    ...ofAll(result),
    checklist: checklistTable({
      ...result,
      about: result.about,
      warmUp: null,
      line: null,
      question: summary.question,
      trials: `${counted(result.points.length, 'point')} beside the scenario as it stands.`,
      hasDesigns: true,
      estimation:
        'All points see the same random numbers; differences are paired shift by shift, and those that are judged together have Bonferroni intervals, and are called shown where these leave 0 out.',
      hasHand: false,
    }),
  }
}
