/** What a browser keeps of a page, so that a reload loses nothing; a page never writes over what another one has kept since. */
import type { Line } from '../../data.js'
import { type History, restored, stored } from '../../draft/history.js'
import type { Pin } from '../../study/messages.js'

/** What is kept. */
export interface Kept {
  line: Line
  history: History
  pins: readonly Pin[]
}

/** `other`: another page has kept something since; `none`: there is no storage, or it is full. */
export type Saved = 'saved' | 'other' | 'none'

export class Store {
  private readonly key: string
  /** What stands there by this page; null where nothing does. */
  private seen: string | null = null

  constructor(
    key: string,
    /** Tells pages apart. */
    private readonly owner: string,
  ) {
    this.key = `tapeshift try ${key}`
  }

  /** What was kept; null where nothing can be read. Whoever reads it goes on from there. */
  read(): Kept | null {
    const text = this.peek()
    this.seen = text
    return text === null ? null : keptOf(text)
  }

  /** Whether another page has kept something since. */
  get isOthers(): boolean {
    return this.peek() !== this.seen
  }

  /** Keeps it; writes over what another page has kept only where `isForced`. */
  save({ line, history, pins }: Kept, isForced = false): Saved {
    const now = this.peek()
    if (now !== this.seen && !isForced) return 'other'
    const text = JSON.stringify({ owner: this.owner, line, history: stored(history), pins })
    try {
      localStorage.setItem(this.key, text)
    } catch {
      return 'none'
    }
    this.seen = text
    return 'saved'
  }

  private peek(): string | null {
    try {
      return localStorage.getItem(this.key)
    } catch {
      return null
    }
  }

  /** Calls `changed` where another page keeps something; what comes back ends that. */
  watch(changed: () => void): () => void {
    const heard = ({ key }: StorageEvent) => {
      if (key === this.key) changed()
    }
    addEventListener('storage', heard)
    return () => removeEventListener('storage', heard)
  }
}

/** What was kept, as far as it is of the form that pages keep; null of all else. */
function keptOf(text: string): Kept | null {
  let read: Record<string, unknown>
  try {
    read = Object(JSON.parse(text))
  } catch {
    return null
  }
  const history = restored(String(read.history))
  const line = Object(read.line)
  if (history === null || typeof line.text !== 'string' || typeof line.name !== 'string') return null
  const isPin = (each: unknown): each is Pin =>
    typeof Object(each).name === 'string' && typeof Object(each).text === 'string'
  const files = Object.entries(Object(line.files)).filter(([, each]) => typeof each === 'string')
  return {
    line: { name: line.name, text: line.text, files: Object.fromEntries(files) as Line['files'] },
    history,
    pins: Array.isArray(read.pins) ? read.pins.filter(isPin) : [],
  }
}
