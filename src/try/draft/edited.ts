/** What comes of an edit: the changed text, or why it cannot be made. */
import type { Tree } from './yaml-text.js'

/** A text of a scenario after an edit, and what it says where that was read; `name` is that of the piece that it was about. */
export type Edited = { text: string; tree?: Tree; name?: string } | Refused

/** Why an edit cannot be made, in the words of the loader: what holds, and the nearest mend. */
export interface Refused {
  rule: string
  fix: string
}

export const isRefused = (edited: Edited): edited is Refused => 'rule' in edited
