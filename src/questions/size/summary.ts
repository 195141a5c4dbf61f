/** The first screen of a sizing. */

import { limitingText } from '../../answers/summary.js'
import { percentText } from '../../report/format.js'
import type { Summary } from '../../report/report.js'
import type { SizeResult } from './document.js'
import { adviceText } from './none.js'
import { contradiction, endOf } from './words.js'

/** The first screen of a sizing; `headline` is what its report says first. */
export function sizeSummary(result: SizeResult, headline: readonly string[]): Summary {
  const { made, pick, isFull } = result
  const end = endOf(result)?.afresh
  const limiting = end ? limitingText(end, end) : ''
  return {
    question: 'What is the cheapest line that keeps its promises?',
    answer: [headline[0]!, ...contradiction(result)].join(' '),
    sureness: [
      isFull
        ? 'Every design was judged by its figure alone.'
        : `${percentText(made.confidence)} confidence in the whole search.`,
      headline[1] ?? '',
    ].filter((text) => text !== ''),
    limiting:
      limiting === ''
        ? ''
        : `In the ${pick === null ? 'nearest design' : 'pick'}: ${limiting.replace(/^By/, 'by')}`,
    next:
      pick === null
        ? adviceText(result)
        : [
            'Put the pick into the scenario and simulate it with tapeshift run: that report shows its queues, stops, tape and money.',
          ],
  }
}
