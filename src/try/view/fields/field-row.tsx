/** A field: its label, its value, and beside it what is wrong with it; what it means, its default and its evidence on demand. */
import type { RefObject } from 'preact'
import { useId, useRef, useState } from 'preact/hooks'
import { type Field, problemsAt } from '../../fields/field.js'
import type { Desk } from '../desk/desk.js'
import { lengthen, write } from '../desk/edits.js'
import { Prose, Ruled } from '../prose.js'
import { ManyBox } from './many-box.js'
import { NumberBox } from './number-box.js'
import { ChoiceBox, TextBox } from './other-boxes.js'

interface FieldRowProps {
  desk: Desk
  field: Field
  /** Fields of what stands in it, which are shown too. */
  inside: readonly Field[]
}

export function FieldRow({ desk, field: given, inside }: FieldRowProps) {
  const id = useId()
  const row = useRef<HTMLDivElement>(null)
  const field = useHeld(given, row)
  const { path, label, evidence } = field
  // what is wrong with a part of it is said beside that part
  const problems = problemsAt(desk.known.problems.value, path).filter(
    (each) => !inside.some((inner) => problemsAt([each], inner.path).length > 0),
  )
  const refused = desk.refused.value?.of === path ? desk.refused.value : null
  const wrongs = refused ? [refused] : problems
  const props = {
    ...{
      id,
      field,
      isWrong: wrongs.length > 0,
      turned: desk.turned.value,
      describedBy: `${id}-wrong`,
    },
    write: (value: string | null) => write(desk, path, value),
  }
  const [isAbout, showAbout] = useState(false)
  return (
    <div class="field" data-path={path} ref={row}>
      <div class="field-head">
        <label for={id} title={field.explanation}>
          {shownLabel(field)}
        </label>
        <button
          type="button"
          class="about"
          aria-expanded={isAbout}
          aria-controls={`${id}-about`}
          onClick={() => showAbout(!isAbout)}
        >
          <span aria-hidden="true">?</span>
          <span class="unseen">What {label} means</span>
        </button>
        <FromWhere field={field} reset={() => write(desk, path, null)} />
      </div>
      {field.form === 'amount' ? (
        <NumberBox {...props} />
      ) : isChosen(field) ? (
        <ChoiceBox {...props} />
      ) : field.form === 'more' ? (
        <ManyBox {...props} inside={inside} lengthen={() => lengthen(desk, path)} />
      ) : (
        <TextBox {...props} />
      )}
      {evidence === null ? null : <p class="from">{evidence}</p>}
      <div class="wrong" id={`${id}-wrong`}>
        {wrongs.slice(0, 2).map(({ rule, fix }) => (
          <p key={rule}>
            <Ruled rule={rule} fix={fix} />
          </p>
        ))}
      </div>
      <div id={`${id}-about`}>{isAbout ? <About field={field} /> : null}</div>
    </div>
  )
}

/** Whether it takes one of a few words, or a name that stands in the scenario. */
const isChosen = ({ form, choices }: Field): boolean =>
  form === 'choice' || form === 'flag' || (form === 'text' && choices.length > 0)

/** Words that people know for what the format says in short. */
const knownAs: Readonly<Record<string, string>> = {
  from: 'number of observations',
  cv: 'spread (standard deviation / mean)',
  ect: 'edge crush (ECT)',
}

/** The label as it stands over the box: prices by piece have the name of the piece. */
const shownLabel = ({ label }: Field): string => knownAs[label] ?? label.replace(/^line\./, '')

/** Whether the value is the default; else the way back to it. */
function FromWhere({
  field: { label, written, usual, isNeeded },
  reset,
}: {
  field: Field
  reset: () => void
}) {
  if (written === null) return <span class="from">{usual === null ? 'not given' : 'default'}</span>
  if (isNeeded) return null
  return (
    <button type="button" class="quiet" onClick={reset}>
      {usual === null ? 'Leave out' : 'Back to default'}
      <span class="unseen"> of {label}</span>
    </button>
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
function About({ field: { path, explanation, takes, usual, basis, evidence } }: { field: Field }) {
  return (
    <div class="about-words">
      <p>
        <Prose text={explanation} />
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
      <p>
        {evidence === null ? 'Taken as exact: nothing says how well it is known.' : `Based on: ${evidence}.`}
      </p>
      <p>
        In the file: <code>{path}</code>
      </p>
    </div>
  )
}
