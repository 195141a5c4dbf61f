/** Where a sensor stands on its conveyor. */
import { longestCase } from './outside.js'
import type { Scenario } from './schema.js'
import { type SensorKeys, seenBy } from './sensors.js'

/** From the end of the conveyor back, m. */
export function placeOf(keys: SensorKeys, scenario: Scenario): number {
  return keys.at ?? farthestBehind(seenBy(keys), scenario)
}

/** The longest case behind the entrance of a conveyor: nothing that still lies on the piece before it covers this place, m from its end. */
export function farthestBehind(name: string, { line, ...scenario }: Scenario): number {
  const piece = line[name]
  const length = piece?.type === 'conveyor' ? piece.length : 0
  return Math.max(0, length - (longestCase({ line, ...scenario })?.length ?? 0))
}
