/** Parts of a scenario that fields are shown by: each piece of the line, each kind of case, each crew, and what is for the whole line. */
import type { FieldGroup } from '../../fields/field.js'

export interface Part {
  /** `line.sealer`, `tape`; empty of the file itself. */
  path: string
  /** The room it stands in: `line`, `cases`; its own where it is the only one. */
  room: string
  name: string
  group: FieldGroup
}

/** What rooms of several parts are called. */
export const roomNames: Readonly<Record<string, string>> = {
  line: 'The line',
  cases: 'Cases',
  arrivals: 'Arrivals',
  crew: 'Crew',
}

/** Groups as parts, in their order. */
export const partsOf = (groups: readonly FieldGroup[]): Part[] =>
  groups.map((group) => {
    const { path, title } = group
    const dot = path.indexOf('.')
    if (dot < 0) return { path, room: path, name: path === '' ? 'Target and title' : title, group }
    return { path, room: path.slice(0, dot), name: path.slice(dot + 1), group }
  })

/** Name of the piece of which the part is; null of all else. */
export const pieceOf = (path: string): string | null =>
  path.startsWith('line.') ? path.slice('line.'.length) : null
