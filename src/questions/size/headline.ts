/** What a sizing says first: the pick and its margin on fresh shifts, what limits it, and which cheaper ones fail by how much. */

import { besideCost, butCannotWork, isCostInPart } from '../../answers/warnings.js'
import { sentences } from '../../report/format.js'
import type { SizedDesign, SizeResult } from './document.js'
import { asGiven, keptSentences, lessSure, lessSureSentences, sureText, withBoth } from './drawn-words.js'
import { limiting } from './limiting.js'
import { withoutPick } from './none.js'
import {
  contradiction,
  figureWords,
  freshMargins,
  heldText,
  marginsOf,
  moneyText,
  observed,
  outputText,
  priceText,
  setText,
} from './words.js'

/** Money that a difference of this size does not show in. */
const noMoney = 0.005

export function headline(result: SizeResult): string[] {
  const { pick, designs, picked, promises } = result
  if (pick === null) return withoutPick(result)
  const design = designs[pick]!
  const price = priceText(design, result)
  const lines = [
    `Choose ${setText(design.set)}: ${price !== null ? 'the cheapest design' : 'the first design in the order below'} that holds ${heldText(result)}${sureText(result)}${butCannotWork(result, 'it')}.${price === null ? '' : ` By hand calculation a shift costs ${price}.`} ${besideCost(result)}`.trimEnd(),
    ...(picked
      ? [
          `Its margin: ${freshMargins(picked, result)}${asGiven(result)}.`,
          ...contradiction(result),
          ...sentences(keptSentences(result).join(' ')),
          `In these its output is ${outputText(picked, result)}${withBoth(result)}. ${limiting(picked)}`.trimEnd(),
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
