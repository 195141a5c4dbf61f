/** Values of a text by dotted path: set, and taken back to what holds where nobody says. */
import { parse } from 'yaml'
import { isMap } from '../../scenario/is-map.js'
import { scenarioSchema } from '../../scenario/schema.js'
import { child, definition, type Schema } from '../../scenario/walk.js'
import type { Edited, Refused } from './edited.js'
import { rewritten } from './rewritten.js'
import { standingAt, stepsOf, suited } from './steps.js'
import type { Tree } from './yaml-text.js'

/** The text with a value at `path`, written as YAML, as `--set` takes it. */
export function setValue(text: string, path: string, yaml: string): Edited {
  let value: unknown
  try {
    value = parse(yaml, { maxAliasCount: 0 })
  } catch {
    return { rule: 'the value must be YAML', fix: 'put a text with signs in quotes' }
  }
  return rewritten(text, (tree) => putAt(tree, path, value))
}

/** Puts a value at `path` of `tree`, in place; maps on the way are made. Returns why it cannot. */
export function putAt(tree: Tree, path: string, value: unknown): Refused | null {
  const steps = stepsOf(tree, path)
  if (!Array.isArray(steps)) return steps
  let place: Record<string, unknown> = tree
  for (const step of steps.slice(0, -1)) {
    const inside = place[step]
    if (!isMap(inside) && !Array.isArray(inside)) place[step] = {}
    place = place[step] as Record<string, unknown>
  }
  const last = steps.at(-1)!
  if (Array.isArray(place) && Number(last) > place.length)
    return { rule: `the list has ${place.length} entries`, fix: `write entry ${place.length} first` }
  place[last] = value
  return null
}

/** The text without a value at `path`; maps that hold nothing any more go with it, as far as the format does not need them. */
export const unsetValue = (text: string, path: string): Edited =>
  rewritten(text, (tree) => takeFrom(tree, path))

/** Takes what stands at `path` out of `tree`, in place. Returns why it cannot. */
export function takeFrom(tree: Tree, path: string): Refused | null {
  const steps = stepsOf(tree, path)
  if (!Array.isArray(steps)) return steps
  for (let length = steps.length; length > 0; length--) {
    const holder = standingAt(tree, steps.slice(0, length - 1)) as Record<string, unknown> | undefined
    if (holder === undefined) return null
    const last = steps[length - 1]!
    if (Array.isArray(holder)) holder.splice(Number(last), 1)
    else delete holder[last]
    if (Object.keys(holder).length > 0 || length === 1 || !mayGo(tree, steps.slice(0, length - 1))) break
  }
  return null
}

/** Whether a map may be left out: it stands under a key of the format that need not be given. */
function mayGo(tree: Tree, steps: readonly string[]): boolean {
  let schema: Schema = scenarioSchema
  let value: unknown = tree
  let isKey = false
  for (const step of steps) {
    const own = suited(schema, value)
    isKey = definition(own).shape !== undefined
    schema = child(own, step)!
    value = isMap(value) || Array.isArray(value) ? (value as Record<string, unknown>)[step] : undefined
  }
  return isKey && ['optional', 'prefault'].includes(definition(schema).type)
}
