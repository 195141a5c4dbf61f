/** Carries messages over a server of the Redis protocol, with the queue of the package bullmq: the one file that knows either. */
import type { JobsOptions, Queue, QueueEvents, Worker } from 'bullmq'
import type { Redis } from 'ioredis'
import program from '../../package.json' with { type: 'json' }
import { type Fault, misuse } from '../scenario/fault.js'
import { printable } from '../scenario/printable.js'
import type { Address } from './address.js'
import { isId, type Presence, presenceOf, presenceToText } from './messages.js'
import { presenceFor, type Transport, type Whereabouts } from './transport.js'

/** A worker that says nothing for so long, ms, has its tasks taken over; it says something in half of that. */
const lockTime = 6000
/** Times that a task is taken over from one who said nothing any more before it is given up. */
const mostTakenOver = 2
/** Longest pause between two attempts to reach a server, ms. */
const longestPause = 2000
/** What is left of a task that was given up, and for how long, s. */
const keptFailed = { age: 3600, count: 1000 }

const ofTask = {
  removeOnComplete: true,
  removeOnFail: keptFailed,
  // where an answer cannot be kept, as on a full server
  attempts: 100,
  backoff: { type: 'fixed', delay: longestPause },
} satisfies JobsOptions

/** Told of what keeps the server from answering, in words; null: it answers again. */
export type ToldOfServer = (trouble: string | null) => void

type Message = { task: string }

async function loaded() {
  try {
    const [bull, redis] = await Promise.all([import('bullmq'), import('ioredis')])
    return { bull, redis }
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'ERR_MODULE_NOT_FOUND') throw error
    const { bullmq, ioredis } = program.peerDependencies
    throw misuse(
      `a queue needs two packages that are not installed: npm install bullmq@${bullmq} ioredis@${ioredis} (with -g where tapeshift was installed with -g)`,
    )
  }
}

const plainWords: readonly (readonly [RegExp, string])[] = [
  [/WRONGPASS|NOAUTH|invalid username-password/, 'the password is wrong or missing'],
  [/NOPERM/, 'this user may not do what a queue needs'],
  [/OOM/, 'the server is full (its maxmemory)'],
  [/MISCONF|READONLY/, 'the server takes nothing in: it cannot save (disk full?), or only reads'],
  [/LOADING/, 'the server is still reading its file'],
  [/ECONNREFUSED/, 'there is no server at this address'],
  [/ENOTFOUND|EAI_AGAIN/, 'there is no such host'],
  [/ETIMEDOUT|EHOSTUNREACH|ENETUNREACH/, 'the host does not answer'],
  [/ECONNRESET|EPIPE|Connection is closed/, 'the server closed the connection'],
  [
    /certificate|self[- ]signed|wrong version number|SSL|TLS/i,
    'the server cannot be trusted, or does not speak TLS (NODE_EXTRA_CA_CERTS names a certificate)',
  ],
]

/** What a server or the way to it says, in words of ours; of what is not known its own. */
export function wordsOf(error: unknown): string {
  const { message = String(error), code = '' } = error as NodeJS.ErrnoException
  const text = `${code} ${message}`
  return plainWords.find(([of]) => of.test(text))?.[1] ?? printable(message.slice(0, 200))
}

/** A `Fault` `asked` of what a server said no to, in words; any other error as it is. */
export const asRefusal = (error: unknown): unknown => (isReply(error) ? refusal(error) : error)

const refusal = (error: unknown): Fault => misuse(`the queue refused: ${wordsOf(error)}`)

/** It comes from the server, not from the way to it. */
const isReply = (error: unknown): boolean => (error as Error).name === 'ReplyError'

/** Errors that no waiting mends. */
const isHopeless = (error: Error): boolean =>
  /WRONGPASS|NOAUTH|NOPERM|certificate|self[- ]signed|wrong version number/.test(error.message)

/** A connection that never gives up, once it was there. Rejects with a `Fault` `asked` where waiting mends nothing. */
async function connected(
  { Redis: Connection }: Pick<typeof import('ioredis'), 'Redis'>,
  { host, port, database, user, password, isSecure }: Address,
  told: ToldOfServer,
): Promise<Redis> {
  const client = new Connection({
    ...{ host, port, db: database, lazyConnect: true, maxRetriesPerRequest: null, connectTimeout: 10_000 },
    ...(user === undefined ? {} : { username: user }),
    ...(password === undefined ? {} : { password }),
    ...(isSecure ? { tls: {} } : {}),
    retryStrategy: (times: number) => Math.min(50 * 2 ** times, longestPause),
  })
  client.on('ready', () => told(null))
  await new Promise<void>((resolve, reject) => {
    client.once('ready', resolve)
    client.on('error', (error: Error) => {
      told(wordsOf(error))
      if (!isHopeless(error)) return
      client.disconnect()
      reject(refusal(error))
    })
    // what goes wrong is told by its event
    client.connect().catch(() => {})
  })
  // those that the queue opens beside it wait for a server that is away, too: told to connect, they would fail with the first attempt
  client.options.lazyConnect = false
  return client
}

/** Joins the queue of the programs of one version; waits until its server answers. Throws `Fault` `asked`. */
export async function joined(address: Address, version: string, told: ToldOfServer): Promise<Transport> {
  const { bull, redis } = await loaded()
  const client = await connected(redis, address, told)
  return new Server(bull, client, address.space, `tasks-${version}`, told)
}

class Server implements Transport {
  private readonly open: (Queue | QueueEvents | Worker)[] = []
  private readonly queue: Queue<Message>

  constructor(
    private readonly bull: typeof import('bullmq'),
    private readonly client: Redis,
    private readonly space: string,
    private readonly name: string,
    private readonly told: ToldOfServer,
  ) {
    this.queue = this.opened(new bull.Queue<Message>(name, this.options))
  }

  async put(name: string, bytes: Uint8Array, seconds: number): Promise<void> {
    await this.client.set(this.key(name), asBuffer(bytes), 'EX', seconds)
  }

  get(name: string): Promise<Uint8Array | null> {
    return this.client.getBuffer(this.key(name))
  }

  fetch(name: string): Promise<Uint8Array | null> {
    return this.client.getdelBuffer(this.key(name))
  }

  async drop(names: readonly string[]): Promise<void> {
    if (names.length > 0) await this.client.unlink(names.map((each) => this.key(each)))
  }

  async add(id: string, task: Uint8Array): Promise<void> {
    await this.queue.add('task', { task: asBuffer(task).toString('base64') }, { ...ofTask, jobId: id })
  }

  async whereIs(id: string): Promise<Whereabouts> {
    const state = await this.queue.getJobState(id)
    if (state === 'failed') return 'failed'
    return state === 'unknown' || state === 'completed' ? 'nowhere' : 'waits'
  }

  async remove(id: string): Promise<void> {
    await this.queue.remove(id)
  }

  async onDone(listener: (id: string) => void): Promise<void> {
    const events = this.opened(new this.bull.QueueEvents(this.name, this.options))
    events.on('completed', ({ jobId }) => listener(jobId))
    events.on('failed', ({ jobId }) => listener(jobId))
    await events.waitUntilReady()
  }

  async take(atOnce: number, act: (id: string, task: Uint8Array) => Promise<void>): Promise<void> {
    const { UnrecoverableError } = this.bull
    const worker = this.opened(
      new this.bull.Worker<Message>(
        this.name,
        async ({ id, data }) => {
          // what nobody asks by our names is nobody's question
          if (id === undefined || !isId(id)) throw new UnrecoverableError('no task of ours')
          await act(id, Buffer.from(String(data?.task), 'base64'))
        },
        {
          ...this.options,
          concurrency: atOnce,
          ...{ lockDuration: lockTime, lockRenewTime: lockTime / 2, stalledInterval: lockTime / 2 },
          maxStalledCount: mostTakenOver,
        },
      ),
    )
    await worker.waitUntilReady()
  }

  async appear(id: string, presence: Presence): Promise<void> {
    await this.client.set(this.key(`there:${id}`), presenceToText(presence), 'EX', presenceFor)
    await this.client.sadd(this.key('there'), id)
  }

  async present(): Promise<Map<string, Presence>> {
    const ids = await this.client.smembers(this.key('there'))
    if (ids.length === 0) return new Map()
    const texts = await this.client.mget(ids.map((id) => this.key(`there:${id}`)))
    const gone = ids.filter((_, index) => texts[index] === null)
    if (gone.length > 0) await this.client.srem(this.key('there'), gone)
    const all = ids.map((id, index) => [id, presenceOf(texts[index] ?? '')] as const)
    return new Map(all.filter((each): each is [string, Presence] => each[1] !== null))
  }

  async close(): Promise<void> {
    for (const each of this.open.reverse()) await each.close()
    this.client.disconnect()
  }

  private get options() {
    return { connection: this.client, prefix: this.space }
  }

  private key(name: string): string {
    return `${this.space}:${name}`
  }

  /** Errors of a connection are told by the client, and mended by it; what the server says no to is asked of it again and again. */
  private opened<Opened extends Queue | QueueEvents | Worker>(each: Opened): Opened {
    this.open.push(each)
    ;(each as Queue).on('error', (error) => isReply(error) && this.told(wordsOf(error)))
    return each
  }
}

const asBuffer = (bytes: Uint8Array): Buffer => Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength)
