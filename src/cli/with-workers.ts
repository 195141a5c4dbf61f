/** The threads of a study: begun first of all, so that they load while its modules and its scenario are read. */
import type { Workers } from '../shifts/replicate.js'

/** Does `work` with `size` workers; whatever happens, they end with it. */
export async function withWorkers<T>(size: number, work: (workers: Workers) => Promise<T>): Promise<T> {
  // what simulates takes long to load: not for --help
  const { workersOf } = await import('../shifts/threads/pool.js')
  const workers = workersOf(size)
  try {
    return await work(workers)
  } finally {
    await workers.close()
  }
}
