/** Whoever simulates, over a queue: hands tasks to workers anywhere, and asks again for what is lost on the way. */
import { randomUUID } from 'node:crypto'
import { hostname } from 'node:os'
import { Fault } from '../scenario/fault.js'
import type { Executor } from '../shifts/executor.js'
import { inProcess } from '../shifts/in-process.js'
import { type Results, type Task, taken } from '../shifts/work.js'
import { Sending, type Sent } from './designs.js'
import { type Answer, answerOf, idOf, type TaskSent, taskToBytes } from './messages.js'
import { type ToldOfServer, wordsOf } from './server.js'
import { Standing } from './standing.js'
import { presenceEvery, type Transport } from './transport.js'
import { Trouble } from './trouble.js'
import { Workforce } from './workforce.js'

/** Times that a task is asked for whose messages are not as they were sent, and one that each worker ended with who took it. */
const mostAttempts = { refused: 6, givenUp: 2 }
/** Tasks that a thread has before it, the one in hand included: it need not wait for messages. */
const ahead = 2
/** Most tasks at once: as many as two thousand threads take. */
const mostAtOnce = 4000
/** From asking to answer, ms, waiting in the queue included. */
const partTime = 600
/** A server that says nothing for so long, ms, is told of. */
const slow = 5000

/** An answer that is one: all else is asked for again. */
type Done = Exclude<Answer, { missing: true } | { refused: string }>

/** A task that is asked for. */
interface Asked {
  id: string
  task: TaskSent
  sent: Sent
  attempts: Record<keyof typeof mostAttempts, number>
  /** Somebody is just asking or looking for it. */
  isBusy: boolean
  /** It was said to be done while it was busy. */
  isTold: boolean
  isInQueue: boolean
  resolve: (answer: Done) => void
  reject: (error: Error) => void
}

export interface QueueOptions {
  version: string
  /** Where it is, for people. */
  shown: string
  /** How long trouble may last, ms. */
  patience: number
  /** Takes what people should know. */
  say: (text: string) => void
  /** Looks so often who is there and what was lost, ms. */
  every?: number
}

/** Work of an asker over `transport`; `ready` comes when workers are there. */
export class QueueExecutor implements Executor {
  readonly partTime = partTime
  readonly workforce: Workforce
  private readonly trouble: Trouble
  private readonly asked = new Map<string, Asked>()
  private readonly sending = new Sending()
  private readonly standing = new Standing(() => [...this.asked.values()].map(({ sent }) => sent))
  private readonly here = inProcess()
  private readonly me = randomUUID()
  private transport: Transport | null = null
  private tick: NodeJS.Timeout | null = null
  /** Since when it is looking who is there, and what was lost. */
  private lookedAt: number | null = null
  private lost: Error | null = null
  private closing: Promise<void> | null = null
  private readonly waitsForWorkers: { resolve: () => void; reject: (error: Error) => void }[] = []

  constructor(private readonly options: QueueOptions) {
    this.trouble = new Trouble(options.patience, options.say)
    this.workforce = new Workforce(options.version, options.say)
  }

  /** Joins the workers as soon as there is a way; `joining` is told of what keeps the server from answering. */
  begin(joining: (told: ToldOfServer) => Promise<Transport>): void {
    this.tick = setInterval(() => void this.look(), this.options.every ?? presenceEvery)
    joining(this.serverTold)
      .then(async (transport) => {
        if (this.lost) return transport.close()
        this.transport = transport
        await transport.onDone((id) => void this.collect(id))
        await this.look()
      })
      .catch((error: Error) => this.lose(error))
  }

  private readonly serverTold: ToldOfServer = (trouble) => {
    if (trouble === null) this.trouble.ends('server')
    else this.trouble.meets('server', `the queue at ${this.options.shown}: ${trouble}`)
  }

  /** Comes when workers are there. Throws `Fault` `queue` where nobody came in time. */
  async ready(): Promise<void> {
    if (this.lost) throw this.lost
    if (!this.workforce.isEmpty) return
    await new Promise<void>((resolve, reject) => this.waitsForWorkers.push({ resolve, reject }))
  }

  get size(): number {
    return Math.max(1, Math.min(mostAtOnce, ahead * this.workforce.threads))
  }

  work = async <Of extends Task>(task: Of): Promise<Results<Of>> => {
    // one shift to look at: it is here sooner than it is sent
    if (task.what === 'stretch') return this.here.work(task)
    const answer = await this.answerTo(task)
    if ('shifts' in answer) return answer.shifts as Results<Of>
    return ('series' in answer ? answer.series : taken(answer)) as Results<Of>
  }

  /** Takes what is not done out of the queue. */
  close(): Promise<void> {
    this.closing ??= this.leave()
    return this.closing
  }

  private async leave(): Promise<void> {
    if (this.tick) clearInterval(this.tick)
    const { transport } = this
    this.transport = null
    this.lost ??= new Error('the queue was left')
    if (!transport) return
    const left = [...this.asked.values()]
    this.asked.clear()
    const tidy = async () => {
      await Promise.all(left.map(({ id }) => transport.remove(id)))
      await this.standing.clear(transport)
    }
    // a server that is away cannot be tidied up: what is left there ends by itself
    await Promise.race([tidy().catch(() => {}), new Promise((resolve) => setTimeout(resolve, 1000).unref())])
    await transport.close()
  }

  private answerTo(task: Exclude<Task, { what: 'stretch' }>): Promise<Done> {
    const sent = this.sending.of(task.scenario)
    const shape = this.toSend(task, sent.hash)
    const id = idOf(shape)
    return new Promise((resolve, reject) => {
      if (this.lost) throw this.lost
      const state = { attempts: { refused: 0, givenUp: 0 }, isBusy: false, isTold: false, isInQueue: false }
      const asked: Asked = { id, task: shape, sent, ...state, resolve, reject }
      this.asked.set(id, asked)
      void this.ask(asked)
    })
  }

  private toSend(task: Exclude<Task, { what: 'stretch' }>, design: string): TaskSent {
    const { seed, from, to } = task
    const part = { version: this.options.version, seed, design, from, to }
    if (task.what === 'series') return { what: 'series', ...part, instants: task.instants }
    const { countFrom, isLean = false, eyes } = task
    return { what: 'shifts', ...part, countFrom, isLean, ...(eyes ? { eyes: { ...eyes } } : {}) }
  }

  /** Puts a task into the queue, with its design. What keeps it from that is tried again. */
  private async ask(asked: Asked): Promise<void> {
    if (asked.isBusy) return
    await this.busyWith(asked, async (transport) => {
      await this.standing.put(asked.sent, transport)
      await transport.add(asked.id, taskToBytes(asked.task))
      asked.isInQueue = true
    })
    if (asked.isTold) await this.collect(asked.id)
  }

  /** Does what takes a while for a task, where there is a way. */
  private async busyWith(asked: Asked, act: (transport: Transport) => Promise<void>): Promise<void> {
    if (!this.transport) return
    asked.isBusy = true
    try {
      await act(this.transport)
    } catch (error) {
      this.takeTrouble(error)
    } finally {
      asked.isBusy = false
    }
  }

  /** Looks after a task that somebody may have done. */
  private async collect(id: string): Promise<void> {
    const asked = this.asked.get(id)
    if (!asked) return
    asked.isTold = asked.isBusy
    if (asked.isBusy) return
    await this.busyWith(asked, async (transport) => {
      const bytes = await transport.fetch(`answer:${id}`)
      if (bytes) await this.take(asked, bytes, transport)
      else await this.find(asked, transport)
    })
  }

  /** A task without an answer: it waits, was given up, or is lost with its server. */
  private async find(asked: Asked, transport: Transport): Promise<void> {
    const where = await transport.whereIs(asked.id)
    if (where === 'waits') return
    // it may have been done between the two questions
    const bytes = await transport.fetch(`answer:${asked.id}`)
    if (bytes) return this.take(asked, bytes, transport)
    if (where === 'failed') this.again(asked, 'givenUp', 'each worker that took them ended')
    await this.anew(asked, transport)
  }

  /** What is on the server of it cannot be relied on: it will be put there again. */
  private async anew(asked: Asked, transport: Transport): Promise<void> {
    await transport.remove(asked.id)
    asked.isInQueue = false
    this.standing.forget(asked.sent)
  }

  private async take(asked: Asked, bytes: Uint8Array, transport: Transport): Promise<void> {
    let answer: Answer
    try {
      answer = answerOf(asked.id, asked.task, bytes)
    } catch {
      answer = { refused: 'an answer is not as it was sent' }
    }
    if ('missing' in answer || 'refused' in answer) {
      if ('refused' in answer) this.again(asked, 'refused', answer.refused)
      return this.anew(asked, transport)
    }
    this.asked.delete(asked.id)
    asked.resolve(answer)
  }

  /** One attempt of a task came to nothing: a few are made, and not more. */
  private again(asked: Asked, what: keyof typeof mostAttempts, why: string): void {
    const { id, task, attempts } = asked
    attempts[what]++
    if (attempts[what] < mostAttempts[what]) return
    this.asked.delete(id)
    asked.reject(
      new Fault(
        'queue',
        `shifts ${task.from} to ${task.to} were asked for ${attempts[what]} times over the queue and given up: ${why}`,
      ),
    )
  }

  private takeTrouble(error: unknown): void {
    this.trouble.meets('full', `the queue at ${this.options.shown}: ${wordsOf(error)}`)
  }

  /** Now and then: who is there, what was lost, and whether it takes too long. */
  private async look(): Promise<void> {
    const tooLong = this.trouble.tooLong
    if (tooLong !== null) this.lose(new Fault('queue', tooLong))
    if (!this.transport) return
    if (this.lookedAt !== null) {
      if (performance.now() - this.lookedAt > slow) this.serverTold('the server does not answer')
      return
    }
    this.lookedAt = performance.now()
    try {
      await this.meet(this.transport)
      this.trouble.ends('server')
      await Promise.all(
        [...this.asked.values()].map((each) => (each.isInQueue ? this.collect(each.id) : this.ask(each))),
      )
      if ([...this.asked.values()].every(({ isInQueue }) => isInQueue)) this.trouble.ends('full')
    } catch (error) {
      this.takeTrouble(error)
    } finally {
      this.lookedAt = null
    }
  }

  private async meet(transport: Transport): Promise<void> {
    const { version } = this.options
    this.workforce.see(await transport.present())
    if (this.workforce.isEmpty) this.trouble.meets('workers', `there is no worker at ${this.options.shown}`)
    else {
      this.trouble.ends('workers')
      for (const { resolve } of this.waitsForWorkers.splice(0)) resolve()
    }
    await transport.appear(this.me, { is: 'asker', name: hostname(), version, threads: 0, done: 0 })
  }

  private lose(error: Error): void {
    this.lost = error
    for (const { reject } of [...this.asked.values(), ...this.waitsForWorkers.splice(0)]) reject(error)
    this.asked.clear()
  }
}
