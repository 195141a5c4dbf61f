/** Measures that every piece has: the shares of its states, and of each cause for which it stands how often and how long. */
import type { Equipment } from './equipment.js'
import type { Floor } from './floor.js'
import type { Measure } from './measure.js'
import { type Cause, causes, states } from './states.js'

/** The share of what is counted that `piece` is in each state. */
export const stateMeasures = (piece: Equipment, { counted }: Floor): Measure[] =>
  states.map(({ key, label }, index) => ({
    path: ['equipment', piece.name, 'states', key],
    label: `${piece.name}: ${label}`,
    unit: 'share',
    kind: 'mean',
    value: () => piece.stateTimes[index]! / counted.time,
  }))

/** Number of the stops of a cause that begin in what is counted, and the time in it that such stops last. */
export function stopMeasures(piece: Equipment, cause: Cause): Measure[] {
  const { key, label } = causes[cause as Exclude<Cause, -1>]
  const at = ['equipment', piece.name, 'measures']
  const count = () => piece.stopCounts[cause]!
  const words = `${label.toLowerCase()}, ${piece.name}`
  return [
    {
      path: [...at, key],
      label: `${label} a shift, ${piece.name}`,
      unit: 'count',
      kind: 'total',
      value: count,
    },
    {
      path: [...at, `${key}-stop`],
      label: `Mean time from stop to restart, ${words}`,
      unit: 's',
      kind: 'ratio',
      value: () => piece.stopTimes[cause]!,
      over: count,
    },
    {
      path: [...at, `${key}-wait`],
      label: `of it waiting for crew, ${words}`,
      unit: 's',
      kind: 'ratio',
      value: () => piece.stopWaits[cause]!,
      over: count,
    },
  ]
}
