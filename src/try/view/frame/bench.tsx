/** The page of one line: the line and its fields, the answer beside them, and below why it is so. */
import { useComputed } from '@preact/signals'
import { useEffect, useMemo, useState } from 'preact/hooks'
import type { Layout } from '../../../pictures/layout.js'
import { printable } from '../../../scenario/printable.js'
import type { Stretch } from '../../../shifts/stretch.js'
import { cautionLine, cautions } from '../../../trade/cautions.js'
import { pieceNames } from '../../draft/line.js'
import { Answer } from '../answer/answer.js'
import { Why } from '../answer/why.js'
import type { Desk } from '../desk/desk.js'
import type { Kept as KeptBefore, Store } from '../desk/store.js'
import { Kept } from '../kept/kept.js'
import { LineView } from '../line/line-view.js'
import { Fold, Sentences } from '../prose.js'
import { Announcer, Brief } from './brief.js'
import { Edited } from './edited.js'
import { Keeping } from './keeping.js'
import { fileOf, Top } from './top.js'

/** A title has so many letters at most. */
const mostTitle = 200

interface BenchProps {
  desk: Desk
  store: Store
  /** What the page began with, where that had been kept. */
  kept: KeptBefore | null
  leave: (() => void) | null
}

export function Bench({ desk, store, kept, leave }: BenchProps) {
  const [isText, showText] = useState(false)
  useGlobalUndo(desk)
  useSettling(desk)
  const title = useComputed(() => {
    const title = desk.known.figures.value?.after.made.scenario.title ?? desk.tree.value?.title
    return printable(typeof title === 'string' && title.length <= mostTitle ? title : fileOf(desk.line.name))
  })
  return (
    <main class="try">
      <Top desk={desk} title={title.value} leave={leave} isText={isText} showText={showText} />
      <Brief desk={desk} />
      <Keeping desk={desk} store={store} kept={kept} />
      <div class="work">
        <div class="bench">
          <Seen desk={desk} />
          <Edited desk={desk} isText={isText} />
        </div>
        <Answer desk={desk} />
      </div>
      <p class="caution">
        <strong>Safety.</strong> {cautionLine}
      </p>
      <div class="folds">
        <Fold
          title="Designs that you keep"
          gist={desk.pins.value.length > 0 ? `${desk.pins.value.length} kept` : ''}
          isOpen={true}
        >
          <Kept desk={desk} />
        </Fold>
        <Why desk={desk} />
        <Fold title="Cautions">
          <Sentences lines={cautions} />
        </Fold>
      </div>
      <Announcer desk={desk} />
    </main>
  )
}

/** The line: at first with no cases, and as it runs once a shift of it is recorded. */
function Seen({ desk }: { desk: Desk }) {
  const told = desk.known.stretch.value
  const layout = told?.layout ?? desk.known.checked.value?.layout
  const stretch = useMemo(() => told?.stretch ?? (layout ? emptyStretch(layout) : null), [told, layout])
  if (!layout || !stretch) return <section class="line waits" aria-label="The line from above" />
  const { chosen } = desk
  const names = pieceNames(desk.tree.value ?? {})
  return (
    <LineView
      layout={layout}
      stretch={stretch}
      moves={told?.moves ?? []}
      chosen={chosen.value === null ? (names[0] ?? null) : pieceOf(chosen.value)}
      fileName={(piece) => (names.includes(piece) ? piece : piece.replace(/ (\d+|divert)$/, ''))}
      choose={(piece) => {
        chosen.value = `line.${piece}`
      }}
    />
  )
}

/** Name of the piece of which the part is; null of all else. */
const pieceOf = (path: string): string | null =>
  path.startsWith('line.') ? path.slice('line.'.length) : null

/** A line that nothing has been recorded of yet: its pieces stand where they will, and no case is on it. */
const emptyStretch = ({ pieces, arrivals }: Layout): Stretch => ({
  ...{ shift: 0, from: 0, to: 0, why: '', cases: [], breaks: [], held: [], pieces: [] },
  states: pieces.map(() => []),
  drives: pieces.map(() => []),
  sources: arrivals.map(({ name }) => ({ name, whenFull: 'wait' })),
})

/** What was typed is taken when somebody leaves what they typed it in, and before the page is left. */
function useSettling(desk: Desk): void {
  useEffect(() => {
    const ends = new AbortController()
    const settle = () => desk.settle()
    addEventListener('focusout', settle, { signal: ends.signal })
    // before it is kept
    addEventListener('pagehide', settle, { signal: ends.signal, capture: true })
    return () => ends.abort()
  }, [])
}

/** Ctrl+Z undoes the last edit wherever one stands: the history is that of the whole page. */
function useGlobalUndo(desk: Desk): void {
  useEffect(() => {
    const key = (event: KeyboardEvent) => {
      if (!(event.ctrlKey || event.metaKey) || event.altKey || event.defaultPrevented) return
      const pressed = event.key.toLowerCase()
      const isRedo = pressed === 'y' || (pressed === 'z' && event.shiftKey)
      if (pressed !== 'z' && !isRedo) return
      event.preventDefault()
      if (isRedo) desk.redo()
      else desk.undo()
    }
    addEventListener('keydown', key)
    return () => removeEventListener('keydown', key)
  }, [])
}
