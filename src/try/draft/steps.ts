/** A dotted path as the steps that it leads by: names of pieces as prices have them stand behind one step, dots and all. */
import { isMap } from '../../scenario/is-map.js'
import { name } from '../../scenario/kit.js'
import { nearest } from '../../scenario/nearest.js'
import { shown } from '../../scenario/printable.js'
import { scenarioSchema } from '../../scenario/schema.js'
import { child, definition, type Schema, within } from '../../scenario/walk.js'
import type { Refused } from './edited.js'
import type { Tree } from './yaml-text.js'

/** The schema without its wrappers, and of a union the member that suits what stands there. */
export function suited(schema: Schema, value: unknown): Schema {
  const held = within(schema, value)
  return held === null ? schema : suited(held, value)
}

/** How far along a path, and what is there. */
interface Place {
  steps: string[]
  rest: readonly string[]
  schema: Schema
  value: unknown
}

/** The steps of `path` in `tree`; a step that the format does not have is refused, as is a name that is not there. */
export function stepsOf(tree: Tree, path: string): string[] | Refused {
  const place = placeOf(tree, path)
  return 'rule' in place ? place : place.steps
}

/** The schema of what may stand at `path`; null where nothing may. */
export function schemaAt(tree: Tree, path: string): Schema | null {
  const place = placeOf(tree, path)
  return 'rule' in place ? null : place.schema
}

function placeOf(tree: Tree, path: string): Place | Refused {
  let place: Place = { steps: [], rest: path.split('.'), schema: scenarioSchema, value: tree }
  while (place.rest.length > 0) {
    const next = further(place)
    if ('rule' in next) return next
    place = next
  }
  return place
}

function further({ steps, rest, schema, value }: Place): Place | Refused {
  const own = suited(schema, value)
  const def = definition(own)
  const isFree = def.type === 'record' && def.keyType !== name
  const step = isFree ? rest.join('.') : rest[0]!
  const next = child(own, step)
  const isNamed = def.type !== 'record' || isFree || (isMap(value) && Object.hasOwn(value, step))
  const isEntry = !Array.isArray(value) || /^(?:0|[1-9]\d*)$/.test(step)
  if (!next || !isNamed || !isEntry) return unknownStep(step, steps, Object.keys(def.shape ?? inside(value)))
  return {
    ...{ steps: [...steps, step], rest: isFree ? [] : rest.slice(1), schema: next },
    value: inside(value)[step],
  }
}

const unknownStep = (step: string, steps: readonly string[], known: readonly string[]): Refused => ({
  rule: `\`${shown(step)}\` does not exist in ${steps.length > 0 ? `\`${shown(steps.join('.'))}\`` : 'a scenario'}`,
  fix: nearest(step, known),
})

/** What stands under keys or numbers; nothing in a value of one part. */
const inside = (value: unknown): Record<string, unknown> =>
  isMap(value) || Array.isArray(value) ? (value as Record<string, unknown>) : {}

/** What stands at `steps`; undefined where nothing does. */
export const standingAt = (tree: unknown, steps: readonly string[]): unknown =>
  steps.reduce<unknown>((value, step) => inside(value)[step], tree)
