/** The catalogue of measures as a whole: their names, and what it says of a figure by where that stands in a result document. */
import {
  type EffectivenessKey,
  type HeadKey,
  isSentKey,
  ofEffectiveness,
  ofHeads,
  ofPieces,
  type PieceKey,
  pieceRow,
  sentKey,
} from './of-equipment.js'
import { type JamKey, ofJams } from './of-jams.js'
import { type MeasureKey, ofLine } from './of-line.js'
import { type ArrivalKey, type CrewKey, ofArrivals, ofCrew } from './of-people.js'
import { type StateKey, states } from './states.js'

/** What is named alike by people and in a result document. */
type NamedAlike =
  | `arrivals.${string}.${ArrivalKey}`
  | `equipment.${string}.states.${StateKey}`
  | `equipment.${string}.heads.${string}.${HeadKey}`
  | `equipment.${string}.jams.${string}.${JamKey}`
  | `equipment.${string}.effectiveness.${EffectivenessKey}`
  | `crew.${string}.${CrewKey}`

/** A measure by the name that people give for it: of the line its key, of all else a dotted path such as `equipment.sealer.jams`. */
export type MeasureName = MeasureKey | `equipment.${string}.${PieceKey}` | NamedAlike

/** Where a figure stands in a result document. */
export type FigurePath = `measures.${MeasureKey}` | `equipment.${string}.measures.${PieceKey}` | NamedAlike

/** What is said of a figure: its place with names left open, such as `equipment.NAME.measures.jams`, and its meaning. */
export interface Entry {
  place: string
  /** Empty of a figure that the catalogue has never heard of. */
  meaning: string
}

type Rows = Readonly<Record<string, { meaning: string }>>

/** What the catalogue says of the figure at `path`. */
export function entryAt(path: readonly string[]): Entry {
  const [room, , group] = path
  const key = path.at(-1)!
  const entry = (place: string, rows: Rows): Entry => ({
    place: `${place}.${key}`,
    meaning: Object.hasOwn(rows, key) ? rows[key]!.meaning : '',
  })
  if (room === 'measures') return entry('measures', ofLine)
  if (room === 'arrivals') return entry('arrivals.NAME', ofArrivals)
  if (room === 'crew') return entry('crew.NAME', ofCrew)
  if (group === 'states') return entry('equipment.NAME.states', states)
  if (group === 'heads') return entry('equipment.NAME.heads.HEAD', ofHeads)
  if (group === 'jams') return entry('equipment.NAME.jams.KIND', ofJams)
  if (group === 'effectiveness') return entry('equipment.NAME.effectiveness', ofEffectiveness)
  if (!isSentKey(key)) return entry('equipment.NAME.measures', ofPieces)
  return { place: `equipment.NAME.measures.${sentKey('TARGET')}`, meaning: pieceRow(key).meaning }
}
