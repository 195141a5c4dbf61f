/** Parts of a scenario that fields are shown by: each piece of the line, each kind of case, each crew, and what is for the whole line. */
import type { FieldGroup } from '../../fields/field.js'

export interface Part {
  /** `line.sealer`, `tape`; empty of the file itself. */
  path: string
  /** The room it stands in: `line`, `cases`; its own where it is the only one. */
  room: string
  name: string
  groups: readonly FieldGroup[]
}

/** Rooms in which each entry is a part of its own. */
const ofEntries = ['line', 'cases', 'arrivals', 'crew']

/** What rooms are called. */
export const roomNames: Readonly<Record<string, string>> = {
  '': 'Target and title',
  line: 'The line',
  cases: 'Cases',
  arrivals: 'Arrivals',
  tape: 'Tape',
  closure: 'Closure',
  site: 'Site',
  crew: 'Crew',
  shift: 'Shift',
  money: 'Money',
  study: 'Study',
}

/** Groups by the part that they belong to, in their order. */
export function partsOf(groups: readonly FieldGroup[]): Part[] {
  const parts = new Map<string, FieldGroup[]>()
  for (const group of groups) {
    const [room = '', ...rest] = group.path.split('.')
    const path = ofEntries.includes(room) && rest.length > 0 ? `${room}.${rest[0]}` : room
    parts.set(path, [...(parts.get(path) ?? []), group])
  }
  return [...parts].map(([path, all]) => {
    const [room = '', name] = path.split('.')
    return { path, room, name: name ?? roomNames[room] ?? all[0]!.title, groups: all }
  })
}

/** Name of the piece of which the part is; null of all else. */
export const pieceOf = (path: string): string | null =>
  path.startsWith('line.') ? path.slice('line.'.length) : null
