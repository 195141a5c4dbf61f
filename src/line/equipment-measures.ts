/** All measures of a piece of equipment: of its states, stops, jams and failures, and those of its mechanism. */
import type { Equipment } from './equipment.js'
import { failureMeasures } from './failures.js'
import type { Floor } from './floor.js'
import { jamMeasures } from './jam-measures.js'
import type { Measure } from './measure.js'
import { Cause } from './states.js'
import { stateMeasures, stopMeasures } from './stop-measures.js'

export function equipmentMeasures(piece: Equipment, floor: Floor): Measure[] {
  const own = piece.mechanism.mayStandFor()
  const causes = piece.breaksDown ? [...own, Cause.breakdown] : own
  return [
    ...stateMeasures(piece, floor, causes),
    ...causes.flatMap((each) => stopMeasures(piece, each, floor)),
    ...piece.mechanism.measures(),
    ...jamMeasures(piece.name, piece.mechanism, floor),
    ...(piece.breaksDown ? failureMeasures(piece, floor) : []),
  ]
}
