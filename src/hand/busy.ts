/** How long a stop waits for people who are busy elsewhere, by hand. */
import type { Call } from '../scenario/crew-keys.js'
import type { Scenario } from '../scenario/schema.js'
import type { LineHand } from './line.js'
import { firstWith } from './pace.js'
import { stopsPerShift } from './stop-counts.js'

/**
 * Mean time, s, that a stop of `place` waits until somebody of the crew that is called first is free: the chance that all of them are
 * at other pieces, times what is left of a task over the people. What is left: mean square over twice the mean. Of crews that stand in
 * for each other, and of breaks, nothing is counted. Derived, as for a queue with one server (residual service).
 */
export function waitForBusy(scenario: Scenario, line: LineHand, skill: Call, place: string): number {
  const crew = firstWith(scenario, skill)
  if (!crew) return 0
  const { people } = scenario.crew[crew.name]!
  let [time, square] = [0, 0]
  for (const piece of line.pieces) {
    if (piece.name === place) continue
    for (const stop of stopsPerShift(scenario, line, piece)) {
      if (stop.skill === null || firstWith(scenario, stop.skill)?.name !== crew.name) continue
      time += stop.count * stop.time
      square += stop.count * (stop.time ** 2 + stop.spread ** 2)
    }
  }
  if (time === 0) return 0
  return Math.min(1, time / line.span / people) ** people * (square / (2 * time) / people)
}
