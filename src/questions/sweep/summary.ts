/** What a sweep says on the first screen. */

import { percentText } from '../../report/format.js'
import type { Summary } from '../../report/report.js'
import type { SweepResult } from './document.js'

/** The first screen of a sweep; `headline` is what its report says first. */
export const sweepSummary = ({ made }: SweepResult, headline: readonly string[]): Summary => ({
  question: 'How much of it is enough?',
  answer: headline[0]!,
  sureness: [
    `${percentText(made.confidence)} confidence: what is called shown holds for all differences that are judged together.`,
  ],
  limiting: '',
  next: [
    'Put the value that you choose into the scenario and simulate it with tapeshift run, for more shifts than here.',
  ],
})
