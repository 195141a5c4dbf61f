/**
 * What a queue costs: a study over four workers against threads, in time of all processors, and tasks without content from one asker to many
 * workers. `node .build/bench/queue.js [TASKS] [WORKERS]`; it starts a server of its own.
 */
import { type ChildProcess, spawn, spawnSync } from 'node:child_process'
import { mkdtempSync, readFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { setTimeout } from 'node:timers/promises'
import { fileURLToPath } from 'node:url'
import { Redis } from 'ioredis'
import { readAddress } from '../../src/queue/address.js'
import {
  answerOf,
  answerToBytes,
  idOf,
  type TaskSent,
  taskOf,
  taskToBytes,
} from '../../src/queue/messages.js'
import { joined } from '../../src/queue/server.js'
import { version } from '../../src/version.js'

const port = 7411
const url = `redis://127.0.0.1:${port}`
const program = fileURLToPath(new URL('../cli/main.js', import.meta.url))
const demo = fileURLToPath(new URL('../../scenarios/soap-works.yaml', import.meta.url))

/** Ticks of the processor, user and system, that a process has had so far; 100 a second on Linux. */
const ticksOf = ({ pid }: ChildProcess): number => {
  const fields = readFileSync(`/proc/${pid}/stat`, 'utf8').split(') ')[1]!.split(' ')
  return Number(fields[11]) + Number(fields[12])
}

/** Seconds of processor that a program takes from beginning to end. */
function secondsOf(argv: readonly string[]): number {
  const { stderr } = spawnSync('bash', [
    '-c',
    'TIMEFORMAT="%U %S"; time "$0" "$@" >/dev/null 2>&1',
    'node',
    program,
    ...argv,
  ])
  return stderr
    .toString()
    .trim()
    .split(' ')
    .reduce((sum, each) => sum + Number(each), 0)
}

/** A study over `workers` against threads. */
async function scaling(server: ChildProcess, workers: number): Promise<void> {
  const children = Array.from({ length: workers }, () =>
    spawn('node', [program, 'worker', '--queue', url, '--workers', '1', '--quiet'], { stdio: 'ignore' }),
  )
  await setTimeout(5000)
  const study = ['run', demo, '--shifts', '4000', '--no-files', '--quiet']
  // what each thread compiles for itself is no cost of the queue
  secondsOf([...study, '--queue', url])
  const all = () => [server, ...children].reduce((sum, each) => sum + ticksOf(each), 0) / 100
  for (let turn = 0; turn < 3; turn++) {
    const before = all()
    const asker = secondsOf([...study, '--queue', url])
    const over = asker + all() - before
    const threads = secondsOf([...study, '--workers', '2'])
    console.log(
      `4000 shifts of soap-works: ${over.toFixed(2)} s of processor over ${workers} workers (asker ${asker.toFixed(2)}), ${threads.toFixed(2)} s with 2 threads: ${(over / threads).toFixed(2)} times`,
    )
  }
  for (const child of children) child.kill('SIGKILL')
}

/** Tasks without content, from one asker to so many workers. */
async function nothing(tasks: number, workers: number): Promise<void> {
  const client = new Redis(port)
  const address = readAddress(url, undefined)
  const ends = []
  for (let each = 0; each < workers; each++) {
    const end = await joined(address, version, () => {})
    await end.take(2, async (id, bytes) => {
      const task = taskOf(id, bytes)
      const row = new Float64Array(300).fill(task.from)
      const shift = {
        values: row,
        held: new Float64Array(0),
        outputs: row.subarray(0, 1),
        controls: row.subarray(0, 2),
      }
      await end.put(`answer:${id}`, answerToBytes(id, { shifts: [shift] }), 60)
    })
    ends.push(end)
  }
  const asker = await joined(address, version, () => {})
  const sent = new Map<string, TaskSent>()
  let done = 0
  let next = 0
  const number = async (key: string) =>
    Number(new RegExp(`^${key}:([\\d.]+)`, 'm').exec(await client.info())?.[1])
  const keys = [
    'total_commands_processed',
    'total_net_input_bytes',
    'total_net_output_bytes',
    'used_cpu_user',
    'used_cpu_sys',
  ] as const
  const read = async () =>
    Object.fromEntries(await Promise.all(keys.map(async (key) => [key, await number(key)])))
  const before = await read()
  const began = performance.now()
  await new Promise<void>((resolve) => {
    const more = () => {
      while (next < tasks && sent.size < 2 * workers) {
        const from = ++next
        const task = {
          what: 'shifts',
          version,
          seed: 'bench',
          design: '0'.repeat(64),
          from,
          to: from,
          countFrom: 0,
          isLean: true,
        } as TaskSent
        const id = idOf(task)
        sent.set(id, task)
        void asker.add(id, taskToBytes(task))
      }
    }
    void asker
      .onDone(async (id) => {
        const task = sent.get(id)
        const bytes = task && (await asker.fetch(`answer:${id}`))
        if (!task || !bytes) return
        answerOf(id, task, bytes)
        sent.delete(id)
        if (++done === tasks) resolve()
        more()
      })
      .then(more)
  })
  const seconds = (performance.now() - began) / 1000
  const after = await read()
  const per = (key: (typeof keys)[number]) => (after[key] - before[key]) / tasks
  console.log(
    `${tasks} tasks without content, ${workers} workers in one process: ${(tasks / seconds).toFixed(0)} a second; of the server each took ` +
      `${per('total_commands_processed').toFixed(1)} commands, ${per('total_net_input_bytes').toFixed(0)} bytes in, ${per('total_net_output_bytes').toFixed(0)} bytes out, ` +
      `${(1e6 * (per('used_cpu_user') + per('used_cpu_sys'))).toFixed(0)} microseconds; ${((await number('used_memory_peak')) / 1e6).toFixed(0)} MB at most`,
  )
  client.disconnect()
}

const [tasks = 20_000, workers = 50] = process.argv.slice(2).map(Number)
const folder = mkdtempSync(path.join(tmpdir(), 'tapeshift-queue-bench-'))
const server = spawn(
  'redis-server',
  ['--port', String(port), '--bind', '127.0.0.1', '--dir', folder, '--save', '', '--appendonly', 'yes'],
  { stdio: 'ignore' },
)
await setTimeout(500)
try {
  if (tasks > 0) await nothing(tasks, workers)
  await scaling(server, 4)
} finally {
  server.kill('SIGKILL')
}
process.exit(0)
