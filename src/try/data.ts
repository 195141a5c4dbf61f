/** What the page holds beside its program: the scenario it is of, or lines to start from. */
import type { Home } from './study/messages.js'

/** A scenario with what lies beside it. */
export interface Line extends Home {
  text: string
}

/** A line to start from, with what it is about. */
export interface Start extends Line {
  title: string
  /** A sentence or two. */
  about: string
}

/** What the page was made of. */
export interface PageData {
  version: string
  /** The line that it opens on; null: on a choice of `starts`. */
  line: Line | null
  starts: readonly Start[]
  /** What tells pages of different scenarios apart: the key of what a browser keeps for it. */
  key: string
}
