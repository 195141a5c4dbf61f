/** The fields of a part: those that the file gives first, all others folded away with their defaults. */
import { useMemo, useState } from 'preact/hooks'
import { isWithin } from '../../../scenario/within.js'
import type { Room } from '../../draft/entries.js'
import type { Field, FieldGroup } from '../../fields/field.js'
import type { Part } from '../../fields/groups.js'
import type { Desk } from '../desk/desk.js'
import { Prose } from '../prose.js'
import { EntryActs, PieceActs } from './acts.js'
import { FieldRow } from './field-row.js'

interface PartFieldsProps {
  desk: Desk
  part: Part
  group: FieldGroup
  /** All parts of the scenario, in their order. */
  parts: readonly Part[]
}

export function PartFields({ desk, part, group, parts }: PartFieldsProps) {
  const { room, name, path } = part
  const inRoom = parts.flatMap((each) => (each.room === room ? [each.name] : []))
  // what the file gives when the part is opened stands first, and stays there while it is changed
  const left = useMemo(
    () => group.fields.filter((each) => isLeft(each, group.fields)).map(({ path }) => path),
    [path],
  )
  const isRest = ({ path }: Field) => left.some((each) => isWithin(path, each))
  const front = group.fields.filter((field) => !isRest(field))
  const rest = group.fields.filter(isRest)
  return (
    <section class="fields" aria-label={`Fields of ${name}`}>
      <h2>{name}</h2>
      {group.explanation ? (
        <p class="note">
          <Prose text={group.explanation} />
        </p>
      ) : null}
      {path === room ? null : room === 'line' ? (
        <PieceActs desk={desk} piece={name} pieces={inRoom} />
      ) : (
        <EntryActs desk={desk} room={room as Room} name={name} count={inRoom.length} />
      )}
      <Fields desk={desk} fields={front} />
      {rest.length > 0 ? <Rest desk={desk} fields={rest} isOpen={front.length === 0} /> : null}
    </section>
  )
}

/** Fields that are made when somebody looks for them. */
function Rest({ desk, fields, isOpen }: { desk: Desk; fields: readonly Field[]; isOpen: boolean }) {
  const [isShown, show] = useState(isOpen)
  const [sought, seek] = useState('')
  const found = fields.filter((field) => isSought(field, sought))
  return (
    <details class="data" open={isShown} onToggle={({ currentTarget }) => show(currentTarget.open)}>
      <summary>
        {fields.length} more {fields.length === 1 ? 'value' : 'values'}, at their defaults or not given
      </summary>
      {isShown && fields.length > mostAtAGlance ? (
        <label class="sought">
          Find among them{' '}
          <input
            type="text"
            autocomplete="off"
            value={sought}
            onInput={({ currentTarget }) => seek(currentTarget.value)}
          />
        </label>
      ) : null}
      {isShown ? <Fields desk={desk} fields={found} /> : null}
      {found.length === 0 ? <p class="note">No value has these words.</p> : null}
    </details>
  )
}

/** More fields than this are searched rather than read. */
const mostAtAGlance = 12

/** Whether all words that are sought stand in what is said of a field. */
function isSought({ label, part, explanation, path }: Field, sought: string): boolean {
  const told = `${part} ${label} ${explanation} ${path}`.toLowerCase()
  return sought
    .toLowerCase()
    .split(/\s+/)
    .every((word) => told.includes(word))
}

/** Left to its default, or out; what a map that is not given would need is not missing. */
const isLeft = ({ written, isNeeded, part }: Field, all: readonly Field[]): boolean =>
  written === null &&
  !(isNeeded && (part === '' || all.some((each) => each.part === part && each.written !== null)))

/** Fields under the keys that they stand below. */
function Fields({ desk, fields }: { desk: Desk; fields: readonly Field[] }) {
  const parts = [...new Set(fields.map(({ part }) => part))]
  return (
    <>
      {parts.map((part) => (
        <div class="group" key={part} {...(part === '' ? {} : { role: 'group', 'aria-label': part })}>
          {part === '' ? null : <h3>{part}</h3>}
          <div class="field-grid">
            {fields
              .filter((field) => field.part === part)
              .map((field) => (
                <FieldRow
                  key={field.path}
                  desk={desk}
                  field={field}
                  inside={fields.filter(({ path }) => path.startsWith(`${field.path}.`))}
                />
              ))}
          </div>
        </div>
      ))}
    </>
  )
}
