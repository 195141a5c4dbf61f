/** One who works on a queue: takes tasks, simulates them in threads, and puts the answers where who asked finds them. */
import { randomUUID } from 'node:crypto'
import { Standstill } from '../line/standstill.js'
import type { Scenario } from '../scenario/schema.js'
import type { Executor } from '../shifts/executor.js'
import type { Task } from '../shifts/work.js'
import { received } from './designs.js'
import { type Answer, answerToBytes, type TaskSent, taskOf } from './messages.js'
import { TooLarge } from './seal.js'
import { presenceEvery, type Transport } from './transport.js'

/** Answers wait so long for who asked, s. */
const answersFor = 900
/** Designs that are kept read. */
const mostDesigns = 64

export interface WorkerOptions {
  version: string
  /** What people call it. */
  name: string
  say: (text: string) => void
}

/** A design as it is read, with the number by which the threads know it. */
interface Known {
  scenario: Scenario
  number: number
}

export class QueueWorker {
  private readonly known = new Map<string, Promise<Known | null>>()
  private designs = 0
  private done = 0
  private readonly me = randomUUID()
  private readonly strangers = new Set<string>()

  /** `executor` must not be this thread: it answers for the tasks in hand while they are simulated. */
  constructor(
    private readonly transport: Transport,
    private readonly executor: Executor,
    private readonly options: WorkerOptions,
  ) {}

  /** Takes tasks until the returned function is called, which ends what is in hand. Throws, and has left the queue, where that refuses it. */
  async begin(): Promise<() => Promise<void>> {
    let isAppearing = false
    const timer = setInterval(async () => {
      // a server that is away keeps the last of them
      if (isAppearing) return
      isAppearing = true
      await this.appear().catch(() => {})
      isAppearing = false
    }, presenceEvery)
    const end = async () => {
      clearInterval(timer)
      await this.transport.close()
    }
    try {
      await this.appear()
      // one more than threads: the next is here when a thread is free
      await this.transport.take(this.executor.size + 1, (id, task) => this.act(id, task))
    } catch (error) {
      await end()
      throw error
    }
    return end
  }

  /** Does a task and keeps its answer. Throws where that cannot be kept. */
  async act(id: string, bytes: Uint8Array): Promise<void> {
    const answer = await this.answerTo(id, bytes)
    await this.transport.put(`answer:${id}`, this.packed(id, answer), answersFor)
  }

  private packed(id: string, answer: Answer): Uint8Array {
    try {
      return answerToBytes(id, answer)
    } catch (error) {
      if (!(error instanceof TooLarge)) throw error
      return answerToBytes(id, { refused: `the answer is too large: ${error.message}` })
    }
  }

  private async answerTo(id: string, bytes: Uint8Array): Promise<Answer> {
    let task: TaskSent
    let design: Known | null
    try {
      task = taskOf(id, bytes)
      const { version } = this.options
      if (task.version !== version)
        return { refused: `a worker of tapeshift ${version} does no task of ${task.version}` }
    } catch {
      return { refused: 'a task is not as it was sent' }
    }
    try {
      design = await this.designOf(task.design)
    } catch {
      return { refused: 'a design is not as it was sent' }
    }
    if (design === null) return { missing: true }
    const answer = await this.simulated(task, design)
    if ('shifts' in answer) this.done += answer.shifts.length
    return answer
  }

  private async simulated(sent: TaskSent, { scenario, number }: Known): Promise<Answer> {
    const { version: _, design: __, ...rest } = sent
    const task = { ...rest, design: number, scenario } as Exclude<Task, { what: 'stretch' }>
    try {
      if (task.what === 'series') return { series: await this.executor.work(task) }
      return { shifts: await this.executor.work(task) }
    } catch (error) {
      if (error instanceof Standstill) {
        const { piece, rule, fix, shift } = error
        return { standstill: { piece, rule, fix, shift } }
      }
      return { bug: (error as Error).message }
    }
  }

  /** Reads a design once, however many tasks ask for it at a time. */
  private designOf(hash: string): Promise<Known | null> {
    const known = this.known.get(hash)
    if (known) return known
    if (this.known.size >= mostDesigns) this.known.delete(this.known.keys().next().value!)
    const reading = this.read(hash)
    this.known.set(hash, reading)
    // what was not there or not whole may be there the next time
    const forget = () => this.known.get(hash) === reading && this.known.delete(hash)
    reading.then((design) => design === null && forget(), forget)
    return reading
  }

  private async read(hash: string): Promise<Known | null> {
    const scenario = await received(hash, ({ sort, hash: of }) => this.transport.get(`${sort}:${of}`))
    return scenario && { scenario, number: this.designs++ }
  }

  /** Says that it is there, and looks who asks. */
  private async appear(): Promise<void> {
    const { version, name, say } = this.options
    const threads = this.executor.size
    await this.transport.appear(this.me, { is: 'worker', name, version, threads, done: this.done })
    for (const [id, other] of await this.transport.present()) {
      if (other.is !== 'asker' || other.version === version || this.strangers.has(id)) continue
      this.strangers.add(id)
      say(
        `a study of tapeshift ${other.version} from ${other.name} waits here; this worker is ${version} and takes no part in it`,
      )
    }
  }
}
