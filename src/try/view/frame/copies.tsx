/** What can be copied from the page: the change in the words of the command line, and the command that repeats the answer. */
import { useSignal } from '@preact/signals'
import { useMemo, useState } from 'preact/hooks'
import { quoted } from '../../../answers/repeat.js'
import type { RunResult } from '../../../questions/run/document.js'
import { repeating, type Said, saidChange } from '../../command.js'
import type { Line } from '../../data.js'
import type { Desk } from '../desk/desk.js'

export function Copies({ desk }: { desk: Desk }) {
  const [isShown, show] = useState(false)
  return (
    <details
      class="copies"
      onToggle={({ currentTarget }) => show(currentTarget.open)}
      onKeyDown={({ key, currentTarget }) => {
        if (key !== 'Escape') return
        currentTarget.open = false
        currentTarget.querySelector('summary')?.focus()
      }}
    >
      <summary>Copy</summary>
      {isShown ? <All desk={desk} /> : null}
    </details>
  )
}

function All({ desk }: { desk: Desk }) {
  const { line, text, known } = desk
  const { problems, isFresh, figures, drawn } = known
  const now = isFresh.value ? ((drawn.value ?? figures.value)?.after ?? null) : null
  const isWrong = problems.value.length > 0
  const said = useMemo(
    () => (isWrong || text.value === line.text ? null : saidChange(line.text, text.value, line)),
    [text.value, isWrong],
  )
  return (
    <div class="copies-words">
      {isWrong ? (
        <p>The text cannot be simulated as it is now.</p>
      ) : (
        copiesOf(line, text.value, said, now).map((copied) => <Copy key={copied.title} {...copied} />)
      )}
    </div>
  )
}

/** Letters in a line of the narrowest screen, and lines that are shown at most. */
const [shortLine, mostRows] = [40, 8]

function Copy({ title, text }: Copied) {
  const told = useSignal('')
  const copy = async () => {
    try {
      await navigator.clipboard.writeText(text)
      told.value = 'Copied.'
    } catch {
      told.value = 'This browser does not let the page copy: mark the text and copy it.'
    }
  }
  const lines = text.split('\n').map((line) => Math.ceil((line.length + 1) / shortLine))
  const rows = Math.min(
    mostRows,
    lines.reduce((sum, each) => sum + each, 1),
  )
  return (
    <div class="copy">
      <h3>{title}</h3>
      <textarea readOnly aria-label={title} rows={rows} value={text} />
      <button type="button" onClick={copy}>
        Copy<span class="unseen"> {title}</span>
      </button>{' '}
      <span role="status" class="note">
        {told.value}
      </span>
    </div>
  )
}

/** A text to copy, with what it is. */
interface Copied {
  title: string
  text: string
}

/** The texts for `now`, the line with the change `said`. */
function copiesOf(line: Line, text: string, said: Said | null, now: RunResult | null): Copied[] {
  const sets = said?.sets ?? []
  const isFile = text !== line.text && said?.sets == null
  return [
    ...(now
      ? [
          {
            title: `The command that gives these figures${isFile ? ', once the changed file is saved under that name' : ''}`,
            text: repeating(line.name, now, sets),
          },
        ]
      : []),
    ...(sets.length > 0
      ? [{ title: 'The change as options', text: sets.map((each) => `--set ${quoted(each)}`).join(' ') }]
      : []),
    ...(said ? [{ title: 'The change as a variant, for the file', text: said.variant }] : []),
  ]
}
