/**
 * A sensor at a place of a conveyor: it sees the body of a case, moving or standing, from when the leading edge comes to the place until
 * the trailing edge has passed it. A case that goes on into a place (a station, a divert, an inspection, the flap place of a sealer, the exit)
 * is gone as a whole at once; one that goes onto another conveyor or onto belts is seen until its tail has passed.
 */
import { never } from '../engine/clock.js'

/** Asked with `Mechanism.see`: what of it is found then stands in its fields, for a number that is handed over may be allocated. */
export class Sensor {
  /** A case covers the place. */
  isCovered = false
  /** When that changes if nothing else does, s; `never` while that is not known. */
  changesAt = never
  /** Running number on the conveyor of the first case whose trailing edge may not have passed. */
  next = 0

  constructor(
    /** The place, from the end of the conveyor, m. */
    readonly fromEnd: number,
  ) {}

  reset(): void {
    this.isCovered = false
    this.changesAt = never
    this.next = 0
  }
}
