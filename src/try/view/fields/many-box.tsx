/** A value of several parts: what is in it in words where its parts have boxes of their own, else as YAML in one line, with an example to begin with. */
import { useSignal } from '@preact/signals'
import { exampleFor } from '../../fields/examples.js'
import type { Field } from '../../fields/field.js'
import { type BoxProps, TextBox } from './other-boxes.js'

interface ManyBoxProps extends BoxProps {
  /** Fields of its parts that stand below. */
  inside: readonly Field[]
  lengthen: () => void
}

export function ManyBox({ inside, lengthen, ...props }: ManyBoxProps) {
  const { field, id, isWrong, write } = props
  const isText = useSignal(false)
  const example = exampleFor(field.path)
  const isEmpty = field.written === null || field.written === '[]'
  const isFolded = inside.length > 0 && !isWrong && !isText.value
  return (
    <>
      {isFolded ? (
        <div class="inner">
          <span>{gistOf(field, inside)}</span>
          {field.written?.startsWith('[{') ? (
            <button type="button" onClick={lengthen}>
              One more<span class="unseen"> in {field.label}</span>
            </button>
          ) : null}
          <button
            type="button"
            onClick={() => {
              isText.value = true
              setTimeout(() => document.getElementById(id)?.focus())
            }}
          >
            As text<span class="unseen">, {field.label}</span>
          </button>
        </div>
      ) : (
        <TextBox {...props} />
      )}
      {isEmpty && example !== null ? (
        <button type="button" class="quiet example" onClick={() => write(example)}>
          Begin with an example<span class="unseen"> of {field.label}</span>
        </button>
      ) : null}
    </>
  )
}

/** `lognormal, below`; `3 entries, below`. */
function gistOf({ path }: Field, inside: readonly Field[]): string {
  const steps = [...new Set(inside.map((each) => each.path.slice(path.length + 1).split('.')[0]!))]
  const isList = steps.every((step) => /^\d+$/.test(step))
  if (isList) return `${steps.length} ${steps.length === 1 ? 'entry' : 'entries'}, below`
  return steps.length === 1 ? `${steps[0]}, below` : `${steps.length} values, below`
}
