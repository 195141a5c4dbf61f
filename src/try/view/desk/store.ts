/** What a browser keeps of a page, so that a reload loses nothing; a page never writes over what another one has kept since. */
import { hashOf } from '../../../scenario/hash.js'
import type { Line } from '../../data.js'
import { type History, restored, stored } from '../../draft/history.js'
import type { Pin } from '../../study/messages.js'

/** What people have done to a line. */
export interface Done {
  history: History
  pins: readonly Pin[]
}

/** What is kept of it, and since when, ms since 1970; 0 where that is not known. */
export interface Kept extends Done {
  line: Line
  at: number
}

/** `other`: another page has kept something since; `full`: there is no room for it; `none`: there is no storage. */
export type Saved = 'saved' | 'other' | 'full' | 'none'

const beginning = 'tapeshift try '

export class Store {
  private readonly key: string
  /** What stands there as far as this page knows; null where nothing does. */
  private seen: string | null = null
  /** What this page has kept last, or began with: that alone is no reason to write. */
  private last: Done | null = null

  constructor(key: string) {
    this.key = `${beginning}${key}`
  }

  /** That of one of the lines to start from, or of a file that somebody opened there. */
  of({ name, text }: Line): Store {
    return new Store(`${this.key.slice(beginning.length)} ${hashOf([name, text]).slice(0, 16)}`)
  }

  /** What was kept last of these lines; null where nothing was. */
  latest(): Kept | null {
    const kept = keysThere()
      .filter((key) => key.startsWith(`${this.key} `))
      .flatMap((key) => keptOf(localStorage.getItem(key) ?? '') ?? [])
    return kept.sort((a, b) => b.at - a.at)[0] ?? null
  }

  /** What was kept; null where nothing can be read. Whoever reads it goes on from there. */
  read(): Kept | null {
    const text = this.peek()
    this.seen = text
    return text === null ? null : keptOf(text)
  }

  /** What a page begins with, which stands there, or is the line as it came. */
  begin({ history, pins }: Done): void {
    this.last = { history, pins }
  }

  /** How it stands with what this page has kept last. */
  get state(): Saved {
    if (!isThere()) return 'none'
    return this.peek() === this.seen ? 'saved' : 'other'
  }

  /** Keeps it, where it is something else than before; writes over what another page has kept only where `isForced`. */
  save(line: Line, { history, pins }: Done, isForced = false): Saved {
    const isSame = history === this.last?.history && pins === this.last.pins
    if (!isForced && (isSame || this.state !== 'saved')) return this.state
    const text = JSON.stringify({ at: Date.now(), line, history: stored(history), pins })
    try {
      localStorage.setItem(this.key, text)
    } catch {
      return isThere() ? 'full' : 'none'
    }
    this.seen = text
    this.last = { history, pins }
    return 'saved'
  }

  /** Takes away what pages of other lines have kept. */
  forgetOthers(): void {
    for (const key of keysThere()) if (key !== this.key) localStorage.removeItem(key)
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

/** Whether the browser has a storage for this page: some have none for pages from a disk. */
function isThere(): boolean {
  try {
    return localStorage.length >= 0
  } catch {
    return false
  }
}

/** Keys of all that pages have kept. */
const keysThere = (): string[] =>
  isThere() ? Object.keys(localStorage).filter((key) => key.startsWith(beginning)) : []

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
    at: typeof read.at === 'number' ? read.at : 0,
  }
}
