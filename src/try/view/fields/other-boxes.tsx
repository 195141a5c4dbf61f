/** Boxes of fields that are no plain numbers: words for choice, yes or no, text, and values of several parts as YAML in one line. */
import { useSignal } from '@preact/signals'
import type { TargetedInputEvent } from 'preact'
import { useEffect } from 'preact/hooks'
import { parse } from 'yaml'
import { lineOf } from '../../draft/yaml-text.js'
import type { Field } from '../../fields/field.js'

/** What a text in YAML says; what is none as it is written. */
function plainText(yaml: string): string {
  const text: unknown = parse(yaml)
  return typeof text === 'string' ? text : yaml
}

/** What a box of a field is given. */
export interface BoxProps {
  id: string
  field: Field
  /** Ids of the words that belong to the box. */
  describedBy: string
  isWrong: boolean
  /** Grows when the value changes from elsewhere. */
  turned: number
  write: (value: string | null) => void
}

export function ChoiceBox({ id, field, describedBy, isWrong, write }: BoxProps) {
  const { choices, written, usual } = field
  const value = written ?? usual ?? ''
  // what is written wrongly is not shown as something else
  const all = choices.includes(value) ? choices : [value, ...choices]
  return (
    <select
      id={id}
      value={value}
      aria-describedby={describedBy}
      aria-invalid={isWrong}
      class={written === null ? 'usual' : ''}
      onChange={({ currentTarget }) => write(currentTarget.value === '' ? null : currentTarget.value)}
    >
      {all.map((each) => (
        <option key={each} value={each}>
          {each === '' ? 'not given' : each}
        </option>
      ))}
    </select>
  )
}

/** What is being typed stays as it is typed, in the place of what is `shown`: a value of the file may be written otherwise than it was typed. */
export function useTyped(
  { id, describedBy, isWrong, turned, write }: BoxProps,
  shown: string,
  asWritten: (text: string) => string,
) {
  const typed = useSignal<string | null>(null)
  useEffect(() => {
    typed.value = null
  }, [turned])
  const input = {
    ...({ id, type: 'text', autocomplete: 'off', spellcheck: false } as const),
    ...{ 'aria-describedby': describedBy, 'aria-invalid': isWrong, value: typed.value ?? shown },
    onInput({ currentTarget: { value } }: TargetedInputEvent<HTMLInputElement>) {
      typed.value = value
      if (value.trim() !== '') write(asWritten(value))
    },
    onBlur() {
      if (typed.value?.trim() === '') write(null)
      typed.value = null
    },
  }
  return { typed, input }
}

export function TextBox(box: BoxProps) {
  const { form, written, usual } = box.field
  // of a plain text the quotes of YAML are no part
  const isPlain = form === 'text'
  const given = written ?? usual ?? ''
  const { input } = useTyped(box, isPlain ? plainText(given) : given, (text) =>
    isPlain ? lineOf(text) : text,
  )
  return <input {...input} class={`${form === 'more' ? 'parts' : ''}${written === null ? ' usual' : ''}`} />
}
