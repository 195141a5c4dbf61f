/** What the report of a run has for the page alone. */

import { checklistTable } from '../../answers/checklist.js'
import { definitionsTable } from '../../answers/definitions.js'
import type { StudyRecord } from '../../answers/record.js'
import { ofAll } from '../../answers/record.js'
import type { RunResult } from './document.js'
import { runSummary } from './summary.js'

/** Of a run. */
export function runRecord(result: RunResult): StudyRecord {
  const summary = runSummary(result)
  return {
    summary,
    ...ofAll(result),
    definitions: definitionsTable([result]),
    checklist: checklistTable({
      ...result,
      about: result.about,
      line: result,
      question: summary.question,
      trials: 'One line, as the scenario has it.',
      hasDesigns: false,
      estimation: `Means have Student t intervals, shares of shifts Wilson intervals, ratios the ratio estimator${result.measures.throughput?.shrink === undefined ? '' : '; control variates on the arrivals narrow them'}.`,
      hasHand: result.byHand !== null,
    }),
  }
}
