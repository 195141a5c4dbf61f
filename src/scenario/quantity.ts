/** Quantities: the text `NUMBER UNIT` of a scenario to SI numbers and back, and amounts of money. */
import { inchesIn } from './feet-and-inches.js'
import { exampleApart, quantityFix } from './meant.js'
import { type Dimension, dimensionOf, dimensions, hasUnit, inSi, unitList } from './units.js'

export { type Dimension, dimensionOf, dimensions, quantityPattern, unitSize } from './units.js'

/** What `parseQuantity` found: a number in SI, or what is wrong and the nearest mend. */
type Parsed =
  | { value: number }
  | { code: 'no-unit' | 'unknown-unit' | 'wrong-unit' | 'not-a-quantity'; rule: string; fix: string }

const shape = /^\s*([+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?)\s*(.*?)\s*$/

/** The number of SI units in `text`, or what is wrong with it. Takes any value: hostile input gets a finding. */
export function parseQuantity(text: unknown, dimension: Dimension): Parsed {
  const { name, example } = dimensions[dimension]
  const written = typeof text === 'number' ? String(text) : typeof text === 'string' ? text : ''
  const match = typeof text === 'string' ? shape.exec(text) : null
  const unit = match?.[2]
  if (match && unit && hasUnit(dimension, unit)) return { value: inSi(dimension, Number(match[1]), unit) }
  const inches = dimension === 'length' && match && written.length <= 40 ? inchesIn(written) : null
  if (inches !== null) return { value: inSi('length', inches, 'in') }
  const list = unitList(dimension)
  const fix = quantityFix(written, dimension)
  if (typeof text === 'number' || unit === '')
    return { code: 'no-unit', rule: `${name} needs a unit: ${list}`, fix }
  if (unit === undefined)
    return { code: 'not-a-quantity', rule: `${name} must be a number and a unit (${list})`, fix }
  const other = dimensionOf(unit)
  if (other !== null)
    return {
      code: 'wrong-unit',
      rule: `\`${unit}\` is a unit of ${dimensions[other].name}, but here ${name} is needed: ${list}`,
      fix: `write it like \`${exampleApart(example, written)}\``,
    }
  return { code: 'unknown-unit', rule: `\`${unit.slice(0, 40)}\` is not a unit of ${name}: ${list}`, fix }
}

const moneyShape = /^\s*(\d+\.?\d*|\.\d+)\s*([A-Z]{3})(?:\s*\/\s*(roll|h|kWh|m))?\s*$/

/** An amount of money, `42 EUR/roll`: amount, currency code and what it is per; null where the text is none. */
export function parseMoney(text: unknown): { amount: number; currency: string; per: string | null } | null {
  const match = typeof text === 'string' ? moneyShape.exec(text) : null
  return match ? { amount: Number(match[1]), currency: match[2]!, per: match[3] ?? null } : null
}
