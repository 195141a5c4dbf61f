/** Entries that a text holds by name or in a list: one more like one that is there, and one taken out. */
import { isMap } from '../../scenario/is-map.js'
import { amountOf, amountText, converted } from '../fields/amounts.js'
import type { Edited, Refused } from './edited.js'
import { freeName } from './new-pieces.js'
import { rewritten } from './rewritten.js'
import { standingAt, stepsOf } from './steps.js'
import type { Tree } from './yaml-text.js'

/** Parts of a scenario that hold things by name, but for the pieces of the line, which have a place in it. */
export type Room = 'cases' | 'arrivals' | 'crew'

const entriesOf = (tree: Tree, room: Room): Tree => {
  const held = tree[room]
  return isMap(held) ? held : {}
}

const missing = (name: string): Refused => ({
  rule: `there is no \`${name}\``,
  fix: 'choose one that is there',
})

/** The text with one more entry like `name`, behind all others; its name comes back with it. */
export const addLike = (text: string, room: Room, name: string): Edited =>
  rewritten(text, (tree) => {
    const entries = entriesOf(tree, room)
    if (!Object.hasOwn(entries, name)) return missing(name)
    // packing, packing 2, packing 3; table-1, table-1 2
    const made = freeName(name.replace(/ \d+$/, ''), Object.keys(entries))
    entries[made] = structuredClone(entries[name])
    return made
  })

/** The text without an entry; the last one stays, for a line needs one. */
export const removeEntry = (text: string, room: Room, name: string): Edited =>
  rewritten(text, (tree) => {
    const entries = entriesOf(tree, room)
    if (!Object.hasOwn(entries, name)) return missing(name)
    if (Object.keys(entries).length < 2)
      return { rule: 'it is the only one', fix: 'add another one like it first' }
    delete entries[name]
    return null
  })

/** The text with one more entry in the list at `path`: like the last one, an hour later where it has a time of the shift. */
export const addToList = (text: string, path: string): Edited =>
  rewritten(text, (tree) => {
    const steps = stepsOf(tree, path)
    if (!Array.isArray(steps)) return steps
    const list = standingAt(tree, steps)
    if (!Array.isArray(list) || list.length === 0)
      return { rule: 'there is no list yet', fix: 'write its first entry' }
    list.push(later(structuredClone(list.at(-1))))
    return null
  })

/** Two at one time would be in each other's way. */
function later(entry: unknown): unknown {
  const at = isMap(entry) ? amountOf(entry.at, 'time') : null
  if (!at) return entry
  const hour = converted({ number: 1, unit: 'h' }, 'time', at.unit).number
  return { ...(entry as Tree), at: amountText({ ...at, number: Number((at.number + hour).toPrecision(6)) }) }
}
