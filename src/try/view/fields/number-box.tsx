/** A number in a field: typed, stepped by the arrow keys, dragged between sensible ends, in any unit of the format. */
import { useRef, useState } from 'preact/hooks'
import { amountText, converted, stepped, typedValue } from '../../fields/amounts.js'
import type { Drag, Field } from '../../fields/field.js'
import { type BoxProps, useTyped } from './other-boxes.js'

/** Steps that Page Up and Page Down take. */
const bigStep = 10

export function NumberBox(box: BoxProps) {
  const { field, write } = box
  const { amount, label, usual, written } = field
  const held = useHeldDrag(field.drag)
  const { unit, hasUnit, choose } = useUnit(field, write)
  const shown = amount ? String(amount.number) : (written ?? usual ?? '')
  const { typed, input } = useTyped(box, shown, (text) => typedValue(text, unit))
  const put = (number: number) => {
    typed.value = null
    write(amountText({ number, unit }))
  }
  const steps: Readonly<Record<string, number>> = {
    ArrowUp: 1,
    ArrowDown: -1,
    PageUp: bigStep,
    PageDown: -bigStep,
  }
  return (
    <div class={hasUnit ? 'number' : 'number bare'}>
      <input
        {...input}
        inputMode="decimal"
        class={written === null ? 'usual' : ''}
        onKeyDown={(event) => {
          const by = steps[event.key]
          if (by === undefined || !field.drag || !amount || event.ctrlKey || event.altKey || event.metaKey)
            return
          event.preventDefault()
          put(stepped(amount.number, by, field.drag))
        }}
      />
      {hasUnit ? <UnitBox field={field} unit={unit} choose={choose} /> : null}
      {held.drag && amount ? (
        <input
          type="range"
          class="drag"
          tabIndex={-1}
          aria-label={`${label}, ${unit}`}
          min={held.drag.from}
          max={held.drag.to}
          step={held.drag.step}
          value={amount.number}
          onPointerDown={held.hold}
          onPointerUp={held.letGo}
          onInput={({ currentTarget }) => put(Number(currentTarget.value))}
          onChange={held.letGo}
        />
      ) : null}
    </div>
  )
}

/** The ends stay as they are while somebody drags: they go by the value. */
function useHeldDrag(drag: Drag | null) {
  const held = useRef<Drag | null>(null)
  return {
    drag: held.current ?? drag,
    hold: () => {
      held.current = drag
    },
    letGo: () => {
      held.current = null
    },
  }
}

/** The unit that a bare number is taken in, whether it is shown, and what choosing another one does. */
function useUnit({ amount, units, written, dimension }: Field, write: BoxProps['write']) {
  const [chosen, setChosen] = useState<string | null>(null)
  return {
    unit: amount?.unit ?? chosen ?? units[0] ?? '',
    // a count such as 18 in 640 h has its units in itself
    hasUnit: units.length > 0 && (amount !== null || written === null),
    choose: (to: string) => {
      if (amount && dimension) write(amountText(converted(amount, dimension, to)))
      else setChosen(to)
    },
  }
}

interface UnitBoxProps extends Pick<BoxProps, 'field'> {
  unit: string
  choose: (to: string) => void
}

function UnitBox({ field: { amount, units, label, dimension }, unit, choose }: UnitBoxProps) {
  const known = units.includes(unit) ? units : [unit, ...units]
  return (
    <select
      class="unit"
      aria-label={`Unit of ${label}`}
      value={unit}
      disabled={units.length < 2 || (amount !== null && dimension === null)}
      onChange={({ currentTarget: { value } }) => choose(value)}
    >
      {known.map((each) => (
        <option key={each} value={each}>
          {each}
        </option>
      ))}
    </select>
  )
}
