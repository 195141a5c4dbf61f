/** A sealer by hand: its cycle, its stops and what passes its empty rolls. */
import { meanOf } from '../../scenario/law.js'
import { lengthsOf } from '../../scenario/outside.js'
import { cycleTime, gapNeeded } from '../../trade/headway.js'
import { rollChangesPerCase } from '../../trade/stops.js'
import { casesPerRoll } from '../../trade/tape.js'
import { type ByHand, type Coming, type Cycle, type StopKind, weighed } from '../by-hand.js'
import { inGeneral } from '../in-general.js'
import { jamStops } from '../jams-by-hand.js'
import { roomOnBelts } from '../room-on-belts.js'
import { cutsOf, headsOf } from './heads.js'
import type { SealerKeys } from './keys.js'
import { changedAlong, changesPerShift, drawnOf, leftEarly, missedPerRoll, stripsPerRoll } from './rolls.js'
import { addedBySize, settingsPerCase } from './size-setting-by-hand.js'

/** Gap that the heads of a sealer keep, m. */
export const gapOf = (keys: SealerKeys): number =>
  gapNeeded(keys['minimum-gap'], cutsOf(keys), keys['belt-speed'])

/** Time of a case on the belts, s. */
const rideOf = (keys: SealerKeys): number => keys.bed / keys['belt-speed']

export const sealerByHand: ByHand<SealerKeys> = {
  ...inGeneral,
  paceKey: 'belt-speed',
  faster: 'use faster belts as far as the heads allow, a shorter gap, or a second sealer',
  cycle(keys, coming) {
    const { scenario, mix } = coming
    const gap = gapOf(keys)
    const headways = lengthsOf(scenario).map((length) => (length + gap) / keys['belt-speed'])
    const folding = meanOf(keys.flaps.time)
    const { by, time } = keys['size-setting']
    const setting =
      by === 'machine'
        ? settingsPerCase(coming) * (meanOf(time) + addedBySize(keys['size-setting'], coming).mean)
        : 0
    const cycles = headways.map((headway) => cycleTime(headway, folding))
    return {
      headway: weighed(headways, mix),
      folding,
      cycle: weighed(cycles, mix) + setting,
      how: folding > weighed(headways, mix) ? 'folding the flaps' : '(length + gap) / belt speed',
    }
  },
  stops: stopsOf,
  counted(keys, stop, shift) {
    const { scenario, perShift, working, span } = shift
    const heads = headsOf(keys).length
    const plain = inGeneral.counted(keys, stop, shift)
    switch (stop.key) {
      case 'roll-changes': {
        const each = changesPerShift(scenario, perShift, heads / stop.perCase)
        // one visit sees to `along` rolls beside its own: to 1 / (1 - share) in all
        const along = 1 / (1 - changedAlong(scenario, keys)) - 1
        return {
          ...{ ...plain, count: (heads * each) / (1 + along) },
          ...{ work: stop.work * (1 + along), time: stop.time + stop.work * along },
        }
      }
      case 'blade-services': {
        // a shift that starts empty, and the first of a campaign, starts with fresh blades
        const { campaign } = scenario.shift
        return { ...plain, count: (heads * Math.floor((plain.count * campaign) / heads)) / campaign }
      }
      case 'breakdowns':
        return { ...plain, count: (working * span) / meanOf(keys.breakdowns!.after) }
      default:
        return plain
    }
  },
  stay: (keys) => meanOf(keys.flaps.time) + rideOf(keys),
  room(keys, given) {
    const flapPlace = Math.max(0, 1 - given.flow * meanOf(keys.flaps.time))
    const room = roomOnBelts(rideOf(keys), given)
    return { ...room, holds: room.holds + flapPlace }
  },
  unsealed(keys, scenario) {
    const { roll, 'lost-per-roll': lost } = scenario.tape
    const perRoll = Math.max(1, ...drawnOf(scenario).map((each) => casesPerRoll(roll - lost, each)))
    const missed = missedPerRoll(keys['roll-change'])
    return Math.min(1, (headsOf(keys).length * missed) / (perRoll + missed))
  },
  figure: (_, { working }) => ({ key: 'working', value: working, how: 'cases x (headway + free folding)' }),
}

function stopsOf(keys: SealerKeys, coming: Coming, { headway }: Cycle): StopKind[] {
  const { scenario, mix, changes } = coming
  const heads = headsOf(keys).length
  const { blade, 'tape-breaks': breaks, 'roll-change': change, 'size-setting': setting } = keys
  // how much of its tape a roll leaves at a break depends on the shift; that little is left out of the long run
  const early = leftEarly(scenario, keys, 0)
  const strips = stripsPerRoll(scenario, drawnOf(scenario), mix, early) + missedPerRoll(change)
  const stops: StopKind[] = [
    { key: 'roll-changes', perCase: rollChangesPerCase(heads, strips), work: change.time },
  ]
  stops.push(...jamStops(keys, { scenario, mix }))
  if (breaks) stops.push({ key: 'tape-breaks', perCase: heads * breaks.chance, work: breaks.fix })
  if (blade) stops.push({ key: 'blade-services', perCase: heads / blade['service-after'], work: blade.time })
  if (setting.by === 'crew' && changes > 0)
    stops.push({
      key: 'size-settings',
      perCase: changes,
      work: setting.time,
      added: addedBySize(setting, coming),
      // the belts run empty first: what that takes beyond the headway that the case takes anyway
      more: Math.max(0, rideOf(keys) - headway),
    })
  return stops
}
