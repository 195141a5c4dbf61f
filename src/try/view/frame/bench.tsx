/** The page of one line: the line and its fields, the answer beside them, and below why it is so. */
import { type ReadonlySignal, useComputed, useSignal } from '@preact/signals'
import { useEffect, useRef } from 'preact/hooks'
import { cautionLine, cautions } from '../../../trade/cautions.js'
import { treeOf } from '../../draft/yaml-text.js'
import { groupsOf } from '../../fields/groups.js'
import { Answer } from '../answer/answer.js'
import { screenOf } from '../answer/verdict.js'
import { Why } from '../answer/why.js'
import type { Desk } from '../desk/desk.js'
import type { Store } from '../desk/store.js'
import { Chooser } from '../fields/chooser.js'
import { PartFields } from '../fields/part-fields.js'
import { type Part, partsOf, pieceOf } from '../fields/parts.js'
import { Kept } from '../kept/kept.js'
import { LineView } from '../line/line-view.js'
import { Fold, Sentences } from '../prose.js'
import { TextPane } from '../text/text-pane.js'
import { Announcer } from './announcer.js'
import { Brief } from './brief.js'
import { Keeping } from './keeping.js'
import { Top } from './top.js'

export function Bench({ desk, store, leave }: { desk: Desk; store: Store; leave: (() => void) | null }) {
  const isText = useSignal(false)
  useGlobalUndo(desk)
  const title = useComputed(() => {
    const now = desk.known.figures.value
    return now ? screenOf(now.after).title : desk.line.name
  })
  return (
    <main class="try">
      <Top
        desk={desk}
        title={title.value}
        leave={leave}
        isText={isText.value}
        showText={(on) => {
          isText.value = on
        }}
      />
      <Brief desk={desk} />
      <Keeping desk={desk} store={store} />
      <div class="work">
        <div class="bench">
          <Seen desk={desk} />
          <Edited desk={desk} isText={isText.value} />
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

/** The line, once a shift of it is recorded; its room is kept before. */
function Seen({ desk }: { desk: Desk }) {
  const told = desk.known.stretch.value
  if (!told) return <section class="line waits" aria-label="The line from above" />
  const { chosen } = desk
  return (
    <LineView
      layout={told.layout}
      stretch={told.stretch}
      moves={told.moves}
      chosen={chosen.value === null ? null : pieceOf(chosen.value)}
      choose={(piece) => {
        chosen.value = `line.${piece}`
      }}
    />
  )
}

function Edited({ desk, isText }: { desk: Desk; isText: boolean }) {
  const parts = useParts(desk)
  const part =
    parts.value.find(({ path }) => path === desk.chosen.value) ??
    parts.value.find(({ room }) => room === 'line') ??
    parts.value[0]
  const pieces = parts.value.flatMap(({ room, name }) => (room === 'line' ? [name] : []))
  return (
    <>
      <Chooser desk={desk} parts={parts.value} chosen={part?.path ?? ''} />
      <div class={isText ? 'edit with-text' : 'edit'}>
        {part ? (
          <PartFields key={part.path} desk={desk} part={part} pieces={pieces} />
        ) : (
          <p>The text has no parts that could be shown as fields.</p>
        )}
        {isText ? <TextPane desk={desk} /> : null}
      </div>
    </>
  )
}

/** The parts of the text; where it cannot be read those that it had before. */
function useParts(desk: Desk): ReadonlySignal<readonly Part[]> {
  const last = useRef<readonly Part[]>([])
  return useComputed(() => {
    const tree = treeOf(desk.text.value)
    if (tree) last.current = partsOf(groupsOf(tree))
    return last.current
  })
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
