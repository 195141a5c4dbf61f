/** The parts of the line, the fields of the one that is chosen, and the text beside them. */
import { useComputed } from '@preact/signals'
import { useMemo, useRef } from 'preact/hooks'
import { mostForFields } from '../../draft/lengths.js'
import type { Field, FieldGroup } from '../../fields/field.js'
import { groupAt, type Part, partsOf } from '../../fields/groups.js'
import { saysOnce } from '../../fields/leaf.js'
import { thousands } from '../answer/waiting.js'
import type { Desk } from '../desk/desk.js'
import { Chooser } from '../fields/chooser.js'
import { PartFields } from '../fields/part-fields.js'
import { TextPane } from '../text/text-pane.js'

export function Edited({ desk, isText }: { desk: Desk; isText: boolean }) {
  const { parts, part, group } = useChosen(desk).value
  return (
    <>
      <Chooser desk={desk} parts={parts} chosen={part?.path ?? ''} />
      <div class={isText ? 'edit with-text' : 'edit'}>
        {part && group ? (
          <PartFields key={part.path} desk={desk} part={part} group={group} parts={parts} />
        ) : (
          <p>{withoutFields(desk.text.value.length)}</p>
        )}
        {isText ? <TextPane desk={desk} /> : null}
      </div>
    </>
  )
}

/** Why there are no fields. */
const withoutFields = (letters: number): string =>
  letters > mostForFields
    ? `This text has ${thousands(letters)} letters. Texts of up to ${thousands(mostForFields)} have fields; change this one as text. To read and simulate it takes a while.`
    : 'The text has no parts that could be shown as fields.'

interface Chosen {
  parts: readonly Part[]
  part: Part | null
  group: FieldGroup | null
}

/** The parts of the text and the fields of one of them; while the text cannot be read those that it had before. */
function useChosen(desk: Desk) {
  const says = useMemo(saysOnce, [])
  const last = useRef<Chosen>({ parts: [], part: null, group: null })
  return useComputed(() => {
    const tree = desk.tree.value
    if (desk.text.value.length > mostForFields) last.current = { parts: [], part: null, group: null }
    if (!tree) return last.current
    const parts = partsOf(tree)
    const part =
      parts.find(({ path }) => path === desk.chosen.value) ??
      parts.find(({ room }) => room === 'line') ??
      parts[0] ??
      null
    const made = part && groupAt(tree, part.path, says)
    const before = last.current.part?.path === part?.path ? last.current.group : null
    last.current = { parts, part, group: made && withSame(made, before) }
    return last.current
  })
}

/** The group with those fields of `before` that are still the same: what has not changed is not drawn anew. */
function withSame(group: FieldGroup, before: FieldGroup | null): FieldGroup {
  const known = new Map(before?.fields.map((field) => [field.path, field]))
  const isSame = (one: Field, other: Field | undefined): other is Field =>
    other !== undefined && JSON.stringify(one) === JSON.stringify(other)
  const fields = group.fields.map((field) => {
    const other = known.get(field.path)
    return isSame(field, other) ? other : field
  })
  return { ...group, fields }
}
