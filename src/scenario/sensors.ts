/** Sensors on conveyors that stop a piece and start it again, as keys say. Apart from the schema, which no thread that simulates loads. */
import type { SensorKeys } from './sensor-keys.js'

export type { SensorKeys }

export interface SensedKeys {
  'stops-when'?: SensorKeys | undefined
  'starts-when'?: SensorKeys | undefined
  restart?: number | undefined
}

/** Name of the conveyor that the sensor looks at. */
export const seenBy = ({ full, clear }: SensorKeys): string => (full ?? clear)!
