/** A conveyor by hand. */
import { meanOf } from '../../scenario/law.js'
import { lengthsOf } from '../../scenario/outside.js'
import { contactCapacity, zoneCapacity } from '../../trade/buffer.js'
import { wholeZones, zonesFor } from '../../trade/zones.js'
import { type ByHand, weighed } from '../by-hand.js'
import { inGeneral } from '../in-general.js'
import { roomOnBelts } from '../room-on-belts.js'
import type { ConveyorKeys } from './keys.js'

/** Time that a case rides on a conveyor without waiting, s. */
const rideOf = ({ length, zone, speed }: ConveyorKeys): number =>
  (zone === undefined ? length : wholeZones(length, zone) * zone) / speed

export const conveyorByHand: ByHand<ConveyorKeys> = {
  ...inGeneral,
  paceKey: 'speed',
  faster: 'make the conveyor faster',
  cycle({ zone, spacing, speed, carries, ...keys }, { scenario, mix }) {
    const pitch = lengthsOf(scenario).map((length) =>
      zone === undefined ? length + spacing : zonesFor(length, zone) * zone,
    )
    const delay = carries === 'belt' ? 0 : keys['start-delay']
    return {
      headway: 0,
      folding: 0,
      cycle: weighed(pitch, mix) / speed + delay,
      how: zone === undefined ? '(length + spacing) / speed' : 'zones / speed',
    }
  },
  counted(keys, stop, shift) {
    const plain = inGeneral.counted(keys, stop, shift)
    // the clock of its breakdowns goes as long as a case rides on it, not only for the time that a case keeps the next one off
    return stop.key === 'breakdowns' && keys.breakdowns
      ? { ...plain, count: (shift.working * shift.span) / meanOf(keys.breakdowns.after) }
      : plain
  },
  stay: rideOf,
  buffer(keys, { scenario, mix, flow }) {
    if (keys.carries === 'belt') return null
    const mean = weighed(lengthsOf(scenario), mix)
    const places =
      keys.zone === undefined
        ? contactCapacity(keys.length, mean, keys.spacing)
        : zoneCapacity(keys.length, keys.zone, mean)
    return { places, riding: Math.min(places, flow * rideOf(keys)) }
  },
  room(keys, given) {
    const { buffer } = given
    if (!buffer) return roomOnBelts(rideOf(keys), given)
    const places = buffer.places - buffer.riding
    return { takesIn: 0, holds: places, handsOn: places, isRigid: false, hasRoom: false }
  },
  figure: (keys, { perShift, span }) => ({
    key: 'held',
    value: (perShift * rideOf(keys)) / span,
    how: 'cases x travel time, without waiting (Little)',
  }),
}
