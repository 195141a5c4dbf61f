/** Measures that every piece has: the shares of its states, and of each cause for which it stands how often and how long. */
import { canAllBeAway } from '../scenario/absence.js'
import type { Floor } from './floor.js'
import type { Measure } from './measure.js'
import { Cause, causes, State, states } from './states.js'
import type { Tallies } from './unit.js'

/** Last step of the path of a count of stops that wait out a break. */
const inBreaks = '-in-breaks'

/** States of which a single long stop can be more than all else. */
const idle: readonly State[] = [State.waiting, State.blocked]

/**
 * The share of what is counted that `piece` is in each state; `stopsFor`: the causes for which it may stand, so that
 * it is never in the states of others.
 */
export const stateMeasures = (piece: Tallies, floor: Floor, stopsFor: readonly Cause[]): Measure[] =>
  states.map(({ key, label }, index) => {
    const state = index as State
    const own = stopsFor.filter((cause) => stateOf(cause).includes(state))
    const isOfStop = causes.some(({ waiting, working }) => waiting === state || working === state)
    return {
      path: ['equipment', piece.name, 'states', key],
      label: `${piece.name}: ${label}`,
      unit: 'share',
      kind: 'mean',
      value: () => piece.stateTimes[index]! / floor.counted.time,
      ...(isOfStop ? restsOn(piece, own) : {}),
      ...(isOfStop && own.length === 0 ? { isFixed: true } : {}),
      ...(own.some((cause) => detailsOf(cause).waiting === state) ? waitsOutBreaks(piece, floor, own) : {}),
      ...(idle.includes(state) ? { isUpset: true } : {}),
    }
  })

/** Number of the stops of a cause that begin in what is counted, and the time in it that such stops last. */
export function stopMeasures(piece: Tallies, cause: Cause, floor: Floor): Measure[] {
  const { key, label } = detailsOf(cause)
  const count = () => piece.stopCounts[cause]!
  const words = `${label.toLowerCase()}, ${piece.name}`
  const inTime = { ...restsOn(piece, [cause]), ...waitsOutBreaks(piece, floor, [cause]) }
  const measures: Measure[] = [
    {
      path: pathOf(piece, key),
      label: `${label} a shift, ${piece.name}`,
      unit: 'count',
      kind: 'count',
      value: count,
      isLongStop: cause === Cause.breakdown,
    },
    {
      path: pathOf(piece, `${key}-stop`),
      label: `Mean time from stop to restart, ${words}`,
      unit: 's',
      kind: 'ratio',
      value: () => piece.stopTimes[cause]!,
      over: count,
      ...inTime,
    },
    {
      path: pathOf(piece, `${key}-wait`),
      label: `of it waiting for crew, ${words}`,
      unit: 's',
      kind: 'ratio',
      value: () => piece.stopWaits[cause]!,
      over: count,
      ...inTime,
    },
  ]
  if (canWaitOutBreak(floor, cause))
    measures.push({
      path: pathOf(piece, `${key}${inBreaks}`),
      label: `${label} that waited for the end of a break, a shift, ${piece.name}`,
      unit: 'count',
      kind: 'count',
      value: () => piece.stopsInBreaks[cause]!,
      isLongStop: true,
    })
  return measures
}

const detailsOf = (cause: Cause) => causes[cause as Exclude<Cause, -1>]

const stateOf = (cause: Cause): readonly State[] => [detailsOf(cause).waiting, detailsOf(cause).working]

const pathOf = (piece: Tallies, key: string): string[] => ['equipment', piece.name, 'measures', key]

const canWaitOutBreak = ({ scenario }: Floor, cause: Cause): boolean =>
  canAllBeAway(scenario, detailsOf(cause).skill)

/** A figure of the stops of these causes. */
const restsOn = (piece: Tallies, of: readonly Cause[]): Pick<Measure, 'restsOn'> =>
  of.length > 0 ? { restsOn: of.map((cause) => pathOf(piece, detailsOf(cause).key)) } : {}

/** A figure that holds what such stops wait. */
function waitsOutBreaks(piece: Tallies, floor: Floor, of: readonly Cause[]): Pick<Measure, 'upsetBy'> {
  const rare = of.filter((cause) => canWaitOutBreak(floor, cause))
  return rare.length > 0
    ? { upsetBy: rare.map((cause) => pathOf(piece, `${detailsOf(cause).key}${inBreaks}`)) }
    : {}
}
