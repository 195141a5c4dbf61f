/** Numbers with their units as fields write, convert and step them. */
import { type Dimension, dimensionOf, dimensions, hasUnit, inSi, unitSize } from '../../../scenario/units.js'
import type { Amount, Drag, UnitOf } from '../../fields/field.js'

/** Figures that a converted number keeps: what rounding of the machine adds lies behind these. */
const mostFigures = 10

/** A number as a file writes it, without the rounding of the machine. */
export const numberText = (number: number): string => String(Number(number.toPrecision(mostFigures)))

export const amountText = ({ number, unit }: Amount): string => `${numberText(number)} ${unit}`.trimEnd()

/** The same amount in another unit of its dimension; null where the units are not of one. */
export function converted({ number, unit }: Amount, to: string, units: readonly UnitOf[]): Amount | null {
  const dimension = commonDimension([unit, to, ...units.map((each) => each.unit)])
  if (dimension === null) return null
  const si = inSi(dimension, number, unit)
  const zeros = ('zeros' in dimensions[dimension] ? dimensions.temperature.zeros : {}) as Readonly<
    Record<string, number>
  >
  return {
    number: Number((si / unitSize(dimension, to) - (zeros[to] ?? 0)).toPrecision(mostFigures)),
    unit: to,
  }
}

function commonDimension(units: readonly string[]): Dimension | null {
  const first = dimensionOf(units[0] ?? '')
  const all = [first, ...(Object.keys(dimensions) as Dimension[])]
  return all.find((each) => each !== null && units.every((unit) => hasUnit(each, unit))) ?? null
}

/** What was typed, as a value of the file: a bare number takes the unit of the field, and all else stands as it is. */
export function typedValue(typed: string, unit: string): string {
  const text = typed.trim()
  return unit !== '' && /^[+-]?(\d+\.?\d*|\.\d+)([eE][+-]?\d+)?$/.test(text) ? `${text} ${unit}` : text
}

/** A number some steps on, on the steps of its drag, within its ends where it was within. */
export function stepped(number: number, steps: number, { from, to, step }: Drag): number {
  const onward = Number(((Math.round(number / step) + steps) * step).toPrecision(mostFigures))
  const isWithin = number >= from && number <= to
  return isWithin ? Math.min(to, Math.max(from, onward)) : onward
}
