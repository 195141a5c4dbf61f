/** Numbers of a factor as a scenario writes them, such as `18 m/min` or `40 EUR/roll`, and what they are in SI. */
import { dimensionOf, dimensions, parseMoney, parseQuantity } from '../../scenario/quantity.js'

/** A number in the unit that it was written in; without a unit `''`. */
export interface Amount {
  number: number
  unit: string
}

const shape = /^\s*([+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?)\s*(.*?)\s*$/

/** Reads a value of a scenario; null where it is no number, alone or with a unit of the format. */
export function amountOf(value: unknown): Amount | null {
  if (typeof value === 'number') return Number.isFinite(value) ? { number: value, unit: '' } : null
  const match = typeof value === 'string' ? shape.exec(value) : null
  if (!match) return null
  const [, digits, unit] = match as unknown as [string, string, string]
  if (unit === '' || (dimensionOf(unit) === null && parseMoney(value) === null)) return null
  return { number: Number(digits), unit }
}

/** A number in a unit as a scenario has it: no more digits than the number was meant with. */
export function writtenAmount({ number, unit }: Amount): string | number {
  const rounded = Number(number.toPrecision(12))
  return unit === '' ? rounded : `${rounded} ${unit}`
}

/** The same in SI, with the unit's name; money and bare numbers stay as they are. */
export function inSi({ number, unit }: Amount): Amount {
  const dimension = dimensionOf(unit)
  if (dimension === null) return { number, unit }
  const parsed = parseQuantity(`${number} ${unit}`, dimension)
  return { number: 'value' in parsed ? parsed.value : Number.NaN, unit: dimensions[dimension].si }
}

/** The amount in another unit of the same dimension; null where there is none. */
export function inUnit(amount: Amount, unit: string): Amount | null {
  if (amount.unit === unit) return amount
  if (amount.unit === '' || unit === '' || dimensionOf(unit) === null) return null
  if (dimensionOf(amount.unit) !== dimensionOf(unit)) return null
  // a scale that does not begin at nothing needs two of its points
  const [zero, one] = [0, 1].map((number) => inSi({ number, unit }).number) as [number, number]
  const number = (inSi(amount).number - zero) / (one - zero)
  return { number: Number(number.toPrecision(12)), unit }
}
