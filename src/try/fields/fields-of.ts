/** The fields of a part of a scenario, read off the schema of the format and what is written. */
import { bareOf, isAlike, isTimeLaw, ofTimes } from '../../manual/schema-keys.js'
import { isMap } from '../../scenario/is-map.js'
import { isGuess } from '../../scenario/known.js'
import { child, definition, type Schema } from '../../scenario/walk.js'
import { suited } from '../draft/steps.js'
import { lineOf } from '../draft/yaml-text.js'
import type { Field } from './field.js'
import { type Says, toldOfValue } from './leaf.js'

/** Entries of a list that have fields of their own; longer lists are changed as text. */
const mostEntries = 20

/** A key of the format at its place. */
interface Key {
  steps: readonly string[]
  schema: Schema
  /** As it is written; undefined where nobody gave it. */
  written: unknown
  /** Of one of two in a list, such as the coldest temperature: what it is called. */
  name?: string | undefined
}

/** What all fields of a part have in common. */
export interface Common {
  /** Steps of the map whose keys are told, and of the part that it belongs to. */
  at: readonly string[]
  of: readonly string[]
  currency: string
  told: Says
  /** Names that stand in the scenario and that the value of a key may be; none where it is no name. */
  choices: (key: string) => readonly string[]
  /** Names that the format takes as keys of free maps, such as pieces that have a price. */
  names: (key: Key) => readonly string[]
}

/** The fields of all keys of the map at `part.at`, which `schema` describes; `without`: keys that are no fields. */
export function fieldsOf(
  schema: Schema,
  value: unknown,
  part: Common,
  without: readonly string[] = [],
): Field[] {
  const { shape = {} } = definition(suited(schema, value))
  return Object.entries(shape)
    .filter(([key]) => !without.includes(key))
    .flatMap(([key, inner], index, all) => {
      const written = isMap(value) ? value[key] : undefined
      const twin = all.slice(0, index).some(([, before]) => isAlike(before, inner))
      const own: Key = { steps: [...part.at, key], schema: inner, written: written ?? undefined }
      // of heads and their like only those have fields that are there
      return twin && own.written === undefined ? [fieldOf(own, part)] : fieldsAt(own, part)
    })
}

/** The field of a key, and those of what stands in it. */
function fieldsAt(key: Key, part: Common): Field[] {
  const inner = insideOf(key, part)
  const { type } = definition(suitedOf(key))
  // a map of the format is told by its keys, where it has any
  return type === 'object' && !isLaw(suitedOf(key)) && inner.length > 0
    ? inner
    : [fieldOf(key, part), ...inner]
}

const valueAt = ({ schema, written }: Key): unknown => written ?? bareOf(schema).usual
const suitedOf = (key: Key): Schema => suited(key.schema, valueAt(key))

/** A map of which exactly one key is given. */
const isLaw = (schema: Schema): boolean => schema.meta()?.maxProperties === 1

function insideOf(key: Key, part: Common): Field[] {
  const schema = suitedOf(key)
  const def = definition(schema)
  const value = valueAt(key)
  const at = (step: string, isThere: boolean): Field[] => {
    const inner = child(schema, step)
    const written = isThere ? (key.written as Record<string, unknown> | undefined)?.[step] : undefined
    const name = def.type === 'tuple' ? inner?.description : undefined
    return inner ? fieldsAt({ steps: [...key.steps, step], schema: inner, written, name }, part) : []
  }
  if (def.shape && isLaw(schema))
    return isMap(value) ? Object.keys(value).flatMap((step) => at(step, true)) : []
  if (def.shape) return fieldsOf(schema, key.written, { ...part, at: key.steps })
  if (isGuess(value)) return []
  if (def.type === 'record') {
    const given = isMap(value) ? Object.keys(value) : []
    return [...new Set([...given, ...part.names(key)])].flatMap((step) => at(step, given.includes(step)))
  }
  const isList = (def.type === 'array' || def.type === 'tuple') && Array.isArray(value)
  if (
    !isList ||
    value.length > mostEntries ||
    !value.some((each) => isMap(each) || /^[\d.]/.test(String(each)))
  )
    return []
  return value.flatMap((_, index) => at(String(index), key.written !== undefined))
}

function fieldOf(key: Key, part: Common): Field {
  const { schema: bare, isNeeded, usual, basis } = bareOf(key.schema)
  const steps = key.steps.slice(part.of.length)
  return {
    path: key.steps.join('.'),
    label: key.name ?? labelOf(key.steps.at(-1)!),
    part: steps.slice(0, -1).map(labelOf).join(', '),
    explanation: (key.schema.description ?? bare.description ?? '').replace(ofTimes, ''),
    isNeeded,
    written: key.written === undefined ? null : lineOf(key.written),
    usual: usual === undefined ? null : lineOf(usual),
    basis: basis ?? null,
    ...toldOfValue(key.schema, valueAt(key), part),
    ...namesAt(key, part),
    ...(isTimeLaw(definition(bare)) ? { takes: 'a time that may vary, such as `90 s`' } : {}),
  }
}

/** Names that may be chosen for a key that takes one. */
function namesAt({ steps }: Key, { choices }: Common): Pick<Field, 'choices'> | null {
  const names = choices(steps.at(-1)!)
  return names.length > 0 ? { choices: names } : null
}

/** A key as a person reads it; entries of lists are counted from 1. */
const labelOf = (step: string): string =>
  /^\d+$/.test(step) ? String(Number(step) + 1) : step.replaceAll('-', ' ')
