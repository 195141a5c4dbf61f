/** The first screen of an answer as data: a verdict, and what a reader must know with it, each under a word of its own. */
import type { Display } from '../catalogue/printed-units.js'
import type { Table } from './table.js'

/** What a word says of the line; it is never said by colour alone. */
export type Tone = 'error' | 'warning' | 'good' | 'plain'

/** The first words of an answer: `HOLDS`, and the sentence that goes on from there. */
export interface Verdict {
  word: string
  tone: Tone
  text: string
}

/** Sentences under a word; several stand in a list. */
export interface Said {
  head: string
  lines: readonly string[]
  tone?: Tone
}

/** The first screen: about 25 lines of 80. */
export interface Screen {
  title: string
  display: Display
  verdict: Verdict
  parts: readonly (Said | Table)[]
}
