/** Walks the schema beside a document: which keys may stand where, and which defaults fill in what is not said. */

import * as z from 'zod'
import { isMap } from './is-map.js'
import { type Basis, bases, name } from './kit.js'
import { isGuess } from './known.js'

export type Schema = z.ZodType
export type Path = readonly (string | number)[]

export interface Definition {
  type: string
  innerType?: Schema
  in?: Schema
  shape?: Record<string, Schema>
  keyType?: Schema
  valueType?: Schema
  element?: Schema
  items?: Schema[]
  options?: Schema[]
  discriminator?: string
  defaultValue?: unknown
}
/** What a schema is made of. */
export const definition = (schema: Schema): Definition => schema.def as unknown as Definition

/** By schema of a union whose members are maps alike: the place among them of the one that suits what was written. */
export const forms = z.registry<{ of(written: unknown): number }>()

/** The schema that a wrapper holds, or the member of a union that suits what was written; null where it is neither. */
export function within(schema: Schema, raw: unknown): Schema | null {
  const def = definition(schema)
  if (def.innerType) return def.innerType
  if (def.type === 'pipe') return def.in!
  if (def.type !== 'union') return null
  const options = def.options!
  const form = forms.get(schema)
  if (form) return options[form.of(raw)]!
  if (def.discriminator && isMap(raw)) {
    const named = options.find((option) => {
      const literal = definition(definition(option).shape![def.discriminator!]!) as unknown as {
        values: unknown[]
      }
      return literal.values.includes(raw[def.discriminator!])
    })
    return named ?? options[0]!
  }
  // a guess is a value in a map, and values come first
  return isMap(raw) && !isGuess(raw) ? options.at(-1)! : options[0]!
}

/** The schema without its wrappers, and of a union the member that suits what was written. */
function suited(schema: Schema, raw: unknown): Schema {
  const held = within(schema, raw)
  return held === null ? schema : suited(held, raw)
}

/** The keys that may stand in the map at `path`, or null where any name may, or none. */
export function keysAt(root: Schema, raw: unknown, path: Path): string[] | null {
  const place = schemaAt(root, raw, path)
  const shape = place && definition(suited(place.schema, place.value)).shape
  return shape ? Object.keys(shape) : null
}

/** The member of the union at `path` that suits what was written, where that is told by `forms`; null elsewhere. */
export function formAt(root: Schema, raw: unknown, path: Path): number | null {
  const place = schemaAt(root, raw, path)
  if (!place) return null
  let { schema } = place
  for (let def = definition(schema); def.innerType; def = definition(schema)) schema = def.innerType
  return forms.get(schema)?.of(place.value) ?? null
}

/** The schema of what stands at `path`, with its wrappers, and the value there; null where nothing may. */
function schemaAt(root: Schema, raw: unknown, path: Path): { schema: Schema; value: unknown } | null {
  let schema = root
  let value = raw
  for (const key of path) {
    const next = child(suited(schema, value), key)
    value =
      isMap(value) || Array.isArray(value) ? (value as Record<string | number, unknown>)[key] : undefined
    if (!next) return null
    schema = next
  }
  return { schema, value }
}

/** The schema of what stands under a key of a map or list; null where nothing may. */
export function child(schema: Schema, key: string | number): Schema | null {
  const def = definition(schema)
  if (def.shape) return Object.hasOwn(def.shape, key) ? def.shape[key as string]! : null
  if (def.type === 'record') return def.valueType!
  if (def.type === 'array') return def.element!
  if (def.type === 'tuple') return def.items![Number(key)] ?? null
  return null
}

/** What was wrong with a dotted path: the step that leads nowhere and what could stand there. */
export interface PathFault {
  step: string
  within: string
  known: string[]
}

/**
 * Sets `value` at a dotted `path` of `raw`, in place. Every step must be a key of the format, and the names of
 * cases, equipment and crews must exist; a list is addressed by number, from 0. Returns null, or the step that
 * leads nowhere.
 */
export function setAt(
  root: Schema,
  raw: Record<string, unknown>,
  path: string,
  value: unknown,
): PathFault | null {
  let steps = path.split('.')
  let schema = suited(root, raw)
  let place = raw
  for (let index = 0; index < steps.length; index++) {
    const def = definition(schema)
    const hasFreeKeys = def.type === 'record' && def.keyType !== name
    if (hasFreeKeys) steps = [...steps.slice(0, index), steps.slice(index).join('.')]
    const step = steps[index]!
    const next = child(schema, step)
    const isEntry = !Array.isArray(place) || /^(0|[1-9]\d*)$/.test(step)
    const isKnown =
      next !== null && isEntry && (def.shape !== undefined || hasFreeKeys || Object.hasOwn(place, step))
    if (!isKnown) {
      const known = Object.keys(def.shape ?? place)
      return { step, within: steps.slice(0, index).join('.'), known }
    }
    if (index === steps.length - 1) {
      place[step] = value
      return null
    }
    const inside = place[step]
    const isBranch = isMap(inside) || Array.isArray(inside)
    if (!isBranch) place[step] = {}
    place = place[step] as Record<string, unknown>
    schema = suited(next, place)
  }
  return null
}

/** A value that the file did not name. */
export interface Assumption {
  path: string
  value: unknown
  basis: Basis
}

/** Fills every default of `schema` into `raw`, in place, and lists what was filled in, leaf by leaf. */
export function fillDefaults(schema: Schema, raw: unknown, path: Path = []): Assumption[] {
  const def = definition(suited(schema, raw))
  if (def.type === 'array' && Array.isArray(raw))
    return raw.flatMap((value, index) => fillDefaults(def.element!, value, [...path, index]))
  if (!isMap(raw)) return []
  if (def.shape)
    return Object.entries(def.shape).flatMap(([key, inner]) =>
      raw[key] === undefined
        ? fillMissing(inner, raw, [...path, key])
        : fillDefaults(inner, raw[key], [...path, key]),
    )
  if (def.type !== 'record') return []
  return Object.entries(raw).flatMap(([key, value]) => fillDefaults(def.valueType!, value, [...path, key]))
}

/** Fills in the last key of `path`, which `raw` does not have: what has leaves of its own is told by these. */
function fillMissing(schema: Schema, raw: Record<string, unknown>, path: Path): Assumption[] {
  const wrapper = definition(schema)
  if (wrapper.type !== 'prefault') return []
  const value = structuredClone(wrapper.defaultValue)
  raw[path.at(-1)!] = value
  const below = fillDefaults(schema, value, path)
  if (isMap(value) && below.length > 0) return below
  return [{ path: path.join('.'), value, basis: bases.get(schema)?.basis ?? 'from memory, low confidence' }]
}
