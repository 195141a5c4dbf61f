/** The keys of a format, read off its schema: meaning, form, and default with its basis. */
import * as z from 'zod'
import { type Basis, bases } from '../scenario/kit.js'
import { type Dimension, dimensions } from '../scenario/quantity.js'
import { type Definition, definition, type Schema } from '../scenario/walk.js'

/** A key at its dotted path, in which capitals stand for names. */
export interface Key {
  path: string
  meaning: string
  /** What may stand there, in words. */
  form: string
  isNeeded: boolean
  /** As a file would write it. */
  usual?: string
  basis?: Basis
}

/** A schema out of its wrappers, and what these say. */
export interface Bare {
  schema: Schema
  isNeeded: boolean
  usual?: unknown
  basis?: Basis
}

export function bareOf(wrapped: Schema): Bare {
  const found: Bare = { schema: wrapped, isNeeded: true }
  for (let def = definition(wrapped); def.innerType || def.type === 'pipe'; def = definition(found.schema)) {
    if (def.type === 'optional' || def.type === 'prefault') found.isNeeded = false
    if (def.type === 'prefault') found.usual = def.defaultValue
    const told = bases.get(found.schema)
    if (told) found.basis = told.basis
    const next = def.innerType ?? def.in!
    // what reads a value from any text says itself what it takes
    if (definition(next).type === 'unknown') break
    found.schema = next
  }
  return found
}

/** Forms of a union that hold keys, each once; lists and maps of a form count as that form. */
function formsOf(options: readonly Schema[]): Schema[] {
  const forms = new Set<Schema>()
  for (const option of options) {
    let { schema } = bareOf(option)
    for (let def = definition(schema); def.element ?? def.valueType; def = definition(schema))
      schema = bareOf((def.element ?? def.valueType)!).schema
    if (definition(schema).shape) forms.add(schema)
  }
  return [...forms]
}

/** Whether it is a time that may vary: its laws are told once. */
export const isTimeLaw = (def: Definition): boolean =>
  def.options?.some((option) => 'lognormal' in (definition(bareOf(option).schema).shape ?? {})) ?? false

/** What names stand for, by where they stand; of all else `NAME`. */
const names: Readonly<Record<string, string>> = {
  cases: 'CASE',
  arrivals: 'SOURCE',
  line: 'PIECE',
  crew: 'CREW',
  variants: 'VARIANT',
  'variants.VARIANT.add': 'PIECE',
}

/** All keys below `schema`, in their order. */
export function keysOf(schema: Schema, path: readonly string[] = []): Key[] {
  const def = definition(bareOf(schema).schema)
  if (def.options) {
    if (isTimeLaw(def)) return []
    return formsOf(def.options).flatMap((form) => keysOf(form, path))
  }
  if (def.shape) return keysOfShape(def.shape, path)
  if (def.type === 'record') return keysOf(def.valueType!, [...path, names[path.join('.')] ?? 'NAME'])
  if (def.type === 'array') return keysOf(def.element!, [...path, 'N'])
  return []
}

function keysOfShape(shape: Record<string, Schema>, path: readonly string[]): Key[] {
  const entries = Object.entries(shape)
  return entries.flatMap(([key, inner], index) => {
    // heads and their like have the same keys again
    const twin = entries.slice(0, index).find(([, before]) => isAlike(before, inner))
    if (twin) {
      const { meaning, ...rest } = keyOf(inner, [...path, key], true)
      return [
        { ...rest, meaning: [meaning, `with the same keys as \`${twin[0]}\``].filter(Boolean).join('; ') },
      ]
    }
    const below = keysOf(inner, [...path, key])
    return [keyOf(inner, [...path, key], below.length > 0), ...below]
  })
}

/** Maps with the same keys, whatever their defaults. */
export function isAlike(one: Schema, other: Schema): boolean {
  const keys = (schema: Schema) => Object.keys(definition(bareOf(schema).schema).shape ?? {})
  return keys(one).length > 2 && keys(one).join() === keys(other).join()
}

function keyOf(schema: Schema, path: readonly string[], hasKeys: boolean): Key {
  const { schema: bare, isNeeded, usual, basis } = bareOf(schema)
  const told: Told = hasKeys ? {} : z.toJSONSchema(schema, { io: 'input', unrepresentable: 'any' })
  return {
    path: path.join('.'),
    meaning: (schema.description ?? bare.description ?? '').replace(ofTimes, ''),
    form: isTimeLaw(definition(bare)) ? 'a time that may vary, such as `90 s`' : formText(told, bare),
    isNeeded,
    ...(usual === undefined || isEmpty(usual) ? {} : { usual: flow(usual) }),
    ...(basis === undefined ? {} : { basis }),
  }
}

/** What the schema says behind the meaning of each time that may vary. */
export const ofTimes = /; a constant, a count such as `18 in 640 h`, or a distribution$/

const isEmpty = (value: unknown): boolean =>
  typeof value === 'object' && value !== null && Object.keys(value).length === 0

/** A value as YAML writes it in a line. */
function flow(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(flow).join(', ')}]`
  if (typeof value === 'object' && value !== null)
    return `{${Object.entries(value)
      .map(([key, each]) => `${key}: ${flow(each)}`)
      .join(', ')}}`
  return String(value)
}

/** What JSON Schema says of a place. */
export interface Told {
  type?: unknown
  refersTo?: string
  const?: unknown
  enum?: unknown[]
  anyOf?: Told[]
  minimum?: number
  maximum?: number
}

/** What may stand there, in words; empty where nothing need be said. */
export function formText(told: Told, schema?: Schema): string {
  const { refersTo, const: only, enum: words, anyOf } = told
  // of what is read from a text the library tells none
  const examples = schema?.meta()?.examples as unknown[] | undefined
  if (refersTo !== undefined) return dimensionText(refersTo)
  if (only !== undefined) return `\`${only}\``
  if (words) return `one of ${words.map((each) => `\`${each}\``).join(', ')}`
  if (examples) return `such as \`${examples[0]}\``
  if (anyOf)
    return [...new Set(anyOf.map((each) => formText(each)).filter((each) => each !== ''))].join(', or ')
  return typeText(told)
}

function typeText({ type, minimum, maximum }: Told): string {
  if (type === 'integer' || type === 'number') {
    const name = type === 'integer' ? 'a whole number' : 'a number'
    return minimum === undefined || maximum === undefined ? name : `${name} from ${minimum} to ${maximum}`
  }
  return Object.hasOwn(types, String(type)) ? types[type as keyof typeof types] : ''
}

const types = { boolean: '`true` or `false`', string: 'text', array: 'a list', object: 'a map' }

function dimensionText(name: string): string {
  if (!Object.hasOwn(dimensions, name)) return ''
  const { name: called, example } = dimensions[name as Dimension]
  return `${called}, such as \`${example}\``
}

/** The keys of the laws of a time that may vary. */
export function lawsOf(time: Schema, path: readonly string[]): Key[] {
  const [laws] = formsOf(definition(bareOf(time).schema).options!)
  return keysOf(laws!, path).filter(({ path: at }) => !/\.law\./.test(at))
}
