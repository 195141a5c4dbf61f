/** A conveyor in pictures. */
import { lengthsOf, varies } from '../../scenario/outside.js'
import { wholeZones, zonesFor } from '../../trade/zones.js'
import { type InPictures, standing } from '../in-pictures.js'
import type { ConveyorKeys } from './keys.js'

export const conveyorInPictures: InPictures<ConveyorKeys> = {
  shape: ({ type, carries, length, speed }, { width }) => ({
    type,
    carries,
    length,
    width,
    speed,
    heads: [],
  }),
  movement({ length, speed, zone, spacing, carries, ...keys }, scenario) {
    if (carries === 'belt') return { ...standing, moves: 'belt', length, speed }
    return {
      moves: 'accumulating',
      length: zone === undefined ? length : wholeZones(length, zone) * zone,
      speed,
      pitches: lengthsOf(scenario).map((each) =>
        zone === undefined ? each + spacing : zonesFor(each, zone) * zone,
      ),
      ...(Object.values(scenario.cases).some((kind) => varies(kind, ['length']))
        ? { keeps: zone === undefined ? { spacing } : { zone } }
        : {}),
      startDelay: keys['start-delay'],
      servers: 1,
    }
  },
}
