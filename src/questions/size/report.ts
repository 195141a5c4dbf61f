/** The report of a sizing: what it says first, how sure that is, its tables and its limits. */

import { simulatedEach, studyReport } from '../../answers/study-report.js'
import { counted, grouped, listed, percentText, sentences } from '../../report/format.js'
import type { Report } from '../../report/report.js'
import { within } from '../../report/sections.js'
import type { SizeResult } from './document.js'
import { drawsCertainty, drawsFact, measureNextOf } from './drawn-words.js'
import { headline } from './headline.js'
import { weighed } from './nearest.js'
import { adviceText } from './none.js'
import { addedTable, choiceTable, designTable, pickTable } from './tables.js'
import { endOf, endWord, observed, promiseAt } from './words.js'

/** The report of a sizing. */
export function sizeReport(result: SizeResult): Report {
  const trials = `${counted(result.all, 'design')} of ${counted(result.choices.length, 'choice')}`
  return studyReport(result, {
    subtitle: `${trials}, on the same random numbers, up to ${simulatedEach(result)}`,
    headline: headline(result),
    certainty: certainty(result),
    tables: [
      within('designs', pickTable(result)),
      within('designs', designTable(result), 'designs'),
      within('designs', choiceTable(result)),
      addedTable(result),
    ],
    limits: limits(result),
    isDrawn: result.drawn !== undefined,
    question: 'What is the cheapest line that meets its promises?',
    assumed: 'Assumed of the scenario, because it does not say',
    lines: [result.picked ?? result.nearest?.afresh ?? []].flat(),
    facts: {
      trials: `${trials}, in order of cost.`,
      estimation:
        'Sequential tests after Wald for each promise, on the same random numbers, with the risk divided among them. The chosen design is then estimated from fresh shifts.' +
        drawsFact(result),
    },
  })
}

function certainty(result: SizeResult): string[] {
  const { made, spent, all, isFull, designs } = result
  const without = designs.filter((each) => each.without !== null).length
  const everyOne = `all ${grouped(all, 0)} designs for ${grouped(made.shifts, 0)} shifts each would be ${grouped(all * made.shifts, 0)} shifts`
  const search = isFull
    ? `Every design was simulated for ${grouped(made.shifts, 0)} shifts and judged by its figure alone: ${grouped(spent.shifts, 0)} shifts. The confidence was not calculated.`
    : `It took ${counted(spent.designs, 'design')} and ${counted(spent.shifts, 'shift')}${without > 0 ? `; ${grouped(without, 0)} more ${without === 1 ? 'design was' : 'designs were'} rejected without simulation` : ''} (${everyOne}).`
  return [
    ...(isFull || spent.designs === 0 ? [] : [procedure(result)]),
    search,
    ...freshText(result),
    ...drawsCertainty(result),
  ]
}

/** What the confidence is of. */
function procedure(result: SizeResult): string {
  const { made, promises, pick } = result
  const at = (side: 1 | -1) =>
    promises.map((promise) => promiseAt(promise, side * promise.near, result)).join(' and ')
  const sure =
    pick === null
      ? `the simulation rejected no design that meets ${at(1)}.`
      : `the simulation rejected no design before the chosen one that meets ${at(1)}, and the chosen one meets ${at(-1)}. Designs between these limits may go either way.`
  return `${percentText(made.confidence)} confidence in the whole procedure: ${sure} (Sequential tests after Wald, all designs on the same random numbers, the risk divided among them.)`
}

/** Which shifts the figures of the pick are of. */
function freshText(result: SizeResult): string[] {
  const end = endOf(result)
  if (end === null) return []
  const { firstShift, shifts } = end.afresh
  const simulated = result.designs.filter(({ without }) => without === null).length
  return sentences(
    result.pick === null &&
      !result.drawn &&
      simulated > 1 &&
      `The nearest design was found with ${grouped(Math.min(weighed.shifts, result.made.shifts), 0)} shifts or more of ${simulated > weighed.designs ? `the ${weighed.designs} that seemed nearest` : 'each'}.`,
    `The figures of the ${endWord(result)} come from ${observed(shifts, result)} that the search did not see, numbers ${grouped(firstShift, 0)} to ${grouped(firstShift + shifts - 1, 0)}: ${percentText(result.made.confidence)} confidence that the long-run values lie within their intervals.`,
  )
}

function limits({ notes, order, rising, isFull, shift, spent }: SizeResult): string[] {
  return sentences(
    ...notes,
    `Designs are sorted by: ${order.join(', then ')}. ${order[0] === 'cost' ? 'The cost is calculated by hand for the promised rate, without stops; items without a price do not count.' : 'The scenario has no prices, so the first in this order is taken as the cheapest.'}`,
    rising.length > 0 && `Assumed, as you said: more of ${rising.join(', ')} never hurts.`,
    !(isFull || spent.designs === 0) &&
      'A design is simulated until its verdict is clear. This biases its figure a little, so no interval is given. The fresh shifts are independent of the search.',
    shift.campaign > 1 &&
      'Shifts follow each other in campaigns: a share of shifts means a share of campaigns.',
    'Jam, roll-change and breakdown figures are inputs: no published data on tape sealers is known. A design is only as good as your measurements of them.',
  )
}

/** What to do next. */
export const nextOfSize = (result: SizeResult): string[] =>
  result.pick === null
    ? adviceText(result)
    : [
        ...measureNextOf(result),
        `Put the chosen values into the scenario (${listed(Object.keys(result.designs[result.pick]!.set))}), and simulate it with tapeshift run. That report shows its queues, stops, tape and money.`,
      ]
