/** One worker: this thread, giving way now and then so that others can speak. */
import type { Executor } from './executor.js'
import { type Results, Simulator, type Task } from './work.js'

/** Simulates in this thread, one shift after the other. */
export function inProcess(): Executor {
  const simulator = new Simulator()
  return {
    size: 1,
    async work<Asked extends Task>(task: Asked) {
      const results = simulator.do(task) as Results<Asked>
      await new Promise((resolve) => setTimeout(resolve))
      return results
    },
    close: async () => {},
  }
}
