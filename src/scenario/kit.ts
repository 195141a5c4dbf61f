/** Building blocks of the schema: keys that carry a unit, a default with its basis, and a line of explanation. */
import * as z from 'zod'
import { exampleApart } from './meant.js'
import { type Dimension, dimensions, parseMoney, parseQuantity, quantityPattern } from './quantity.js'

// a scenario is read once or a few times: code made for its schema would not pay for itself
z.config({ jitless: true })

/** Where a default comes from, in the words that `check` and the report print beside it. */
export type Basis = 'definition of the format' | 'common practice, no source' | 'from memory, low confidence'

/** The basis of each default, by the schema that carries it. */
export const bases = z.registry<{ basis: Basis }>()

/** `schema` with a value for when the file names none: written as the file would write it, listed as assumed. */
export function assume<T extends z.ZodType>(schema: T, value: z.input<T>, basis: Basis) {
  const withDefault = z.prefault(schema, value as never)
  bases.add(withDefault, { basis })
  return withDefault
}

/** Bounds in SI; `above` excludes its end, `from` and `to` include theirs. */
export interface Bounds {
  above?: number
  from?: number
  to?: number
}

/** The bound that `value` breaks, in words with the SI unit; null when it keeps them all. */
function outside(value: number, bounds: Bounds, unit: string): string | null {
  const bound = (words: string, end: number) => `${words} ${end} ${unit}`.trim()
  if (bounds.above !== undefined && !(value > bounds.above))
    return bounds.above === 0 ? 'more than nothing' : bound('more than', bounds.above)
  if (bounds.from !== undefined && !(value >= bounds.from))
    return bounds.from === 0 ? 'not negative' : bound('at least', bounds.from)
  if (bounds.to !== undefined && !(value <= bounds.to)) return bound('at most', bounds.to)
  return Number.isFinite(value) ? null : 'finite'
}

/** A quantity `NUMBER UNIT` of a dimension; comes out as a number in SI. */
export function quantity(dimension: Dimension, doc: string, bounds: Bounds = { from: 0 }) {
  return z
    .unknown()
    .transform((text, context): number => {
      const parsed = parseQuantity(text, dimension)
      if (!('value' in parsed)) {
        const { code, rule, fix } = parsed
        context.issues.push({ code: 'custom', input: text, message: rule, params: { code, fix } })
        return z.NEVER
      }
      const rule = outside(parsed.value, bounds, dimensions[dimension].si)
      if (rule)
        context.issues.push({
          code: 'custom',
          input: text,
          message: `must be ${rule}`,
          params: { code: 'out-of-range', fix: `a value that is ${rule}` },
        })
      return parsed.value
    })
    .meta({
      type: 'string',
      pattern: quantityPattern(dimension),
      description: doc,
      examples: [dimensions[dimension].example],
    })
}

/** A quantity, or one of a few words in its place. */
export function quantityOr<const W extends string>(word: W, dimension: Dimension, doc: string) {
  const number = quantity(dimension, doc, { from: 0 })
  return z
    .unknown()
    .transform((text, context): number | W => {
      if (text === word) return word
      const parsed = number.safeParse(text)
      if (parsed.success) return parsed.data
      context.issues.push(...parsed.error.issues.map((issue) => ({ ...issue, input: text }) as never))
      return z.NEVER
    })
    .meta({ type: 'string', pattern: `(^${word}$)|${quantityPattern(dimension)}`, description: doc })
}

/** What an amount of money may be for: one of something, or null for all of it. */
type Per = 'roll' | 'h' | 'kWh' | 'm' | null

/** Money: `42 EUR/roll`, `31 EUR/h`, `0.2 EUR/kWh` or `24000 EUR`. */
export const money = (per: Per, doc: string) => moneyFor([per], doc)

/** Money for one of several: `24000 EUR` or `650 EUR/m`. */
export function moneyFor(pers: readonly [Per, ...Per[]], doc: string) {
  const [per] = pers
  const example = per ? `42 EUR/${per}` : '24000 EUR'
  return z
    .unknown()
    .transform((text, context): { amount: number; currency: string; per: Per } => {
      const parsed = parseMoney(text)
      if (!parsed || !pers.includes(parsed.per as Per)) {
        context.issues.push({
          code: 'custom',
          input: text,
          message: `an amount, a currency of three letters${per ? ` and /${per}` : ''}${pers.length > 1 ? `, or with /${pers.slice(1).join(' or /')}` : ''}`,
          params: {
            code: parsed ? 'wrong-unit' : 'not-a-quantity',
            fix: `write it like \`${exampleApart(example, String(text).slice(0, 200))}\``,
          },
        })
        return z.NEVER
      }
      return { amount: parsed.amount, currency: parsed.currency, per: parsed.per as Per }
    })
    .meta({ type: 'string', description: doc, examples: [example] })
}

/** A whole number from `least` to `most`, both included. */
export const whole = (doc: string, least = 1, most = 1_000_000) =>
  z.number().int().min(least).max(most).describe(doc)

/** A bare number: factors, shares and shapes that have no unit. */
export const bare = (doc: string, least = 0, most = 1e9) => z.number().min(least).max(most).describe(doc)

/** One of a closed set of words. */
export const choice = <const T extends readonly [string, ...string[]]>(words: T, doc: string) =>
  z.enum(words).describe(doc)

/** Names of cases, equipment and crews: they stand in paths, so no dots; they keep their order, so no leading digit. */
export const name = z
  .string()
  .regex(/^\p{L}[\p{L}\p{N} _-]{0,39}$/u)
  .describe('a name: begins with a letter; letters, digits, spaces, - and _; at most 40')
