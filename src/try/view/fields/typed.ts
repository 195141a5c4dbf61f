/** Numbers as they are typed and stepped in a field. */
import type { Drag } from '../../fields/field.js'

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
