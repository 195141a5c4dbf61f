/** Parts of a scenario that fields are shown by: each piece of the line, each kind of case, each crew, and what is for the whole line. */
import type { Field, FieldGroup } from '../../fields/field.js'

export interface Part {
  /** `line.sealer`, `tape`; empty of the file itself. */
  path: string
  /** The room it stands in: `line`, `cases`; its own where it is the only one. */
  room: string
  name: string
}

/** What rooms of several parts are called. */
export const roomNames: Readonly<Record<string, string>> = {
  line: 'The line',
  cases: 'Cases',
  arrivals: 'Arrivals',
  crew: 'Crew',
}

/** Groups by path and title as parts, in their order. */
export const partsOf = (titles: readonly { path: string; title: string }[]): Part[] =>
  titles.map(({ path, title }) => {
    const dot = path.indexOf('.')
    if (dot < 0) return { path, room: path, name: path === '' ? 'Target and title' : title }
    return { path, room: path.slice(0, dot), name: path.slice(dot + 1) }
  })

/** The group with those fields of `before` that are still the same: what has not changed is not drawn anew. */
export function withSame(group: FieldGroup, before: FieldGroup | null): FieldGroup {
  const known = new Map(before?.fields.map((field) => [field.path, field]))
  const isSame = (one: Field, other: Field | undefined): other is Field =>
    other !== undefined && JSON.stringify(one) === JSON.stringify(other)
  const fields = group.fields.map((field) => {
    const other = known.get(field.path)
    return isSame(field, other) ? other : field
  })
  return { ...group, fields }
}

/** Name of the piece of which the part is; null of all else. */
export const pieceOf = (path: string): string | null =>
  path.startsWith('line.') ? path.slice('line.'.length) : null
