/** The page as a whole: a line on its bench, or a choice of lines. */
import { render } from 'preact'
import { useEffect, useMemo, useState } from 'preact/hooks'
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

/** Shows the page; `studied` starts the study, which hands what it tells to what it is given. */
export function start({ data, studied }: PageProps): void {
  document.title = `${data.line?.name ?? 'tapeshift'}: try the line`
  // what the page holds beside it stays where it is
  const root = document.createElement('div')
  document.body.append(root)
  render(<Page data={data} studied={studied} />, root)
}

function Page({ data, studied }: PageProps) {
  const [opened, open] = useState<OnBench | null>(() => firstOf(data))
  if (!opened)
    return <Starts starts={data.starts} open={(line) => open(onBench(line, new Store(data.key).of(line)))} />
  const leave = data.line ? null : () => open(null)
  return <Opened key={opened.line.text} studied={studied} leave={leave} {...opened} />
}

/** A line with what was kept of it, each where it is kept. */
interface OnBench {
  line: Line
  kept: Kept | null
  store: Store
}

function onBench(line: Line, store: Store): OnBench {
  const kept = store.read()
  return { line, store, kept: kept?.line.text === line.text ? kept : null }
}

/** The line of the page, or of those that were chosen here the one that was changed last. */
function firstOf({ line, key }: PageData): OnBench | null {
  const store = new Store(key)
  if (line) return onBench(line, store)
  const last = store.latest()?.line
  return last ? onBench(last, store.of(last)) : null
}

interface OpenedProps extends OnBench, Pick<PageProps, 'studied'> {
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
