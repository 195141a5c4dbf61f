/** The threads of a study: begun first of all, so that they load while its modules and its scenario are read. */
import type { Workers } from '../study/replicate.js'

/** Does `work` with `size` workers; whatever happens, they end with it. */
export async function withWorkers<T>(size: number, work: (workers: Workers) => Promise<T>): Promise<T> {
  // what simulates takes long to load: not for --help
  const { workersOf } = await import('../study/workers/pool.js')
  const workers = workersOf(size)
  try {
    return await work(workers)
  } finally {
    await workers.close()
  }
}
