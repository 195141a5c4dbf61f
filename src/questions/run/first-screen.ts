/** The first screen of a run: the verdict on the target, the figures that it goes by, what limits the line and what to do next. */

import {
  checkParts,
  limitsText,
  nextPart,
  part,
  restsOnPart,
  safetyPart,
} from '../../answers/first-screen.js'
import { butCannotWork, cannotWork, costWords } from '../../answers/warnings.js'
import { figureText, percentText, rateText, sentences, shareOfShifts } from '../../report/format.js'
import type { Screen, Verdict } from '../../report/screen.js'
import { requirementLines } from './certainty.js'
import type { RunResult } from './document.js'
import { nextOfRun, onAverage, shortfall } from './summary.js'

/** The first screen of a run. */
export function runScreen(result: RunResult): Screen {
  const { made, display, measures, byHand, drawn, precision } = result
  const cost = measures['cost-per-1000']
  return {
    title: made.scenario.title,
    display,
    verdict: verdictOf(result),
    parts: [
      ...checkParts(result),
      ...part('Shift', [shiftText(result)]),
      ...part('Case', [
        `${figureText(measures['time-in-system'], display)} in the line on average; 95 of 100 cases take less than ${figureText(measures['time-in-system-p95'], display)}.`,
      ]),
      ...part('Cost', [cost && `${figureText(cost, display)}${costWords('', result)}.`]),
      ...part('Asked', requirementLines(result)),
      ...part('Limit', [limitsText(result, byHand)]),
      ...nextPart(nextOfRun(result), result),
      ...restsOnPart(result, drawn !== undefined, {
        more: [
          precision !== null &&
            `Asked for within ${percentText(precision.asked, 2)}: ${precision.isMet ? 'reached' : 'not reached'}.`,
        ],
      }),
      ...safetyPart,
    ],
  }
}

/** The verdict on the target; where `check` calls the line impossible nothing is shown to hold. */
function verdictOf(result: RunResult): Verdict {
  const { target, measures, display } = result
  const rate = figureText(measures.throughput, display)
  if (target === null)
    return {
      word: 'NO TARGET',
      tone: 'plain',
      text: `is given: the output is ${rate}${butCannotWork(result, 'it')}.`,
    }
  const asked = `the target of ${rateText(target)}`
  const found = onAverage(result)
  if (found === 'falls short')
    return {
      word: 'DOES NOT HOLD',
      tone: 'error',
      text: `${asked}: ${rate} on average, ${figureText(shortfall(measures.throughput!, target), display)} short${cannotWork(result) ? '; and the line cannot work as described' : ''}.`,
    }
  if (found === 'holds')
    return cannotWork(result)
      ? {
          word: 'NOT SHOWN',
          tone: 'error',
          text: `: by the simulation the line would hold ${asked} (${rate})${butCannotWork(result, 'it')}.`,
        }
      : { word: 'HOLDS', tone: 'good', text: `${asked}: ${rate} on average.` }
  const why =
    found === 'open'
      ? `whether it holds ${asked}: the target lies within the plus-minus of ${rate}`
      : `whether it holds ${asked}: too little was seen to give ${rate} a plus-minus`
  return { word: 'NOT SHOWN', tone: 'warning', text: `${why}${butCannotWork(result)}.` }
}

/** What a shift puts out, and in how many the target is reached. */
function shiftText({ measures, display, target }: RunResult): string {
  const { output, 'target-held': held, unsealed } = measures
  return sentences(
    `${figureText(output, display)} a shift.`,
    target !== null && held && `The target is reached in ${shareOfShifts(held)} of the shifts.`,
    (unsealed?.mean ?? 0) > 0 && `Unsealed and unnoticed: ${figureText(unsealed, display)}.`,
  ).join(' ')
}
