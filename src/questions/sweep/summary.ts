/** The first screen of a sweep. */

import { measureFirst, putRightFirst, questionOf, restingOn } from '../../answers/summary.js'
import { percentText } from '../../report/format.js'
import type { Summary } from '../../report/report.js'
import type { SweepResult } from './document.js'

/** The first screen of a sweep; `headline` is what its report says first. */
export function sweepSummary({ about, made, assumed }: SweepResult, headline: readonly string[]): Summary {
  return {
    question: questionOf(about, 'How much of it is enough?'),
    answer: headline[0]!,
    sureness: [
      `${percentText(made.confidence)} confidence: what is called shown holds for all differences that are judged together.`,
      restingOn(assumed, about),
    ],
    limiting: '',
    next: [
      ...putRightFirst(about),
      'Put the value that you choose into the scenario and simulate it with tapeshift run, for more shifts than here.',
      ...measureFirst(assumed, about),
    ],
  }
}
