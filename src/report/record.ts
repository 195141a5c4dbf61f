/** What a report has for the page alone: its first screen, findings, what is given, definitions and the study checklist. */
import type { CompareResult } from '../study/compare-result.js'
import type { RunResult } from '../study/result.js'
import type { SizeResult } from '../study/size-result.js'
import type { SweepResult } from '../study/sweep-result.js'
import { findingsTable, givenTable } from './about.js'
import { checklistTable } from './checklist.js'
import { compareSummary, sizeSummary, sweepSummary } from './compare-summary.js'
import type { Report } from './content.js'
import { definitionsTable } from './definitions.js'
import { counted } from './format.js'
import { runSummary } from './summary.js'

export type StudyRecord = Pick<Report, 'summary' | 'findings' | 'given' | 'definitions' | 'checklist'>

const ofAll = ({ about }: Pick<RunResult, 'about'>) => ({
  findings: findingsTable(about),
  given: givenTable(about),
})

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
