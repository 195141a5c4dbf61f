/** What the report of a sizing has for the page alone. */

import { checklistTable } from '../../answers/checklist.js'
import { definitionsTable } from '../../answers/definitions.js'
import type { StudyRecord } from '../../answers/record.js'
import { ofAll } from '../../answers/record.js'
import { counted } from '../../report/format.js'
import type { SizeResult } from './document.js'
import { sizeSummary } from './summary.js'

/** Of a sizing; `headline` is what its report says first. */
export function sizeRecord(result: SizeResult, headline: readonly string[]): StudyRecord {
  const summary = sizeSummary(result, headline)
  const line = result.picked ?? result.nearest?.afresh ?? null
  return {
    summary,
    ...ofAll(result),
    ...(line ? { definitions: definitionsTable([line]) } : {}),
    checklist: checklistTable({
      ...result,
      about: result.about,
      warmUp: null,
      line,
      question: summary.question,
      trials: `${counted(result.all, 'design')} of ${counted(result.choices.length, 'choice')}, in order of cost.`,
      hasDesigns: true,
      estimation:
        'Sequential tests after Wald of each promise on the same random numbers, the risk shared out among them; the design that this ends with is estimated from fresh shifts.',
      hasHand: false,
    }),
  }
}
