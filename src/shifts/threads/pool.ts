/** Threads that simulate; the result is the same for any number of them, and one that dies is replaced. */
import { Piscina } from 'piscina'
import type { Executor } from '../executor.js'
import { inProcess } from '../in-process.js'
import { type Brought, type Results, type Task, taken } from '../work.js'

/** Times that a task is begun again when the thread that did it died, of lack of memory or at another's hand. */
const mostAttempts = 3

/** What a thread runs. */
const threadFile = new URL('./worker.js', import.meta.url)

/** `size` threads, which begin to load at once; with 1, this thread. `file` is what each runs. */
export const threads = (size: number, file: URL = threadFile): Executor =>
  size <= 1 ? inProcess() : threadsBeside(size, file)

/** The same, and never this thread, which stays free for messages. */
export function threadsBeside(size: number, file: URL = threadFile): Executor {
  const pool = new Piscina({
    filename: file.href,
    minThreads: size,
    maxThreads: size,
  })
  let closing: Promise<void> | null = null
  /** What a thread said that died without a task. */
  let lastWords = 'it cannot be started'
  const waiting = new Set<AbortController>()
  pool.on('error', ({ message }: Error) => {
    lastWords = message
  })
  pool.on('workerDestroy', () =>
    // the pool begins no thread anew after one that died while it loaded: with none left, tasks would wait for ever
    setImmediate(() => {
      if (pool.threads.length === 0) for (const controller of waiting) controller.abort()
    }),
  )
  const attempted = async (task: Task): Promise<Brought> => {
    const controller = new AbortController()
    waiting.add(controller)
    try {
      return (await pool.run(task, { signal: controller.signal })) as Brought
    } catch (error) {
      throw controller.signal.aborted ? new Error(lastWords) : error
    } finally {
      waiting.delete(controller)
    }
  }
  const work = async <Asked extends Task>(task: Asked) => {
    for (let attempt = 1; ; attempt++) {
      let brought: Brought
      try {
        brought = await attempted(task)
      } catch (error) {
        const which = `a thread that simulated shifts ${task.from} to ${task.to}`
        if (closing) throw new Error(`${which} was ended`)
        // a thread answers whatever happens in its model: no answer means that the thread itself is gone
        if (attempt < mostAttempts) continue
        throw new Error(`${which} ended ${attempt} times: ${(error as Error).message}`)
      }
      return taken(brought) as Results<Asked>
    }
  }
  return {
    size,
    work,
    close() {
      closing ??= pool.destroy()
      return closing
    },
  }
}
