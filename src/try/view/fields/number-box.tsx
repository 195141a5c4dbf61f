/** A number in a field: typed, stepped by the arrow keys, dragged between sensible ends, in any unit of the format. */
import { useSignal } from '@preact/signals'
import { useEffect, useRef } from 'preact/hooks'
import { amountText } from '../../fields/amounts.js'
import type { Drag } from '../../fields/field.js'
import type { BoxProps } from './other-boxes.js'
import { stepped, typedValue } from './typed.js'
import { UnitBox, useUnit } from './unit-box.js'

/** Steps that Page Up and Page Down take. */
const bigStep = 10

export function NumberBox({ id, field, describedBy, isWrong, turned, write }: BoxProps) {
  const { amount, label, usual, written } = field
  // what is being typed stays as it is typed; a value of the file may be written otherwise
  const typed = useSignal<string | null>(null)
  useEffect(() => {
    typed.value = null
  }, [turned])
  const held = useHeldDrag(field.drag)
  const { unit, hasUnit, choose } = useUnit(field, write)
  const shown = typed.value ?? (amount ? String(amount.number) : (written ?? usual ?? ''))
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
        id={id}
        type="text"
        inputMode="decimal"
        autocomplete="off"
        spellcheck={false}
        aria-describedby={describedBy}
        aria-invalid={isWrong}
        class={written === null ? 'usual' : ''}
        value={shown}
        onInput={({ currentTarget: { value } }) => {
          typed.value = value
          if (value.trim() !== '') write(typedValue(value, unit))
        }}
        onBlur={() => {
          if (typed.value?.trim() === '') write(null)
          typed.value = null
        }}
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
