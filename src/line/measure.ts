/** What a line reports of one shift: rows of the catalogue with what only the model knows of them. */

import {
  type EffectivenessKey,
  type HeadKey,
  ofEffectiveness,
  ofHeads,
  pieceRow,
} from '../catalogue/of-equipment.js'
import { type JamKey, ofJams } from '../catalogue/of-jams.js'
import { type MeasureKey, ofLine } from '../catalogue/of-line.js'
import { type ArrivalKey, type CrewKey, ofArrivals, ofCrew } from '../catalogue/of-people.js'
import type { NamedRow, Row } from '../catalogue/row.js'
import { stateRow } from '../catalogue/states.js'
import type { Level } from '../engine/tally.js'

/** What the model knows of a measure besides its value. */
interface Known {
  /** The denominator of a ratio. */
  over?: () => number
  /** Counts of the events that the figure tells of, such as the stops whose mean time it is: with few of them little is known. */
  restsOn?: readonly (readonly string[])[]
  /** Counts of rare events of which a single one can outweigh all others. */
  upsetBy?: readonly (readonly string[])[]
  /** The scenario allows no other value. */
  isFixed?: boolean
  /** Of pieces side by side together: each of them has one of its own. */
  isTogether?: true
}

/** One measure. */
export interface Measure extends Row<string>, Known {
  /** Place in the result document, such as `equipment`, `sealer`, `measures`, `jams`. */
  path: readonly string[]
  /** Reads the shift that has just ended; NaN where the shift says nothing. Of a ratio its numerator. */
  value: () => number
}

/** A measure of the line as a whole. */
export const lineMeasure = (key: MeasureKey, value: () => number, known: Known = {}): Measure => ({
  ...ofLine[key],
  path: ['measures', key],
  value,
  ...known,
})

/** Makes the measures of one place of the document, all of which have the same name in their words. */
const measuresAt =
  <Key extends string>(
    path: readonly string[],
    rowOf: (key: Key) => NamedRow,
    name: string,
    where = `in ${name}`,
  ) =>
  (key: Key, value: () => number, known: Known = {}): Measure => {
    const row = rowOf(key)
    return { ...row, label: row.label(name, where), path: [...path, key], value, ...known }
  }

/** Of the piece `name`; `where`: what it holds is there, in words such as `on infeed`. */
export const pieceMeasures = (name: string, where?: string) =>
  measuresAt(['equipment', name, 'measures'], pieceRow, name, where)

export const headMeasures = (machine: string, head: string) =>
  measuresAt(['equipment', machine, 'heads', head], (key: HeadKey) => ofHeads[key], `${machine} ${head} head`)

/** Of the kind `jam` of the jams of a piece. */
export const jamKindMeasures = (piece: string, jam: string) =>
  measuresAt(['equipment', piece, 'jams', jam], (key: JamKey) => ofJams[key], `${piece}, ${jam}`)

/** Of the share of time in each state. */
export const shareMeasures = (name: string) => measuresAt(['equipment', name, 'states'], stateRow, name)

export const isoMeasures = (name: string) =>
  measuresAt(['equipment', name, 'effectiveness'], (key: EffectivenessKey) => ofEffectiveness[key], name)

export const arrivalMeasures = (name: string) =>
  measuresAt(['arrivals', name], (key: ArrivalKey) => ofArrivals[key], name)

export const crewMeasures = (name: string) => measuresAt(['crew', name], (key: CrewKey) => ofCrew[key], name)

/** What is told of every place that holds cases. `where` is its words, such as `on infeed`. */
export function heldMeasures(name: string, where: string, level: Level, shareFull: () => number): Measure[] {
  const measure = pieceMeasures(name, where)
  return [
    measure('held', () => level.mean()),
    measure('held-p95', () => level.quantile(0.95)),
    measure('held-largest', () => level.largest),
    measure('share-full', shareFull),
  ]
}

/** A place whose number of cases is drawn over the shift. */
export interface HeldSeries {
  name: string
  samples: Float64Array
}
