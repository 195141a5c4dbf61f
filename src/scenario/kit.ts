/** Building blocks of the schema: keys that carry a unit, a default with its basis, and a line of explanation. */
import * as z from 'zod'
import { isCount } from './counts.js'
import { refer } from './editor.js'
import { evident, isGuess, type Rests } from './known.js'
import { exampleApart } from './meant.js'
import { perShiftPatterns } from './per-shift.js'
import type { ProblemCode } from './problems.js'
import { type Dimension, dimensions, parseMoney, quantityPattern } from './quantity.js'
import { type Fault, fault, type Read } from './reading.js'
import {
  type Bounds,
  guessedOr,
  isPercent,
  percentPattern,
  readExact,
  readNumber,
  readQuantity,
  type Told,
} from './values.js'

// a scenario is read once or a few times: code made for its schema would not pay for itself
z.config({ jitless: true })

/** Where a default comes from, in the words that `check` and the report print beside it. */
export type Basis = 'definition of the format' | 'common practice, no source' | 'from memory, low confidence'

/** The basis of each default, by the schema that carries it. */
export const bases = z.registry<{ basis: Basis }>()

/** What the numbers of a schema are of, and their ends, both in SI. */
export const numbersOf = z.registry<{ dimension: Dimension | null } & Bounds>()

/** A schema with what is known of its numbers. */
export function numbered<T extends z.ZodType>(schema: T, of: { dimension: Dimension | null } & Bounds): T {
  numbersOf.add(schema, of)
  return schema
}

/** `schema` with a value for when the file names none: written as the file would write it, listed as assumed. */
export function assume<T extends z.ZodType>(
  schema: T,
  value: z.input<T>,
  basis: Basis = 'definition of the format',
) {
  const withDefault = z.prefault(schema, value as never)
  bases.add(withDefault, { basis })
  return withDefault
}

/** What is said of a value that breaks a rule of the format. */
export const broken = (code: ProblemCode, message: string, fix: string) => ({
  message,
  params: { code, fix },
})

/** Tells the schema library what was wrong with a value that it handed over to be read. */
export function refuse(context: z.RefinementCtx, input: unknown, { code, rule, fix, within }: Fault): never {
  context.issues.push({ code: 'custom', input, message: rule, path: [...within], params: { code, fix } })
  return z.NEVER
}

/** A value that may say what it rests on: `read` reads both off what was written, `where` says what its number is of and where it stands in the value. */
export function withEvidence<T>(
  read: (written: unknown) => Read<Told<T>>,
  meta: Record<string, unknown>,
  where: (value: T) => Pick<Rests, 'of' | 'within'>,
) {
  const schema = z
    .unknown()
    .transform((written, context): T => {
      const told = read(written)
      return 'fault' in told ? refuse(context, written, told.fault) : told.value.value
    })
    .meta(meta)
  evident.add(schema, {
    evidence(written) {
      // most values are neither, and need not be read again
      if (!isGuess(written) && !isCount(written)) return null
      const told = read(written)
      if ('fault' in told || told.value.known === null) return null
      const { value, known, fixed } = told.value
      return { known, fixed, ...where(value) }
    },
  })
  return schema
}

/** A quantity `NUMBER UNIT` of a dimension, a count or a guess of it; comes out as a number in SI. */
export const quantity = (dimension: Dimension, doc: string, bounds: Bounds = { from: 0 }) =>
  numbered(
    withEvidence(
      (written) => readQuantity(written, dimension, bounds),
      { ...refer(dimension), description: doc },
      () => ({ of: { dimension }, within: [] }),
    ),
    { dimension, ...bounds },
  )

/** A part of a whole, ends included. */
export const share = (doc: string) => quantity('share', doc, { from: 0, to: 1 })

/** A quantity that somebody decides and nobody measures: it takes no evidence. */
export const decided = (dimension: Dimension, doc: string, bounds: Bounds = { from: 0 }) =>
  numbered(
    z
      .unknown()
      .transform((written, context): number => {
        const read =
          isGuess(written) || isCount(written)
            ? fault(
                'not-allowed',
                'this value is chosen, not measured, so it takes no evidence',
                `a value such as \`${dimensions[dimension].example}\``,
              )
            : readExact(written, dimension, bounds)
        return 'fault' in read ? refuse(context, written, read.fault) : read.value
      })
      .meta({
        type: 'string',
        pattern:
          dimension === 'case-rate'
            ? `(${quantityPattern(dimension)})|(${perShiftPatterns.cases})`
            : quantityPattern(dimension),
        description: doc,
        examples: [dimensions[dimension].example],
      }),
    { dimension, ...bounds },
  )

/** A quantity, or one of a few words in its place. */
export function quantityOr<const W extends string>(word: W, dimension: Dimension, doc: string) {
  const read = (written: unknown): Read<Told<number | W>> =>
    written === word
      ? { value: { value: word, known: null, fixed: word } }
      : readQuantity(written, dimension, { from: 0 })
  const meta = { anyOf: [{ const: word }, refer(dimension)], description: doc }
  return numbered(
    withEvidence(read, meta, () => ({ of: { dimension }, within: [] })),
    { dimension, from: 0 },
  )
}

/** What an amount of money may be for: one of something, or null for all of it. */
type Per = 'roll' | 'h' | 'kWh' | 'm' | null

/** Money: `42 EUR/roll`, `31 EUR/h`, `0.2 EUR/kWh` or `24000 EUR`. */
export const money = (per: Per, doc: string) => moneyFor([per], doc)

export interface Money {
  amount: number
  currency: string
  per: Per
}

/** Ends of what anything of a line costs, in any currency. Project rule. */
const [leastMoney, mostMoney] = [1e-6, 1e15]

/** Money for one of several: `24000 EUR` or `650 EUR/m`. */
export function moneyFor(pers: readonly [Per, ...Per[]], doc: string) {
  const [per] = pers
  const example = per ? `42 EUR/${per}` : '24000 EUR'
  const exact = (text: unknown): Read<Money> => {
    const parsed = parseMoney(text)
    if (parsed && parsed.amount !== 0 && !(parsed.amount >= leastMoney && parsed.amount <= mostMoney))
      return fault(
        'out-of-range',
        `an amount of money must be 0, or from ${leastMoney} to ${mostMoney}`,
        `write it like \`${example}\``,
      )
    if (parsed && pers.includes(parsed.per as Per)) return { value: { ...parsed, per: parsed.per as Per } }
    return fault(
      parsed ? 'wrong-unit' : 'not-a-quantity',
      `must be an amount, a currency of three letters${per ? ` and /${per}` : ''}${pers.length > 1 ? `, or with /${pers.slice(1).join(' or /')}` : ''}`,
      `write it like \`${exampleApart(example, String(text).slice(0, 200))}\``,
    )
  }
  const read = (written: unknown) =>
    guessedOr(written, {
      ...{ read: exact, numberOf: ({ amount }: Money) => amount },
      ...{ spread: 'lognormal', ends: { least: 0, most: Infinity } },
      isAlike: (one: Money, other: Money) => one.currency === other.currency && one.per === other.per,
    })
  const meta = { anyOf: [{ type: 'string' }, refer('guess-of-money')], description: doc, examples: [example] }
  return withEvidence(read, meta, ({ currency, per: each }) => ({
    of: { money: each === null ? currency : `${currency}/${each}` },
    within: ['amount'],
  }))
}

/** A whole number from `least` to `most`, both included. */
export const whole = (doc: string, least = 1, most = 1_000_000) =>
  numbered(z.number().int().min(least).max(most).describe(doc), { dimension: null, from: least, to: most })

/** A bare number: factors, shares and shapes that have no unit. */
export const bare = (doc: string, least = 0, most = 1e9) =>
  numbered(
    withEvidence(
      (written) => readNumber(written, least, most),
      {
        anyOf: [{ type: 'number', minimum: least, maximum: most }, refer('guess-of-number')],
        description: doc,
      },
      () => ({ of: null, within: [] }),
    ),
    { dimension: null, from: least, to: most },
  )

/** A bare number, or one in per cent: `60` or `60 %`, both of which are 60. */
export const bareOrPercent = (doc: string) =>
  numbered(
    withEvidence(
      (written) => readNumber(written, 0, 1e9, (each) => (isPercent(each) ? Number.parseFloat(each) : each)),
      {
        anyOf: [
          { type: 'number', minimum: 0, maximum: 1e9 },
          { type: 'string', pattern: percentPattern },
          refer('guess-of-number-or-percent'),
        ],
        description: doc,
      },
      () => ({ of: null, within: [] }),
    ),
    { dimension: null, from: 0, to: 1e9 },
  )

/** One of a closed set of words. */
export const choice = <const T extends readonly [string, ...string[]]>(words: T, doc: string) =>
  z.enum(words).describe(doc)

/** A unit of a dimension, for numbers that stand in a file of their own. */
export const unitOf = (dimension: Dimension, doc: string) =>
  choice(Object.keys(dimensions[dimension].units) as [string, ...string[]], doc)

/** A text that says something, of `most` characters at most. */
export function text(doc: string, most?: number) {
  const some = z.string().min(1)
  return (most === undefined ? some : some.max(most)).describe(doc)
}

/** Names of cases, equipment and crews: they stand in paths, so no dots; they keep their order, so no leading digit. */
export const name = z
  .string()
  .regex(/^\p{L}[\p{L}\p{N} _-]{0,39}$/u)
  .describe('a name: begins with a letter and has only letters, digits, spaces, - and _; at most 40')
