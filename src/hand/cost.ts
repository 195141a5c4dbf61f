/** What a shift of a scenario costs by hand, before anything is simulated: for putting designs in order. */
import { costElementKeys, costElements, costKey } from '../catalogue/costs.js'
import type { Scenario } from '../scenario/schema.js'
import { handCalculation } from './hand.js'

/**
 * Cost of a shift at `rate` good cases a second of working time: what is paid by the shift, and for those cases what is
 * paid by the case. Stops of the sealers are left out. Null where nothing is priced.
 */
export function shiftCostByHand(scenario: Scenario, rate: number): number | null {
  const { rows, line } = handCalculation(scenario)
  const thousands = (line.throughput * line.working) / 1000
  const priced = rows.flatMap(({ measure, value }) => {
    const element = costElementKeys.find((key) => measure === `measures.${costKey(key)}`)
    if (element === undefined) return []
    return [value * (costElements[element].isByShift ? thousands : (rate * line.working) / 1000)]
  })
  return priced.length === 0 ? null : priced.reduce((sum, cost) => sum + cost, 0)
}
