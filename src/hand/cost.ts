/** What a shift of a scenario costs by hand, before anything is simulated: for putting designs in order. */
import type { Scenario } from '../scenario/schema.js'
import { handCalculation } from './hand.js'

/** Elements that are paid by the shift, whatever it puts out; the others by the case. */
const paidByShift = ['labour', 'energy', 'maintenance', 'capital']

const prefix = 'measures.cost-per-1000-'

/**
 * Cost of a shift at `rate` good cases a second of working time: what is paid by the shift, and for those cases what is
 * paid by the case. Stops of the sealers are left out. Null where nothing is priced.
 */
export function shiftCostByHand(scenario: Scenario, rate: number): number | null {
  const { rows, line } = handCalculation(scenario)
  const thousands = (line.throughput * line.working) / 1000
  const priced = rows.filter(({ measure }) => measure.startsWith(prefix))
  if (priced.length === 0) return null
  return priced.reduce((sum, { measure, value }) => {
    const isByShift = paidByShift.includes(measure.slice(prefix.length))
    return sum + value * (isByShift ? thousands : (rate * line.working) / 1000)
  }, 0)
}
