/** Writes a trace while it is simulated, no faster than it is read. */
import { once } from 'node:events'
import { trace } from '../index.js'
import { clockText } from '../questions/trace/events.js'
import type { TraceOptions } from '../questions/trace/study.js'
import { exits, type Io } from './io.js'
import type { ScenarioOptions } from './options.js'
import { loadForCommand } from './scenario.js'

/** Writes the shift that is asked for; returns the exit code. */
export async function writeTrace(
  name: string,
  options: TraceOptions & ScenarioOptions,
  io: Io,
): Promise<number> {
  const { set, seed, variant, shift, equipment, from, to, json } = options
  const loaded = await loadForCommand(name, { set, seed, variant }, io)
  let isCancelled = false
  const stopListening = io.onInterrupt(() => {
    isCancelled = true
  })
  try {
    const asked = { shift, case: options.case, equipment, from, to, json }
    for await (const { text, until } of trace(loaded, asked)) {
      if (text !== '' && !io.stdout.write(text)) await once(io.stdout, 'drain')
      else await new Promise((resolve) => setImmediate(resolve))
      if (isCancelled) {
        io.stderr.write(`interrupted at ${clockText(until)} of the shift\n`)
        return exits.interrupted
      }
    }
    return exits.done
  } finally {
    stopListening()
  }
}
