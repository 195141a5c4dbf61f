/** The first screen of a sizing: the pick, or the nearest design with its shortfall, its margin, what limits it and what to do next. */

import {
  checkParts,
  limitsText,
  nextPart,
  part,
  restsOnPart,
  safetyPart,
} from '../../answers/first-screen.js'
import { butCannotWork, cannotWork, isCostInPart } from '../../answers/warnings.js'
import { counted, figureText } from '../../report/format.js'
import type { Screen, Verdict } from '../../report/screen.js'
import { isShown, type SizeResult } from './document.js'
import { keptSentences, sureText } from './drawn-words.js'
import { headline } from './headline.js'
import { sizeSummary } from './report.js'
import {
  contradiction,
  endOf,
  endWord,
  heldText,
  marginsOf,
  moneyText,
  observed,
  promisesText,
  setText,
} from './words.js'

/** The first screen of a sizing. */
export function sizeScreen(result: SizeResult): Screen {
  const { made, display, spent, all } = result
  const end = endOf(result)
  const search = `${counted(spent.shifts, 'shift')} of ${spent.designs} of the ${counted(all, 'design')} were simulated.`
  return {
    title: made.scenario.title,
    display,
    verdict: verdictOf(result),
    parts: [
      ...checkParts(result),
      ...part(result.pick === null ? 'Nearest' : 'Pick', [designText(result)]),
      ...part('Margin', [
        end
          ? `${marginsOf(end.afresh.promises, result)}, in ${observed(end.afresh.shifts, result, 'fresh ')} that the search did not see.`
          : byHandText(result),
      ]),
      ...part('Draws', [keptSentences(result).join(' ')]),
      ...part('Output', [
        end &&
          `${figureText(end.afresh.measures.throughput, display)}, ${figureText(end.afresh.measures.output, display)} a shift.`,
      ]),
      ...part('Limit', [end ? limitsText(end.afresh, end.afresh) : null]),
      ...part('Cheaper', [result.pick !== null && cheaperText(result)]),
      ...nextPart(sizeSummary(result, headline(result)).next, result),
      ...restsOnPart(result, result.drawn !== undefined, { isEach: true, more: [search] }),
      ...safetyPart,
    ],
  }
}

/** Whether a design is shown to hold: what `check` calls an error, and what fresh shifts contradict, is not. */
function verdictOf(result: SizeResult): Verdict {
  const { pick, designs, all } = result
  const promises = `${promisesText(result)}${sureText(result)}`
  if (pick === null) {
    const open = designs.filter(({ verdict }) => verdict === 'undecided').length
    return open > 0
      ? {
          word: 'NOT SHOWN',
          tone: 'warning',
          text: `whether any design holds ${promises}: ${open} of ${counted(all, 'design')} could not be decided in ${observed(result.made.shifts, result)}.`,
        }
      : {
          word: 'DOES NOT HOLD',
          tone: 'error',
          text: `: none of the ${counted(all, 'design')} holds ${promises}.`,
        }
  }
  if (!isShown(result))
    return {
      word: 'NOT SHOWN',
      tone: 'error',
      text: `that the pick holds ${promises}. ${contradiction(result)[0] ?? ''}`.trimEnd(),
    }
  if (cannotWork(result))
    return {
      word: 'NOT SHOWN',
      tone: 'error',
      text: `: by the simulation the pick would hold ${promises}${butCannotWork(result, 'it')}.`,
    }
  return {
    word: 'HOLDS',
    tone: 'good',
    text: `${heldText(result)}${sureText(result)}: ${setText(designs[pick]!.set)}.`,
  }
}

/** The design that the search ends with, and what it costs. */
function designText(result: SizeResult): string | null {
  const design = result.designs[result.pick ?? result.nearest?.design ?? -1]
  if (!design) return null
  const isPriced = design.cost !== null && !isCostInPart(result)
  const name =
    result.pick === null
      ? `${endWord(result) === 'surest design' ? 'The surest: ' : ''}${setText(design.set)}`
      : isPriced
        ? 'The cheapest that holds'
        : 'The first that holds in the order of the search'
  return `${name}${isPriced ? `; by hand a shift costs ${moneyText(design.cost!, result)}` : ''}.`
}

/** Where pencil and paper rule the nearest out: why. */
function byHandText({ nearest }: SizeResult): string | null {
  return nearest?.byHand
    ? `Not simulated, ruled out by hand: ${nearest.byHand.message.replaceAll('`', '')}`
    : null
}

/** The next cheaper design, and by how much it misses. */
function cheaperText(result: SizeResult): string | null {
  const next = result.designs[result.nextCheaper ?? -1]
  if (!next) return null
  return `${setText(next.set)} does not hold it: ${marginsOf(next.promises, result)}, in ${observed(next.shifts, result)}.`
}
