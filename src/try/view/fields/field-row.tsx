/** A field: its label, its value, and beside it what is wrong with it; what it means, its default and its evidence on demand. */
import type { RefObject } from 'preact'
import { useId, useRef } from 'preact/hooks'
import { type Field, problemsAt } from '../../fields/field.js'
import type { Desk } from '../desk/desk.js'
import { write } from '../desk/edits.js'
import { Prose } from '../prose.js'
import { NumberBox } from './number-box.js'
import { ChoiceBox, TextBox } from './other-boxes.js'

export function FieldRow({ desk, field: given }: { desk: Desk; field: Field }) {
  const id = useId()
  const row = useRef<HTMLDivElement>(null)
  const field = useHeld(given, row)
  const { path, label, written, usual, isNeeded, evidence } = field
  const problems = problemsAt(desk.known.problems.value, path)
  const refused = desk.refused.value?.of === path ? desk.refused.value : null
  const wrongs = refused ? [refused] : problems
  const props = {
    ...{
      id,
      field,
      isWrong: wrongs.length > 0,
      turned: desk.turned.value,
      describedBy: `${id}-wrong ${id}-from`,
    },
    write: (value: string | null) => write(desk, path, value),
  }
  return (
    <div class="field" data-path={path} ref={row}>
      <div class="field-head">
        <label for={id}>{label}</label>
        <About field={field} />
        {written !== null && !isNeeded ? (
          <button type="button" class="quiet" onClick={() => write(desk, path, null)}>
            {usual === null ? 'Leave out' : 'To the default'}
            <span class="unseen"> of {label}</span>
          </button>
        ) : null}
      </div>
      {field.form === 'amount' ? (
        <NumberBox {...props} />
      ) : field.form === 'choice' || field.form === 'flag' ? (
        <ChoiceBox {...props} />
      ) : (
        <TextBox {...props} />
      )}
      <p class="from" id={`${id}-from`}>
        {[written === null ? (usual === null ? 'not given' : 'default') : null, evidence]
          .filter(Boolean)
          .join('; ')}
      </p>
      <div class="wrong" id={`${id}-wrong`}>
        {wrongs.slice(0, 2).map(({ rule, fix }) => (
          <p key={rule}>
            <Prose text={rule} />
            {fix ? (
              <>
                . Fix: <Prose text={fix} />
              </>
            ) : null}
          </p>
        ))}
      </div>
    </div>
  )
}

/** While somebody is in the field it stays of its form, whatever is being typed: half a value is of none. */
function useHeld(field: Field, row: RefObject<HTMLDivElement | null>): Field {
  const before = useRef(field)
  const isHeld = row.current?.contains(document.activeElement) === true
  if (!isHeld) {
    before.current = field
    return field
  }
  const { form, units, drag, amount, choices } = before.current
  if (field.form === form && field.amount !== null) before.current = field
  return { ...field, form, choices, units, drag: field.drag ?? drag, amount: field.amount ?? amount }
}

/** What the field means, on demand. */
function About({ field: { label, path, explanation, takes, usual, basis, evidence } }: { field: Field }) {
  return (
    <details class="about">
      <summary>
        <span aria-hidden="true">?</span>
        <span class="unseen">What {label} means</span>
      </summary>
      <div class="about-words">
        <p>
          <Prose text={explanation} />.
        </p>
        {takes ? (
          <p>
            Takes <Prose text={takes} />.
          </p>
        ) : null}
        {usual === null ? null : (
          <p>
            Default <code>{usual}</code>
            {basis ? `: ${basis}` : ''}.
          </p>
        )}
        {evidence ? <p>Based on: {evidence}.</p> : null}
        <p>
          In the file: <code>{path}</code>
        </p>
      </div>
    </details>
  )
}
