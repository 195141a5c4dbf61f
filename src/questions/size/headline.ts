/** What a sizing says first: the pick and its margin on fresh shifts, what limits it, and which cheaper ones fail by how much. */

import { besideCost, butCannotWork, isCostInPart } from '../../answers/warnings.js'
import { figureText } from '../../report/format.js'
import type { SizedDesign, SizeResult } from './document.js'
import { asGiven, keptSentences, lessSure, lessSureSentences, sureText, withBoth } from './drawn-words.js'
import { limiting } from './limiting.js'
import { withoutPick } from './none.js'
import { contradiction, figureWords, heldText, marginsOf, moneyText, observed, setText } from './words.js'

/** Money that a difference of this size does not show in. */
const noMoney = 0.005

export function headline(result: SizeResult): string[] {
  const { pick, designs, picked, display, promises } = result
  if (pick === null) return withoutPick(result)
  const design = designs[pick]!
  const isPriced = design.cost !== null && !isCostInPart(result)
  const lines = [
    `Choose ${setText(design.set)}: ${isPriced ? 'the cheapest design' : 'the first design in the order below'} that holds ${heldText(result)}${sureText(result)}${butCannotWork(result, 'it')}.${isPriced ? ` By hand calculation a shift costs ${moneyText(design.cost!, result)}.` : ''} ${besideCost(result)}`.trimEnd(),
    ...(picked
      ? [
          `Its margin: ${marginsOf(picked.promises, result)}, in ${observed(picked.shifts, result, 'fresh ')} that the search did not see${asGiven(result)}.`,
          ...contradiction(result),
          ...joinedOnes(keptSentences(result)),
          `In these its output is ${figureText(picked.measures.throughput, display)}, ${figureText(picked.measures.output, display)} a shift${withBoth(result)}. ${limiting(picked)}`.trimEnd(),
        ]
      : []),
    ...(lessSure(result).length > 0 ? lessSureSentences(result, design) : cheaperOnes(result, design)),
  ]
  const open = designs.filter(({ verdict }, index) => verdict === 'undecided' && index < pick)
  if (open.length > 0)
    lines.push(
      `Not decided in ${observed(result.made.shifts, result)}, and skipped: ${open.map((each) => `${setText(each.set)} (${figureWords(each.promises[0], promises[0]!.unit, result)})`).join('; ')}. Allow more --shifts, or a larger "within".`,
    )
  return lines
}

/** Sentences as one paragraph; none where there are none. */
const joinedOnes = (said: readonly string[]): string[] => (said.length > 0 ? [said.join(' ')] : [])

/** The nearest ones before the pick that were simulated and refused: in the order, and of those that cost less. */
function cheaperOnes(result: SizeResult, pick: SizedDesign): string[] {
  const { designs, nextCheaper } = result
  if (nextCheaper === null)
    return [
      pick.place === 1
        ? pick.cost === null || isCostInPart(result)
          ? 'It is the first design in the order.'
          : 'No design costs less.'
        : isCostInPart(result)
          ? 'All designs before it in the order are ruled out by hand calculation.'
          : 'No cheaper design was simulated: it is the cheapest that hand calculation does not rule out.',
    ]
  const saved = (design: SizedDesign) =>
    design.cost === null || pick.cost === null ? null : pick.cost - design.cost
  const tell = (design: SizedDesign, which: string, price: string) =>
    `${which}, with ${differing(design, pick)},${price} does not hold it: ${marginsOf(design.promises, result)}, in ${observed(design.shifts, result)}.`
  const next = designs[nextCheaper]!
  const amount = saved(next)
  const simulated = 'The next cheaper simulated design'
  if (amount === null) return [tell(next, 'The next simulated design before it', '')]
  const less = (design: SizedDesign) => ` costs ${moneyText(saved(design)!, result)} a shift less and`
  if (amount >= noMoney) return [tell(next, simulated, less(next))]
  const cheaper = designs.findLast(
    (design) =>
      design.place < pick.place &&
      design.without === null &&
      design.verdict === 'refused' &&
      (saved(design) ?? 0) >= noMoney,
  )
  return [
    tell(next, 'The next design before it', ' costs the same and'),
    ...(cheaper ? [tell(cheaper, simulated, less(cheaper))] : []),
  ]
}

/** What of a design is not as in the pick. */
const differing = ({ set }: SizedDesign, pick: SizedDesign): string =>
  setText(
    Object.fromEntries(
      Object.entries(set).filter(([path, value]) => JSON.stringify(value) !== JSON.stringify(pick.set[path])),
    ),
  )
