/** What a field of one value holds, by its schema and what is written. */
import * as z from 'zod'
import { bareOf, formText, type Told } from '../../manual/schema-keys.js'
import { numbersOf } from '../../scenario/kit.js'
import { evident, isGuess, restingOn } from '../../scenario/known.js'
import { dimensions } from '../../scenario/quantity.js'
import { definition, type Schema, within } from '../../scenario/walk.js'
import { amountOf, dragOf, moneyOf } from './amounts.js'
import type { Amount, Field } from './field.js'

type OfValue = Pick<
  Field,
  'form' | 'takes' | 'evidence' | 'amount' | 'dimension' | 'units' | 'choices' | 'drag'
>

/** What JSON Schema says of a schema. */
export type Says = (schema: Schema) => Told

/** Says it, and keeps what it has said: to ask the library takes longest. */
export function saysOnce(): Says {
  const known = new WeakMap<Schema, Told>()
  return (schema) => {
    const told =
      known.get(schema) ?? (z.toJSONSchema(schema, { io: 'input', unrepresentable: 'any' }) as Told)
    known.set(schema, told)
    return told
  }
}

/** Of a value of one part; `value` is what is written, or the default. `currency`: in which amounts of money are written. */
export function toldOfValue(
  schema: Schema,
  value: unknown,
  { currency, told: says }: { currency: string; told: Says },
): OfValue {
  const { schema: bare } = bareOf(schema)
  const told = says(schema)
  const own = readerOf(bare, value)
  const rests = evident.get(own)?.evidence(value) ?? null
  const plain = isGuess(value) ? value.guess : (rests?.fixed ?? value)
  const numbers = numbersOf.get(own)
  const isMoney = examplesOf(bare).some((each) => moneyOf(each) !== null)
  const amount = isMoney
    ? (moneyOf(plain) ?? emptyMoney(bare, currency))
    : numbers
      ? amountOf(plain, numbers.dimension)
      : null
  const choices = choicesOf(told)
  const dimension = numbers?.dimension ?? null
  return {
    form: formOf(bare, { isNumber: numbers !== undefined || isMoney, choices, value }),
    takes: formText(told, bare),
    evidence: rests && restingOn(rests.known),
    ...{ amount, dimension, choices },
    units: dimension ? Object.keys(dimensions[dimension].units) : amount && isMoney ? [amount.unit] : [],
    drag: dragAt(amount, { numbers, isMoney, isWhole: told.type === 'integer' }),
  }
}

/** The schema that reads a value of one part: of a time that may vary that of constants. */
function readerOf(bare: Schema, value: unknown): Schema {
  const def = definition(bare)
  if (def.type !== 'union') return bare
  const held = within(bare, typeof value === 'object' && !isGuess(value) ? '' : value)
  return held === null ? bare : readerOf(held, value)
}

const examplesOf = (schema: Schema): unknown[] => (schema.meta()?.examples as unknown[] | undefined) ?? []

/** Money that is not given: nothing yet, in the currency of the scenario. */
function emptyMoney(schema: Schema, currency: string): Amount | null {
  const [, per = ''] = /(\/\w+)?$/.exec(String(examplesOf(schema)[0])) ?? []
  return { number: 0, unit: `${currency}${per}` }
}

function choicesOf({ enum: words, anyOf = [], const: only }: Told): string[] {
  if (words) return words.map(String)
  const own = only === undefined ? [] : [String(only)]
  return [...own, ...anyOf.flatMap((each) => choicesOf(each))]
}

function formOf(
  bare: Schema,
  { isNumber, choices, value }: { isNumber: boolean; choices: readonly string[]; value: unknown },
): Field['form'] {
  const { type } = definition(bare)
  if (type === 'enum') return 'choice'
  if (type === 'boolean') return 'flag'
  if (typeof value === 'object' && value !== null && !isGuess(value)) return 'more'
  if (isNumber) return 'amount'
  if (type === 'union' && choices.length > 0) return 'amount'
  if (type === 'string') return 'text'
  return 'more'
}

function dragAt(
  amount: Amount | null,
  of: { numbers: ReturnType<typeof numbersOf.get>; isMoney: boolean; isWhole: boolean },
): Field['drag'] {
  if (!amount) return null
  if (of.isMoney) return amount.number > 0 ? dragOf(amount, { dimension: null, above: 0 }) : null
  return of.numbers ? dragOf(amount, of.numbers, of.isWhole) : null
}
