/** The head of the page: which line this is, undo and redo, what can be taken away from here. */
import type { Desk } from '../desk/desk.js'
import { Copies } from './copies.js'

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
          {fileOf(desk.line.name)}: change a value, and the page simulates it at once. Nothing leaves your
          computer.
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

/** Without the folders that it lies in. */
export const fileOf = (name: string): string => name.split(/[/\\]/).at(-1) || name

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

/** Lets the browser save `text` under the last part of `name`. */
function saveFile(name: string, text: string): void {
  const address = URL.createObjectURL(new Blob([text], { type: 'application/yaml' }))
  const link = document.createElement('a')
  link.href = address
  link.download = fileOf(name) || 'line.yaml'
  link.click()
  // the browser reads it after the click
  setTimeout(() => URL.revokeObjectURL(address), 10_000)
}
