/** Who simulates for a command: threads here, or workers anywhere over a queue; nothing of a queue is loaded where none is asked for. */
import type { Command } from 'commander'
import type { Address } from '../queue/address.js'
import { misuse } from '../scenario/fault.js'
import type { Executor } from '../shifts/executor.js'
import { version } from '../version.js'
import type { Io } from './io.js'

/** Options of commands that may ask workers on other machines. */
export interface QueueFlags {
  queue?: string
  patience?: string
  quiet?: boolean
}

/** The address of the queue, so that none need stand in the list of processes, and its password. */
const addressVariable = 'TAPESHIFT_QUEUE'
const passwordVariable = 'TAPESHIFT_QUEUE_PASSWORD'

const usualPatience = '1 min'

/** Adds the options of commands that may ask workers on other machines. */
export const addQueueOptions = (command: Command): Command =>
  command
    .option(
      '--queue <URL>',
      `simulate on the workers of a queue, redis://HOST:PORT or rediss://HOST:PORT, instead of here (default: ${addressVariable} if set; see \`tapeshift help many-machines\`)`,
    )
    .option(
      '--patience <TIME>',
      `how long to wait for workers and for a server that does not answer (default: ${usualPatience})`,
    )

/** Whoever simulates, and what a command should know of them. */
export interface Simulators {
  executor: Executor
  /** Comes when they are there. */
  ready: () => Promise<void>
  /** Who they are and how fast, for the progress; null where there is nothing to tell. */
  told: (() => string) | null
}

/** Threads of this machine, `size` at most, or the workers of the queue that was asked for. Throws `Fault` `asked`. */
export async function simulatorsOf(flags: QueueFlags, size: number, io: Io): Promise<Simulators> {
  const url = flags.queue ?? io.env[addressVariable]
  if (url === undefined || url === '') {
    if (flags.patience !== undefined)
      throw misuse('--patience is how long to wait for the workers of --queue')
    // what starts threads takes long to load: one worker has none
    const executor =
      size > 1
        ? (await import('../shifts/threads/pool.js')).threads(size)
        : (await import('../shifts/in-process.js')).inProcess()
    return { executor, ready: async () => {}, told: null }
  }
  const [{ QueueExecutor, joined, readAddress }, { parseQuantity }] = await Promise.all([
    import('../queue/over-queue.js'),
    import('../scenario/quantity.js'),
  ])
  const patience = parseQuantity(flags.patience ?? usualPatience, 'time')
  if (!('value' in patience) || patience.value < 0)
    throw misuse('--patience needs a time, such as "10 min" or "12 h"')
  const address = readAddress(url, io.env[passwordVariable])
  const executor = new QueueExecutor({
    ...{ version, shown: address.shown, patience: 1000 * patience.value },
    say: flags.quiet ? () => {} : (text) => io.stderr.write(`note: ${text}\n`),
  })
  executor.begin((told) => joined(address, version, told))
  return { executor, ready: () => executor.ready(), told: () => executor.workforce.told }
}

/** Where a worker works. Throws `Fault` `asked`. */
export async function workerAddress(url: string | undefined, io: Io): Promise<Address> {
  const asked = url ?? io.env[addressVariable]
  if (!asked) throw misuse(`a worker needs --queue redis://HOST:PORT, or ${addressVariable}`)
  const { readAddress } = await import('../queue/over-queue.js')
  return readAddress(asked, io.env[passwordVariable])
}
