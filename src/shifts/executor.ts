/** Whoever simulates: this thread, or several. A result is the same for any of them. */
import type { Work } from './work.js'

/** Does so many tasks at once; where workers come and go, that changes. Whoever made it closes it when the study is over. */
export interface Executor {
  readonly size: number
  work: Work
  close(): Promise<void>
  /** Time that a task of several shifts should take from asking to answer, ms, where that is another than between threads. */
  readonly partTime?: number
}
