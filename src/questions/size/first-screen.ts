/** The first screen of a sizing: the pick, or the nearest design with its shortfall, its margin, what limits it and what to do next. */

import {
  checkParts,
  limitsText,
  nextPart,
  part,
  plain,
  restsOnPart,
  safetyPart,
} from '../../answers/first-screen.js'
import { changesText } from '../../answers/flow.js'
import { butCannotWork, cannotWork } from '../../answers/warnings.js'
import { counted } from '../../report/format.js'
import type { Screen, Verdict } from '../../report/screen.js'
import { labelOf } from '../../scenario/labels.js'
import { isShown, type SizeResult } from './document.js'
import { keptSentences, sureText } from './drawn-words.js'
import { nextOfSize } from './report.js'
import {
  contradiction,
  endDesign,
  endOf,
  endWord,
  freshMargins,
  heldText,
  marginsOf,
  observed,
  outputText,
  priceText,
  promisesText,
} from './words.js'

/** The first screen of a sizing. */
export function sizeScreen(result: SizeResult): Screen {
  const end = endOf(result)
  return {
    title: result.made.scenario.title,
    display: result.display,
    verdict: verdictOf(result),
    parts: [
      ...checkParts(result),
      ...part(result.pick === null ? 'Nearest' : 'Pick', [designText(result)]),
      ...part('Margin', [end ? `${freshMargins(end.afresh, result)}.` : byHandText(result)]),
      ...part('Draws', [keptSentences(result).join(' ')]),
      ...part('Output', [end && `${outputText(end.afresh, result)}.`]),
      ...part('Limit', [end ? limitsText(end.afresh, end.afresh) : null]),
      ...part('Cheaper', [result.pick !== null && cheaperText(result)]),
      ...nextPart(nextOfSize(result), result),
      ...restsOnPart(result, result.drawn !== undefined, { isEach: true, more: [searchText(result)] }),
      ...safetyPart,
    ],
  }
}

/** How many designs were simulated. */
function searchText({ spent, all }: SizeResult): string {
  if (spent.designs === 0) return `None of the ${counted(all, 'design')} was simulated.`
  const which =
    spent.designs === all
      ? `All ${counted(all, 'design')}`
      : `${spent.designs} of the ${counted(all, 'design')}`
  return `${which} ${spent.designs === 1 ? 'was' : 'were'} simulated, with ${counted(spent.shifts, 'shift')} in all.`
}

/** A design by the labels of what was chosen: `length of infeed = 5 m, number of people, operator = 1`. */
const namedText = (set: Record<string, unknown>): string =>
  changesText(Object.fromEntries(Object.entries(set).map(([path, value]) => [labelOf(path), value])), '; ')

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
    text: `${heldText(result)}${sureText(result)}: ${namedText(designs[pick]!.set)}.`,
  }
}

/** The design that the search ends with, and what it costs. */
function designText(result: SizeResult): string | null {
  const design = endDesign(result)
  if (!design) return null
  const price = priceText(design, result)
  const name =
    result.pick === null
      ? `${endWord(result) === 'surest design' ? 'The surest: ' : ''}${namedText(design.set)}`
      : price !== null
        ? 'The cheapest that holds'
        : 'The first that holds in the order of the search'
  return `${name}${price === null ? '' : `; by hand a shift costs ${price}`}.`
}

/** Where pencil and paper rule the nearest out: why. */
function byHandText({ nearest }: SizeResult): string | null {
  return nearest?.byHand
    ? `Not simulated, because by hand calculation it does not hold. ${plain(nearest.byHand.message)}`
    : null
}

/** The next cheaper design, and by how much it misses. */
function cheaperText(result: SizeResult): string | null {
  const next = result.designs[result.nextCheaper ?? -1]
  if (!next) return null
  return `${namedText(next.set)} does not hold it: ${marginsOf(next.promises, result)}, in ${observed(next.shifts, result)}.`
}
