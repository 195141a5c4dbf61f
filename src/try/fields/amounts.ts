/** Numbers with units as a file writes them: read, written, converted, typed and stepped, and between which ends they are dragged. */
import { roundStep } from '../../report/marks/axis.js'
import { type Dimension, dimensions, parseMoney } from '../../scenario/quantity.js'
import { inSi } from '../../scenario/units.js'
import type { Bounds } from '../../scenario/values.js'
import type { Amount, Drag } from './field.js'

const shape = /^\s*([+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?)\s*(.*?)\s*$/

/** The number of a quantity in a unit that may be chosen; null where it is written otherwise. */
export function amountOf(written: unknown, dimension: Dimension | null): Amount | null {
  if (typeof written === 'number') return dimension === null ? { number: written, unit: '' } : null
  const match = typeof written === 'string' ? shape.exec(written) : null
  if (!match) return null
  const system: { units: Record<string, string>; also?: Record<string, string> } =
    dimensions[dimension ?? 'cuts']
  const unit = system.also?.[match[2]!] ?? match[2]!
  if (dimension === null || !Object.hasOwn(system.units, unit)) return null
  return { number: Number(match[1]), unit }
}

/** The amount of money, its currency and what it is for as its unit. */
export function moneyOf(written: unknown): Amount | null {
  const parsed = parseMoney(written)
  return (
    parsed && { number: parsed.amount, unit: parsed.currency + (parsed.per === null ? '' : `/${parsed.per}`) }
  )
}

/** As a file writes it. */
export const amountText = ({ number, unit }: Amount): string =>
  unit === '' ? String(number) : `${number} ${unit}`

/** The same in another unit of its dimension, to six figures. */
export function converted({ number, unit }: Amount, dimension: Dimension, to: string): Amount {
  if (unit === to) return { number, unit }
  return { number: inUnit(inSi(dimension, number, unit), dimension, to), unit: to }
}

/** A number in SI in a unit: scales that begin elsewhere than at nothing too. */
function inUnit(si: number, dimension: Dimension, unit: string): number {
  const [zero, one] = [inSi(dimension, 0, unit), inSi(dimension, 1, unit)]
  return Number(((si - zero) / (one - zero)).toPrecision(6))
}

/** A value is dragged to so many times less, and more. */
const reach = 3
/** In about so many steps of its present size. */
const steps = 50

/** 1, 2 or 5 and noughts, nearest above. */
const even = (value: number): number => Number(roundStep(value).toPrecision(1))

/** Between what a number is dragged: about its present value, and within the ends of the format. `isWhole`: in whole steps. */
export function dragOf(
  { number, unit }: Amount,
  { dimension, above, from, to }: { dimension: Dimension | null } & Bounds,
  isWhole = false,
): Drag | null {
  const inOwn = (end: number | undefined) =>
    end === undefined || dimension === null ? end : inUnit(end, dimension, unit)
  const [least, most] = [inOwn(above ?? from) ?? -Infinity, inOwn(to) ?? Infinity]
  const size = Math.abs(number) || sizeOf(dimension, unit)
  const step = isWhole ? Math.max(1, Math.round(even(size / steps))) : even(size / steps)
  const onStep = (value: number) => Number((Math.round(value / step) * step).toPrecision(12))
  const low = dimension === 'temperature' ? number - 20 : number < 0 ? number * reach : number / reach
  const high = dimension === 'temperature' ? number + 20 : number === 0 ? size : Math.abs(number) * reach
  const first = Math.max(onStep(number === 0 ? 0 : low), above === undefined ? least : least + step)
  const last = Math.min(isWhole ? Math.max(onStep(high), first + 10) : onStep(high), most)
  return first < last ? { from: first, to: last, step } : null
}

/** How large a value of a dimension commonly is, in a unit. */
function sizeOf(dimension: Dimension | null, unit: string): number {
  if (dimension === null) return 10
  const example = amountOf(dimensions[dimension].example, dimension)!
  return converted(example, dimension, unit).number
}

/** What was typed, as a value of the file: a bare number takes the unit of the field, and all else stands as it is. */
export function typedValue(typed: string, unit: string): string {
  const text = typed.trim()
  return unit !== '' && /^[+-]?(\d+\.?\d*|\.\d+)([eE][+-]?\d+)?$/.test(text) ? `${text} ${unit}` : text
}

/** Figures that a stepped number keeps: what rounding of the machine adds lies behind these. */
const figures = 10

/** A number some steps on, on the steps of its drag, within its ends where it was within. */
export function stepped(number: number, steps: number, { from, to, step }: Drag): number {
  const onward = Number(((Math.round(number / step) + steps) * step).toPrecision(figures))
  const isWithin = number >= from && number <= to
  return isWithin ? Math.min(to, Math.max(from, onward)) : onward
}
