/** Choices of a value by path, as a file or the command line writes them: a list, or a range with a step. */

import { parse as parseValue } from 'yaml'
import { misuse } from './fault.js'
import { exampleApart } from './meant.js'

/** A range of quantities in one unit, ends included. */
export interface Range {
  from: string | number
  to: string | number
  step: string | number
}

/** A choice: a path and the values that may stand there, in the order given. */
export interface Choice {
  path: string
  values: unknown[]
}

/** Most values of one choice: more is a slip of the step. */
export const mostValues = 1000

const shape = /^\s*([+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?)\s*((?:[^\d\s.,+-].*?)?)\s*$/

/** Number and unit of a quantity, empty where it has none; null where a value is no quantity. */
function quantityIn(value: unknown): { value: number; unit: string } | null {
  const match = typeof value === 'number' || typeof value === 'string' ? shape.exec(String(value)) : null
  return match && Number.isFinite(Number(match[1])) ? { value: Number(match[1]), unit: match[2]! } : null
}

function split(text: string | number): { value: number; unit: string } {
  const quantity = quantityIn(text)
  if (quantity) return quantity
  throw misuse(`\`${text}\` is not a quantity; write it like \`${exampleApart('18 m/min', String(text))}\``)
}

/** A value that stands twice, by what it is as written; undefined where none does. */
export const givenTwice = (values: readonly unknown[]): unknown =>
  values.find(
    (value, index) => values.findIndex((each) => JSON.stringify(each) === JSON.stringify(value)) < index,
  )

/** Whether a value is a number, with a unit or without. */
export const isQuantity = (value: unknown): boolean => quantityIn(value) !== null

/** Whether quantities of one unit rise from value to value; true where they are none, for then their order says what is more. */
export function isRising(values: readonly unknown[]): boolean {
  const numbers = values.map((value) => shape.exec(String(value)))
  if (new Set(numbers.map((match) => match?.[2])).size > 1) return true
  return numbers.every(
    (match, index) => index === 0 || match === null || Number(match[1]) > Number(numbers[index - 1]![1]),
  )
}

/** The values of a range: `from`, a step further, and so on to `to`, the last one where the steps meet it. Throws `Fault` `asked`. */
export function valuesOf({ from, to, step }: Range): unknown[] {
  const [low, high, by] = [split(from), split(to), split(step)]
  // the unit may be written once, at the end
  const units = new Set([low.unit, high.unit, by.unit].filter((unit) => unit !== ''))
  if (units.size > 1) throw misuse(`a range must have one unit, not ${[...units].join(' and ')}`)
  const [unit] = [...units, '']
  if (!(by.value > 0)) throw misuse(`the step of a range must be above 0, not ${step}`)
  if (high.value < low.value)
    throw misuse(`a range must rise: from ${high.value} to ${low.value} ${unit}`.trimEnd())
  const count = Math.floor((high.value - low.value) / by.value + 1e-9) + 1
  if (count > mostValues) throw misuse(`a range may have at most ${mostValues} values, not ${count}`)
  return Array.from({ length: count }, (_, index) => {
    // decimals of the step, not those of the binary fraction
    const value = Number((low.value + index * by.value).toPrecision(12))
    return unit === '' ? value : `${value} ${unit}`
  })
}

/**
 * Reads `PATH=v1,v2,v3` or `PATH=low..high/step`; a value is written as in a scenario. Throws `Fault` `asked`.
 */
export function choiceWritten(text: string): Choice {
  const cut = text.indexOf('=')
  if (cut <= 0) throw misuse('a choice must be PATH=v1,v2,v3 or PATH=low..high/step')
  const [path, written] = [text.slice(0, cut).trim(), text.slice(cut + 1).trim()]
  // dots within quotes, braces or a list are no range: `{file: ../times.csv}`
  const isRange = /^[^{}[\]"',]+\.\./.test(written)
  return { path, values: isRange ? valuesOf(rangeWritten(written)) : listWritten(written) }
}

/** `18..30/2 m/min`, `18 m/min..30 m/min/2 m/min`: what follows the step's number is the unit, which may have a stroke of its own. */
function rangeWritten(text: string): Range {
  const match = /^(.+?)\.\.(.+)\/\s*([+-]?[\d.]+(?:e[+-]?\d+)?\s*[a-z%]*(?:\/[a-z]+)?.*)$/i.exec(text)
  if (!match) throw misuse('a range must be low..high/step, such as 18..30/2 m/min')
  return { from: match[1]!, to: match[2]!, step: match[3]! }
}

/** Commas part the values as in a list of the file. */
function listWritten(text: string): unknown[] {
  let values: unknown[]
  try {
    values = parseValue(`[${text}]`, { maxAliasCount: 0 }) as unknown[]
  } catch {
    throw misuse('the values must be YAML, separated by commas')
  }
  if (values.length === 0) throw misuse('a choice must have at least one value')
  if (values.length > mostValues)
    throw misuse(`a choice may have at most ${mostValues} values, not ${values.length}`)
  return values
}
