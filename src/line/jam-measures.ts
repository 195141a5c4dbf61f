/** Measures of jams: cases spoilt, and of each kind of jam that has a name how often, how long, and what it spoils. */
import { jamPath } from '../catalogue/of-jams.js'
import { canAllBeAway } from '../scenario/absence.js'
import type { Floor } from './floor.js'
import { heaviest, type JamKind } from './jam-kind.js'
import { jamKindMeasures, type Measure, pieceMeasures } from './measure.js'
import type { Mechanism } from './mechanism.js'

/** Of a piece that may jam. A sealer tells of the cases that it spoils itself, whether it jams or not. */
export function jamMeasures(name: string, mechanism: Mechanism, floor: Floor): Measure[] {
  const { jams } = mechanism
  if (!jams) return []
  const lost = pieceMeasures(name)('cases-lost', () => jams.casesLost)
  const weighs = heaviest(jams.kinds)
  return [
    ...(mechanism.taper() ? [] : [lost]),
    ...jams.named.flatMap((kind) => kindMeasures(name, kind, kind === weighs, floor)),
  ]
}

function kindMeasures(piece: string, kind: JamKind, isLong: boolean, { scenario }: Floor): Measure[] {
  const name = kind.name!
  const measure = jamKindMeasures(piece, name)
  const over = () => kind.count
  const ofTimes = {
    restsOn: [jamPath(piece, name, 'stops')],
    ...(canAllBeAway(scenario, kind.call) ? { upsetBy: [jamPath(piece, name, 'in-breaks')] } : {}),
  }
  return [
    { ...measure('stops', over), ...(isLong ? { isLongStop: true } : {}) },
    measure('stop', () => kind.time, { over, ...ofTimes }),
    measure('wait', () => kind.wait, { over, ...ofTimes }),
    measure('time', () => kind.time, ofTimes),
    measure('cases-lost', () => kind.casesLost),
    ...(canAllBeAway(scenario, kind.call) ? [measure('in-breaks', () => kind.inBreaks)] : []),
  ]
}
