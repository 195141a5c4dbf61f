/** `tapeshift worker`: simulates for studies that ask over a queue. */
import { hostname } from 'node:os'
import type { Command } from 'commander'
import { printable } from '../scenario/printable.js'
import { version } from '../version.js'
import { exits, type Io } from './io.js'
import { workersOption } from './options.js'
import { workerAddress } from './queue.js'

interface Flags {
  queue?: string
  workers: number
  name: string
  quiet?: boolean
}

/** Adds the command; `finish` takes its exit code. */
export function addWorker(program: Command, io: Io, finish: (code: number) => void): void {
  program
    .command('worker')
    .description('simulate for studies on other machines that ask with --queue, until it is stopped')
    .addHelpText(
      'before',
      'Examples:\n  tapeshift worker --queue redis://office-server:6379\n  tapeshift run line.yaml --queue redis://office-server:6379     on any machine\n',
    )
    .addHelpText(
      'after',
      '\nCtrl-C ends it after the shifts in hand. What it had in hand when it is killed, another does.',
    )
    .option('--queue <URL>', 'the queue, redis://HOST:PORT or rediss://HOST:PORT (default: TAPESHIFT_QUEUE)')
    .addOption(workersOption('number of threads, 1 to 256'))
    .option('--name <NAME>', 'what studies call it in their progress', hostname())
    .option('--quiet', 'print only errors')
    .action(async (flags: Flags) => {
      await worked(flags, io)
      finish(exits.done)
    })
}

/** Works until an interrupt. Throws `Fault` `asked`. */
async function worked({ queue, workers, name, quiet }: Flags, io: Io): Promise<void> {
  const say = (text: string) => void (quiet || io.stderr.write(`${text}\n`))
  const address = await workerAddress(queue, io)
  const [{ threadsBeside }, { asRefusal, QueueWorker, joined }] = await Promise.all([
    import('../shifts/threads/pool.js'),
    import('../queue/over-queue.js'),
  ])
  const stopped = new Promise<void>((resolve) => io.onInterrupt(resolve))
  let trouble: string | null = null
  const transport = await joined(address, version, (now) => {
    if (now !== trouble) say(now === null ? `${address.shown} answers` : `${address.shown}: ${now}: waiting`)
    trouble = now
  })
  const executor = threadsBeside(workers)
  try {
    const worker = new QueueWorker(transport, executor, { version, name: printable(name).slice(0, 60), say })
    const end = await worker.begin().catch((error) => {
      throw asRefusal(error)
    })
    say(
      `at work for ${address.shown}: tapeshift ${version}, ${workers} ${workers === 1 ? 'thread' : 'threads'}`,
    )
    await stopped
    await end()
  } finally {
    await executor.close()
  }
}
