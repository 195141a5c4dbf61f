/** What planned work, handovers and slow starts leave of the working time, by hand. */
import type { Scenario } from '../scenario/schema.js'
import { workingTime } from '../scenario/working-time.js'
import { handoverStop, plannedStop } from './planned.js'
import { slowStartsOf } from './slow-starts.js'

/** Share of the working time that they leave to a piece. What of it lies in breaks is counted as if it did not. */
export function withoutPlanned(scenario: Scenario, piece: Scenario['line'][string]): number {
  const lost = [plannedStop(scenario, piece), handoverStop(piece), slowStartsOf(scenario, piece)].reduce(
    (sum, stop) => sum + (stop === null ? 0 : stop.count * stop.time),
    0,
  )
  return Math.max(0, 1 - lost / workingTime(scenario.shift))
}
