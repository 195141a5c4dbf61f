/** The text of a scenario in an editor: what is written there is told, what changes elsewhere is followed, faults are marked. */
import { autocompletion, closeBrackets, completionKeymap } from '@codemirror/autocomplete'
import {
  indentLess,
  indentMore,
  moveLineDown,
  moveLineUp,
  standardKeymap,
  toggleComment,
} from '@codemirror/commands'
import { yaml } from '@codemirror/lang-yaml'
import { bracketMatching, indentOnInput, syntaxHighlighting } from '@codemirror/language'
import { type Diagnostic, lintGutter, setDiagnostics } from '@codemirror/lint'
import { Annotation, EditorState } from '@codemirror/state'
import { drawSelection, EditorView, highlightSpecialChars, keymap, lineNumbers } from '@codemirror/view'
import { complete } from './completion.js'
import { highlight, looks } from './looks.js'

/** What is wrong at a place of the text; line and column count from 1, and line 0 is no place. */
interface Mark {
  line: number
  column: number
  words: string
}

interface Wishes {
  text: string
  changed: (text: string) => void
  undo: () => void
  redo: () => void
}

/** What comes from outside is not told back. */
const fromOutside = Annotation.define<boolean>()

/** Puts an editor into `place`. It stands in a tree of its own, to which it can bring its styles without the page allowing any. */
export function textEditor(place: HTMLElement, { text, changed, undo, redo }: Wishes) {
  // the editor knows one sign at the end of a line
  const lineEnd = text.includes('\r\n') ? '\r\n' : '\n'
  const root = place.shadowRoot ?? place.attachShadow({ mode: 'open' })
  const run = (work: () => void) => () => {
    work()
    return true
  }
  const view = new EditorView({
    parent: root as unknown as Element,
    root,
    state: EditorState.create({
      doc: text,
      extensions: [
        [lineNumbers(), lintGutter(), drawSelection(), EditorState.tabSize.of(2)],
        // signs that nobody sees, such as those that turn the direction of writing round, are shown
        [indentOnInput(), bracketMatching(), closeBrackets(), highlightSpecialChars()],
        [yaml(), syntaxHighlighting(highlight), looks, autocompletion({ override: [complete] })],
        // undo is that of the whole page
        keymap.of([
          { key: 'Mod-z', run: run(undo), preventDefault: true },
          { key: 'Mod-y', run: run(redo), preventDefault: true },
          { key: 'Mod-Shift-z', run: run(redo), preventDefault: true },
          ...completionKeymap,
          { key: 'Mod-/', run: toggleComment },
          { key: 'Mod-[', run: indentLess, preventDefault: true },
          { key: 'Mod-]', run: indentMore, preventDefault: true },
          { key: 'Alt-ArrowUp', run: moveLineUp },
          { key: 'Alt-ArrowDown', run: moveLineDown },
          ...standardKeymap,
        ]),
        EditorView.contentAttributes.of({ 'aria-label': 'The scenario as text', tabindex: '0' }),
        EditorView.updateListener.of(({ docChanged, transactions, state }) => {
          if (docChanged && !transactions.some((each) => each.annotation(fromOutside)))
            changed(state.doc.toString().replaceAll('\n', lineEnd))
        }),
      ],
    }),
  })
  return {
    /** Shows another text, where it is another; the cursor stays where it is as far as that is still there. */
    follow: (next: string) => follow(view, next.replace(/\r\n?/g, '\n')),
    mark: (marks: readonly Mark[]) =>
      view.dispatch(setDiagnostics(view.state, diagnosticsOf(view.state, marks))),
    end: () => view.destroy(),
  }
}

export type TextEditor = ReturnType<typeof textEditor>

/** Changes only what differs. */
function follow(view: EditorView, next: string): void {
  const now = view.state.doc.toString()
  if (now === next) return
  const most = Math.min(now.length, next.length)
  let from = 0
  while (from < most && now[from] === next[from]) from++
  let end = 0
  while (end < most - from && now[now.length - 1 - end] === next[next.length - 1 - end]) end++
  view.dispatch({
    changes: { from, to: now.length - end, insert: next.slice(from, next.length - end) },
    annotations: fromOutside.of(true),
  })
}

const diagnosticsOf = ({ doc }: EditorState, marks: readonly Mark[]): Diagnostic[] =>
  marks.flatMap(({ line, column, words }) => {
    if (line < 1 || line > doc.lines) return []
    const { from, to } = doc.line(line)
    const at = Math.min(from + column - 1, to)
    const word = /^[^\s,}\]]+/.exec(doc.sliceString(at, to))?.[0].length ?? 0
    return [
      { from: at, to: Math.min(to, at + Math.max(1, word)), severity: 'error' as const, message: words },
    ]
  })
