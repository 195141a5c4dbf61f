/** The head of the page: which line this is, undo and redo, what can be taken away from here. */
import { useSignal } from '@preact/signals'
import type { Desk } from '../desk/desk.js'
import { copiesOf } from './commands.js'
import { saveFile } from './save-file.js'

interface TopProps {
  desk: Desk
  title: string
  isText: boolean
  showText: (on: boolean) => void
  /** Back to the choice of lines; null where there is none. */
  leave: (() => void) | null
}

export function Top({ desk, title, isText, showText, leave }: TopProps) {
  const { past, future } = desk.history.value
  return (
    <header class="top">
      <div>
        <h1>{title}</h1>
        <p class="subtitle">
          {desk.line.name}: change a value, and it is simulated at once, beside the line as it came. Nothing
          leaves your computer.
        </p>
      </div>
      <div class="tools" role="toolbar" aria-label="The whole scenario">
        <Tool words="Undo" title="Ctrl+Z" isOff={past.length === 0} run={() => desk.undo()} />
        <Tool words="Redo" title="Ctrl+Shift+Z" isOff={future.length === 0} run={() => desk.redo()} />
        <Tool
          words="As it came"
          title="All values as they were when the page was opened"
          isOff={!desk.isChanged.value}
          run={() => desk.take(desk.line.text, 'as it came')}
        />
        <button type="button" aria-pressed={isText} onClick={() => showText(!isText)}>
          Text
        </button>
        <button type="button" onClick={() => saveFile(desk.line.name, desk.text.value)}>
          Save the file
        </button>
        <Copies desk={desk} />
        {leave ? (
          <button type="button" onClick={leave}>
            Another line
          </button>
        ) : null}
      </div>
    </header>
  )
}

interface ToolProps {
  words: string
  title: string
  isOff: boolean
  run: () => void
}

/** A button that stays where it is for those who are on it, also while there is nothing for it to do. */
function Tool({ words, title, isOff, run }: ToolProps) {
  return (
    <button type="button" title={title} aria-disabled={isOff} onClick={() => !isOff && run()}>
      {words}
    </button>
  )
}

/** The change in the words of the command line. */
function Copies({ desk }: { desk: Desk }) {
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
      {open.value ? (
        <div class="copies-words">
          {copiesOf(desk).map(({ title, text }) => (
            <Copy key={title} title={title} text={text} />
          ))}
        </div>
      ) : null}
    </details>
  )
}

function Copy({ title, text }: { title: string; text: string }) {
  const told = useSignal('')
  const copy = async () => {
    try {
      await navigator.clipboard.writeText(text)
      told.value = 'Copied.'
    } catch {
      told.value = 'This browser does not let the page copy: mark the text and copy it.'
    }
  }
  return (
    <div class="copy">
      <h3>{title}</h3>
      <textarea readOnly aria-label={title} rows={Math.min(8, text.split('\n').length + 1)} value={text} />
      <button type="button" onClick={copy}>
        Copy<span class="unseen"> {title}</span>
      </button>{' '}
      <span role="status" class="note">
        {told.value}
      </span>
    </div>
  )
}
