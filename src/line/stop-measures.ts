/** Measures that every piece has: the shares of its states, and of each cause for which it stands how often and how long. */
import type { CauseKey } from '../catalogue/causes.js'
import type { PieceKey } from '../catalogue/of-equipment.js'
import { jamPath } from '../catalogue/of-jams.js'
import { canAllBeAway } from '../scenario/absence.js'
import type { Floor } from './floor.js'
import { type Measure, pieceMeasures, shareMeasures } from './measure.js'
import { Cause, causes, stateKeys } from './states.js'
import type { Tallies } from './unit.js'

/**
 * The share of what is counted that `piece` is in each state; `stopsFor`: the causes for which it may stand, so that
 * it is never in the states of others.
 */
export function stateMeasures(piece: Tallies, floor: Floor, stopsFor: readonly Cause[]): Measure[] {
  const measure = shareMeasures(piece.name)
  return stateKeys.map((key, state) => {
    const value = () => piece.stateTimes[state]! / floor.counted.time
    const isOf = ({ waiting, working }: (typeof causes)[number]) => waiting === state || working === state
    if (!causes.some(isOf)) return measure(key, value)
    const own = stopsFor.filter((cause) => isOf(causes[cause]!))
    return measure(key, value, {
      ...restsOn(piece, own),
      ...(own.length === 0 ? { isFixed: true } : {}),
      ...(own.some((cause) => causes[cause]!.waiting === state) ? waitsOutBreaks(piece, floor, own) : {}),
    })
  })
}

/** Number of the stops of a cause that begin in what is counted, and the time in it that such stops last. */
export function stopMeasures(piece: Tallies, cause: Cause, floor: Floor): Measure[] {
  const { key } = causes[cause]!
  const measure = pieceMeasures(piece.name)
  const over = () => piece.stopCounts[cause]!
  const inTime = { over, ...ofStopTime(piece, cause, floor) }
  const measures = [
    measure(key, over),
    measure(`${key}-stop`, () => piece.stopTimes[cause]!, inTime),
    measure(`${key}-wait`, () => piece.stopWaits[cause]!, inTime),
  ]
  return canWaitOutBreak(piece, floor, cause)
    ? [...measures, measure(inBreaks(key), () => piece.stopsInBreaks[cause]!)]
    : measures
}

/** What is known of a figure that holds the times of the stops of a cause. */
export const ofStopTime = (
  piece: Tallies,
  cause: Cause,
  floor: Floor,
): Pick<Measure, 'restsOn' | 'upsetBy'> => ({
  ...restsOn(piece, [cause]),
  ...waitsOutBreaks(piece, floor, [cause]),
})

/** Count of the stops that wait out a break. */
const inBreaks = (key: CauseKey) => `${key}-in-breaks` as const

const pathOf = (piece: Tallies, key: PieceKey): string[] => ['equipment', piece.name, 'measures', key]

const canWaitOutBreak = (piece: Tallies, { scenario }: Floor, cause: Cause): boolean =>
  piece.callsFor(cause).some((call) => canAllBeAway(scenario, call))

/** The count that tells how much is known of such stops: of jams that of the kind that weighs most. */
const countOf = (piece: Tallies, cause: Cause): readonly string[] =>
  cause === Cause.jam && piece.heavyJam !== null
    ? jamPath(piece.name, piece.heavyJam, 'stops')
    : pathOf(piece, causes[cause]!.key)

/** A figure of the stops of these causes. */
export const restsOn = (piece: Tallies, of: readonly Cause[]): Pick<Measure, 'restsOn'> =>
  of.length > 0 ? { restsOn: of.map((cause) => countOf(piece, cause)) } : {}

/** A figure that holds what such stops wait. */
function waitsOutBreaks(piece: Tallies, floor: Floor, of: readonly Cause[]): Pick<Measure, 'upsetBy'> {
  const rare = of.filter((cause) => canWaitOutBreak(piece, floor, cause))
  return rare.length > 0 ? { upsetBy: rare.map((cause) => pathOf(piece, inBreaks(causes[cause]!.key))) } : {}
}
