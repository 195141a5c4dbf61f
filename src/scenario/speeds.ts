/** Steps of the speed of a drive by how full a conveyor is. Apart from the schema, which no thread that simulates loads. */
import type { SpeedStep } from './speed-keys.js'

export type { SpeedStep }

/** By how much the level must fall before a step is left again, as a share of the conveyor: 10 points, common practice, no source. */
const usualFall = 0.1

/** The level under which a step is left again. */
export const backBelow = ({ above, 'back-below': given }: SpeedStep): number =>
  given ?? Math.max(0, above - usualFall)
