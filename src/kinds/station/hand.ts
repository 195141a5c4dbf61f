/** A station by hand. */
import { meanOf } from '../../scenario/law.js'
import type { ByHand } from '../by-hand.js'
import { jamStops } from '../jams-by-hand.js'
import { placeByHand } from '../place-by-hand.js'
import type { StationKeys } from './keys.js'

/** Mean over the hours of a shift of `length` s, of which the last may be a part; the last pace holds on. */
function meanPace(paces: readonly number[], length: number): number {
  const hours = length / 3600
  let sum = 0
  for (let hour = 0; hour < hours; hour++)
    sum += paces[Math.min(hour, paces.length - 1)]! * Math.min(1, hours - hour)
  return sum / hours
}

export const stationByHand: ByHand<StationKeys> = {
  ...placeByHand,
  faster: 'use more `servers`, a shorter `time`, or fewer planned stops',
  cycle: ({ time, servers, 'by-hour': paces }, { scenario }) => ({
    headway: 0,
    folding: 0,
    cycle: meanOf(time) / servers / (paces ? meanPace(paces, scenario.shift.length) : 1),
    how: paces ? 'time per case / (places x mean pace)' : 'time per case / places',
  }),
  stops: ({ every, jams }, coming) => [
    ...(every ? [{ key: 'planned-stops' as const, perCase: 1 / every.cases, work: every.stop }] : []),
    ...jamStops({ jams }, coming),
  ],
  places: ({ servers }) => servers,
  buffer({ 'waiting-room': room }) {
    const places = room === 'unlimited' ? Infinity : room
    return places > 0 ? { places, riding: 0 } : null
  },
  room: ({ time, servers, 'waiting-room': waiting }, { flow, buffer }) => ({
    takesIn: (buffer?.places ?? 0) + Math.max(0, servers - flow * meanOf(time)),
    holds: 0,
    handsOn: buffer?.places ?? 0,
    isRigid: false,
    hasRoom: waiting === 'unlimited' || servers + waiting > 1,
  }),
  figure: (_, { perShift, cycle, span }) => ({
    key: 'utilisation',
    value: (perShift * cycle) / span,
    how: 'cases x time per case / places',
  }),
}
