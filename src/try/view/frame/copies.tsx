/** The change in the words of the command line, to be copied. */
import { useSignal } from '@preact/signals'
import { useMemo } from 'preact/hooks'
import type { Desk } from '../desk/desk.js'
import { type Copied, changeOf, copiesOf } from './commands.js'

export function Copies({ desk }: { desk: Desk }) {
  const open = useSignal(false)
  return (
    <details
      class="copies"
      onToggle={({ currentTarget }) => {
        open.value = currentTarget.open
      }}
      onKeyDown={({ key, currentTarget }) => {
        if (key !== 'Escape') return
        currentTarget.open = false
        currentTarget.querySelector('summary')?.focus()
      }}
    >
      <summary>Copy</summary>
      {open.value ? <All desk={desk} /> : null}
    </details>
  )
}

function All({ desk }: { desk: Desk }) {
  const { line, text, known } = desk
  const { problems, isFresh, figures, drawn } = known
  const now = isFresh.value ? ((drawn.value ?? figures.value)?.after ?? null) : null
  const isWrong = problems.value.length > 0
  const said = useMemo(() => (isWrong ? null : changeOf(line, text.value)), [text.value, isWrong])
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
