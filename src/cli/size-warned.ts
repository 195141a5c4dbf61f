/** What stands at the head of a sizing: errors of the pick, and prices that the order by cost leaves out. */

import { headed, type Warned, warningsOf } from '../answers/warning.js'
import type { Scenario } from '../scenario/schema.js'
import type { SizeAsked } from './size-asked.js'
import type { ChosenDesign } from './size-choices.js'
import { checkedDesign, pricedDesign, warnedDesign } from './warned.js'

/** The scenario with the promised rate as its target, if a rate is promised: what is promised is what a design is checked against. */
export function atPromisedRate(
  { target, ...others }: Scenario,
  { needs }: Pick<SizeAsked, 'needs'>,
): Scenario {
  const rate = Math.max(needs.rate ?? 0, needs.target ? (target ?? 0) : 0)
  return rate > 0 ? { ...others, target: rate } : others
}

/** The head; `pick` is the place of the pick in `ordered`. Errors of other designs, and of the scenario itself, are none of the answer. */
export function sizeHead(ordered: readonly ChosenDesign[], pick: number | null, asked: SizeAsked): Warned {
  const picked =
    pick === null
      ? []
      : [warnedDesign(checkedDesign('the pick', atPromisedRate(ordered[pick]!.scenario, asked)))]
  return headed(warningsOf([...picked, ...ordered.map(pricedDesign)]))
}
