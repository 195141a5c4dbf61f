/** What each piece of a line costs to buy. */
import { has } from '../kinds/traits.js'
import type { Scenario } from './schema.js'

/** Price of each piece that has one, by its path; that of a conveyor priced by the metre is for its whole length. */
export function capitalOf({ money, line }: Scenario): Record<string, { amount: number }> | undefined {
  if (money?.capital === undefined) return undefined
  return Object.fromEntries(
    Object.entries(money.capital).map(([path, { amount, per }]) => {
      const piece = line[path.slice('line.'.length)]
      const metres = per === 'm' && piece && has(piece, 'conveys') ? piece.length : 1
      return [path, { amount: amount * metres }]
    }),
  )
}

/** The money of a scenario with what was bought as amounts. */
export const pricedMoney = (scenario: Scenario) => ({ ...scenario.money, capital: capitalOf(scenario) })
