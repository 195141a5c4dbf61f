/** What the JSON Schema says of a value in all its forms: each dimension once, for the keys to refer to. */
import { betweenPattern } from './between.js'
import { countWords } from './counts.js'
import { perShiftPatterns } from './per-shift.js'
import { type Dimension, dimensions, quantityPattern } from './quantity.js'
import { percentPattern } from './values.js'

const number = '\\d+(e\\+?\\d+)?'
const counts: Partial<Record<Dimension, string>> = {
  share: `^\\s*${number}\\s+in\\s+${number}\\s*(${countWords.map((each) => `${each}?`).join('|')})\\s*$`,
  'case-rate': inTimePattern(),
}

/** `18 in 640 h`. */
function inTimePattern(): string {
  return `^\\s*${number}\\s+in\\s+${quantityPattern('time').slice(1)}`
}

/** A guess of what `one` describes. */
const guessOf = (one: object) => ({
  type: 'object',
  properties: {
    guess: one,
    between: { type: 'array', items: one, minItems: 2, maxItems: 2 },
  },
  required: ['guess', 'between'],
  additionalProperties: false,
  description: 'a guess: you believe with 90 % that the value lies between the two ends',
})

/** Definitions that the keys of the schema refer to. */
export function definitions(): Record<string, object> {
  const ofDimensions = (Object.keys(dimensions) as Dimension[]).flatMap((dimension) => {
    const alone = `${dimension}-alone`
    const counted = counts[dimension]
    const forms = [
      refTo(alone),
      ...(counted ? [{ type: 'string', pattern: counted }] : []),
      ...(dimension === 'case-rate' ? [{ type: 'string', pattern: perShiftPatterns.cases }] : []),
      guessOf(refTo(alone)),
    ]
    return [
      [alone, { type: 'string', pattern: quantityPattern(dimension) }],
      [dimension, { anyOf: forms, examples: [dimensions[dimension].example] }],
    ] as const
  })
  return {
    ...Object.fromEntries(ofDimensions),
    'in-time': { type: 'string', pattern: inTimePattern() },
    between: { type: 'string', pattern: betweenPattern(), examples: ['1 to 2 min'] },
    'stops-per-shift': {
      ...{ type: 'string', pattern: perShiftPatterns.stops, examples: ['10 stops per shift'] },
    },
    'guess-of-money': guessOf({ type: 'string' }),
    'guess-of-number': guessOf({ type: 'number' }),
    'guess-of-number-or-percent': guessOf({
      anyOf: [{ type: 'number' }, { type: 'string', pattern: percentPattern }],
    }),
  }
}

const refTo = (name: string) => ({ $ref: `#/$defs/${name}` })

/** What a key may refer to. */
type Reference =
  | Dimension
  | 'in-time'
  | 'between'
  | 'stops-per-shift'
  | `guess-of-${'money' | 'number' | 'number-or-percent'}`

/** A reference in what the schema library is told of a schema: it would drop one of its own kind. */
export const refer = (name: Reference) => ({ refersTo: name })

/** Makes references of those, wherever they stand; what reads a value from any text says nothing itself. */
export const referring = (_: string, value: unknown): unknown => {
  if (typeof value !== 'object' || value === null || !('refersTo' in value)) return value
  const { refersTo, ...rest } = value as { refersTo: string }
  return { ...rest, ...refTo(refersTo) }
}
