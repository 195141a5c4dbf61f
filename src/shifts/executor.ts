/** Whoever simulates: this thread, or several. A result is the same for any of them. */
import type { Work } from './work.js'

/** Does so many tasks at once. Whoever made it closes it when the study is over. */
export interface Executor {
  size: number
  work: Work
  close(): Promise<void>
}
