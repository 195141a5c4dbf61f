/** What the report of a comparison has for the page alone. */

import { checklistTable } from '../../answers/checklist.js'
import { definitionsTable } from '../../answers/definitions.js'
import type { StudyRecord } from '../../answers/record.js'
import { ofAll } from '../../answers/record.js'
import { counted } from '../../report/format.js'
import type { CompareResult } from './document.js'
import { compareSummary } from './summary.js'

/** Of a comparison; `best` is what selection says. */
export function compareRecord(result: CompareResult, best: readonly string[]): StudyRecord {
  const summary = compareSummary(result, best)
  const designs = Object.values(result.variants)
  return {
    summary,
    ...ofAll(result),
    definitions: definitionsTable(designs),
    checklist: checklistTable({
      ...result,
      about: result.about,
      warmUp: null,
      line: designs[0] ?? null,
      question: summary.question,
      trials: `${counted(designs.length, 'design')}: the base and variants, whose changes stand in the section on designs.`,
      hasDesigns: true,
      estimation:
        'All designs see the same random numbers; differences are paired shift by shift, and those that are judged together have Bonferroni intervals, and are called shown where these leave 0 out.',
      hasHand: false,
    }),
  }
}
