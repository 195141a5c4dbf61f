/** The page as a whole: a line on its bench, or a choice of lines. */
import { useSignal } from '@preact/signals'
import { useEffect, useMemo } from 'preact/hooks'
import type { Line, PageData } from '../data.js'
import type { Study } from '../study/client.js'
import type { Told } from '../study/messages.js'
import { Desk } from './desk/desk.js'
import { type Kept, Store } from './desk/store.js'
import { Bench } from './frame/bench.js'
import { Starts } from './frame/starts.js'

interface PageProps {
  data: PageData
  studied: (tell: (told: Told) => void) => Study
}

export function Page({ data, studied }: PageProps) {
  const store = useMemo(() => new Store(data.key), [])
  const kept = useMemo(() => store.read(), [])
  const opened = useSignal<{ line: Line; kept: Kept | null } | null>(firstOf(data, kept))
  if (!opened.value)
    return (
      <Starts
        starts={data.starts}
        open={(line) => {
          opened.value = { line, kept: null }
        }}
      />
    )
  const leave = data.line
    ? null
    : () => {
        opened.value = null
      }
  return (
    <Opened key={opened.value.line.text} store={store} studied={studied} leave={leave} {...opened.value} />
  )
}

/** The line of the page, or the one that was open when it was left. */
function firstOf({ line }: PageData, kept: Kept | null): { line: Line; kept: Kept | null } | null {
  if (line) return { line, kept: kept?.line.text === line.text ? kept : null }
  return kept ? { line: kept.line, kept } : null
}

interface OpenedProps extends Pick<PageProps, 'studied'> {
  line: Line
  kept: Kept | null
  store: Store
  leave: (() => void) | null
}

function Opened({ line, kept, store, studied, leave }: OpenedProps) {
  const desk = useMemo(() => {
    const made = new Desk(line, studied)
    if (kept) {
      made.pins.value = kept.pins
      made.turn(kept.history)
    }
    store.begin({ history: made.history.value, pins: made.pins.value })
    return made
  }, [])
  useEffect(() => {
    desk.ask()
    return () => desk.close()
  }, [])
  return <Bench desk={desk} store={store} kept={kept} leave={leave} />
}
