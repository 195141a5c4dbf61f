/** The unit of a number in a field: one that is there is converted, and one may be chosen before there is a number. */
import { useSignal } from '@preact/signals'
import { amountText, converted } from '../../fields/amounts.js'
import type { Field } from '../../fields/field.js'
import type { BoxProps } from './other-boxes.js'

/** The unit that a bare number is taken in, whether it is shown, and what choosing another one does. */
export function useUnit({ amount, units, written, dimension }: Field, write: BoxProps['write']) {
  const chosen = useSignal<string | null>(null)
  return {
    unit: amount?.unit ?? chosen.value ?? units[0]?.unit ?? '',
    // a count such as 18 in 640 h has its units in itself
    hasUnit: units.length > 0 && (amount !== null || written === null),
    choose: (to: string) => {
      if (amount && dimension) write(amountText(converted(amount, dimension, to)))
      else chosen.value = to
    },
  }
}

interface UnitBoxProps extends Pick<BoxProps, 'field'> {
  unit: string
  choose: (to: string) => void
}

export function UnitBox({ field: { amount, units, label, dimension }, unit, choose }: UnitBoxProps) {
  const known = units.some((each) => each.unit === unit)
    ? units
    : [{ unit, system: 'both' as const }, ...units]
  return (
    <select
      class="unit"
      aria-label={`Unit of ${label}`}
      value={unit}
      disabled={units.length < 2 || (amount !== null && dimension === null)}
      onChange={({ currentTarget: { value } }) => choose(value)}
    >
      {known.map((each) => (
        <option key={each.unit} value={each.unit}>
          {each.unit}
        </option>
      ))}
    </select>
  )
}
