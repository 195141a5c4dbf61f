/** The fields of a part: those that the file gives first, all others folded away with their defaults. */
import { useMemo } from 'preact/hooks'
import type { Field, FieldGroup } from '../../fields/field.js'
import type { Desk } from '../desk/desk.js'
import { Prose } from '../prose.js'
import { FieldRow } from './field-row.js'
import { type Part, pieceOf } from './parts.js'
import { PieceActs } from './piece-acts.js'

export function PartFields({ desk, part, pieces }: { desk: Desk; part: Part; pieces: readonly string[] }) {
  const piece = pieceOf(part.path)
  const [first, ...others] = part.groups
  return (
    <section class="fields" aria-label={`Fields of ${part.name}`}>
      <h2>{part.name}</h2>
      {first?.explanation ? (
        <p class="note">
          <Prose text={first.explanation} />
        </p>
      ) : null}
      {piece === null ? null : <PieceActs desk={desk} piece={piece} pieces={pieces} />}
      {part.groups.length > 0 ? <GroupFields desk={desk} group={first!} isFirst={true} /> : null}
      {others.map((group) => (
        <GroupFields key={group.path} desk={desk} group={group} isFirst={false} />
      ))}
    </section>
  )
}

/** What the file gives when the part is opened stands first, and stays there while it is changed. */
function GroupFields({ desk, group, isFirst }: { desk: Desk; group: FieldGroup; isFirst: boolean }) {
  const given = useMemo(() => new Set(group.fields.filter(isGiven).map(({ path }) => path)), [group.path])
  const front = group.fields.filter(({ path }) => given.has(path))
  const rest = group.fields.filter(({ path }) => !given.has(path))
  const rows = (fields: readonly Field[]) => (
    <div class="field-grid">
      {fields.map((field) => (
        <FieldRow key={field.path} desk={desk} field={field} />
      ))}
    </div>
  )
  return (
    <div class="group">
      {isFirst ? null : <h3>{group.title}</h3>}
      {rows(front)}
      {rest.length > 0 ? (
        <details class="data">
          <summary>
            {rest.length} more {rest.length === 1 ? 'value' : 'values'} of {group.title || 'the file'}, at
            their defaults or not given
          </summary>
          {rows(rest)}
        </details>
      ) : null}
    </div>
  )
}

const isGiven = ({ written, isNeeded }: Field): boolean => written !== null || isNeeded
