/** Messages that are altered on their way, lost, or of others: no result changes and no worker stops. */
import { describe, expect, it } from 'vitest'
import { QueueExecutor } from '../../src/queue/executor.js'
import {
  type Answer,
  answerOf,
  answerToBytes,
  idOf,
  type TaskSent,
  taskOf,
  taskToBytes,
} from '../../src/queue/messages.js'
import { seal } from '../../src/queue/seal.js'
import { toBytes } from '../../src/queue/wire.js'
import { QueueWorker } from '../../src/queue/worker.js'
import { isFault } from '../../src/scenario/fault.js'
import { loadScenario } from '../../src/scenario/load.js'
import { inProcess } from '../../src/shifts/in-process.js'
import { replicate } from '../../src/shifts/replicate.js'
import { version } from '../../src/version.js'
import { smallLine } from '../cli/in-process.js'
import { expectTried } from '../tried.js'
import { Mutants } from './mutants.js'
import { type OnTheWay, Post } from './post.js'

const mutantsEachWay = 10_000

const { scenario } = loadScenario(smallLine)
const order = { seed: 'altered', scenario, shifts: 40, isLean: true }
const quiet = () => {}

/** A study over a post, with one worker; what was said. */
async function study(post: Post, more: Partial<typeof order> = {}) {
  const said: string[] = []
  const say = (text: string) => void said.push(text)
  const worker = new QueueWorker(post.end(), inProcess(), { version, name: 'anna', say })
  const end = await worker.begin()
  const executor = new QueueExecutor({ version, shown: 'here', patience: 60_000, say, every: 50 })
  executor.begin(async () => post.end())
  try {
    await executor.ready()
    return { ...(await replicate(executor, { ...order, ...more })), said }
  } finally {
    await executor.close()
    await end()
  }
}

const task: TaskSent = {
  ...{
    what: 'shifts',
    version,
    seed: 'a',
    design: 'd'.repeat(64),
    from: 3,
    to: 4,
    countFrom: 0,
    isLean: true,
  },
} as TaskSent
const id = idOf(task)
const row = new Float64Array([1, Number.NaN, -0])
const shift = { values: row, held: row, outputs: row, controls: row }
const answer: Answer = { shifts: [shift, { ...shift, stops: row }] }

describe('altered messages', () => {
  it('are refused by a worker, who goes on', async () => {
    const mutants = new Mutants('tasks')
    const sealed = taskToBytes(task)
    const kept: Uint8Array[] = []
    const end = { ...new Post().end(), put: async (_: string, bytes: Uint8Array) => void kept.push(bytes) }
    const worker = new QueueWorker(end, inProcess(), { version, name: 'anna', say: quiet })
    const other = taskToBytes({ ...task, from: 1, to: 1 })
    for (let tried = 0; tried < mutantsEachWay; tried++) {
      const mutant = mutants.of(sealed, other)
      await worker.act(id, mutant)
      const said = answerOf(id, task, kept.pop()!)
      // of one that came out as it was before, the design is not there
      const isSame = Buffer.compare(mutant, sealed) === 0
      expect(said).toEqual(isSame ? { missing: true } : { refused: 'a task is not as it was sent' })
    }
    expectTried('mutants of tasks', mutantsEachWay)
  })

  it('are refused by who asked', () => {
    const mutants = new Mutants('answers')
    const sealed = answerToBytes(id, answer)
    const other = answerToBytes(`task-${'0'.repeat(64)}`, answer)
    for (let tried = 0; tried < mutantsEachWay; tried++) {
      const mutant = mutants.of(sealed, other)
      if (Buffer.compare(mutant, sealed) === 0) expect(answerOf(id, task, mutant)).toEqual(answer)
      else expect(() => answerOf(id, task, mutant)).toThrow()
    }
    expectTried('mutants of answers', mutantsEachWay)
  })

  it('change no result: each message of a study is altered once', async () => {
    const mutants = new Mutants('study')
    const seen = new Map<string, Uint8Array>()
    const once: OnTheWay = (what, name, bytes) => {
      const key = `${what} ${name}`
      if (seen.has(key)) return bytes
      const others = [...seen.values()]
      seen.set(key, bytes)
      return mutants.of(bytes, others[mutants.below(Math.max(1, others.length))] ?? new Uint8Array(0))
    }
    const { shifts, isComplete } = await study(new Post(once), { shifts: 6 })
    const alone = await replicate(inProcess(), { ...order, shifts: 6 })
    expect([isComplete, shifts]).toEqual([true, alone.shifts])
    expect(seen.size).toBeGreaterThan(6)
  }, 60_000)
})

describe('a message is refused', () => {
  const refused = (what: object) => () => taskOf(id, seal('task', id, toBytes({ ...task, ...what })))
  it.each([
    ['of no version', { version: '' }],
    ['with a key that it has not', { run: 'rm' }],
    ['of shifts that go backwards', { from: 5, to: 4 }],
    ['of too many shifts', { from: 1, to: 1_000_000 }],
    ['of half a shift', { from: 1.5 }],
    ['of a design that is no hash', { design: '../../etc/passwd' }],
    ['of another kind', { what: 'stretch' }],
  ])('%s', (_, what) => {
    expect(refused(what)).toThrow()
  })

  it('that answers more or fewer shifts than were asked for, or something else', () => {
    for (const wrong of [
      { shifts: [shift] },
      { series: [row, row] },
      { shifts: [{ ...shift, run: row }, shift] },
    ])
      expect(() => answerOf(id, task, answerToBytes(id, wrong as Answer))).toThrow()
  })

  it('that unpacks to more than a machine holds', () => {
    expect(() => seal('task', id, new Uint8Array(400_000_000))).toThrow('at most')
  })
})

describe('a study', () => {
  it('gives the same over a post that loses messages', async () => {
    const lost = new Set<string>()
    const { shifts } = await study(
      new Post((what, name, bytes) => {
        const isFirst = !lost.has(`${what} ${name}`)
        lost.add(`${what} ${name}`)
        return isFirst && lost.size % 3 === 0 ? null : bytes
      }),
      { shifts: 6 },
    )
    expect(shifts).toEqual((await replicate(inProcess(), { ...order, shifts: 6 })).shifts)
  }, 60_000)

  it('ends with a finding where a task ends whoever takes it, and asks twice', async () => {
    const post = new Post()
    let poisoned: string | null = null
    post.isPoisoned = (each) => {
      poisoned ??= each
      return each === poisoned
    }
    const error: unknown = await study(post).catch((thrown: unknown) => thrown)
    expect(isFault(error, 'queue')).toBe(true)
    expect((error as Error).message).toMatch(
      /^shifts 1 to \d+ were asked for 2 times over the queue and given up: each worker that took them ended$/,
    )
  }, 60_000)

  it('waits for workers as long as it was asked to, and says so', async () => {
    const said: string[] = []
    const executor = new QueueExecutor({
      version,
      shown: 'here',
      patience: 500,
      every: 50,
      say: (text) => void said.push(text),
    })
    executor.begin(async () => new Post().end())
    const error: unknown = await executor.ready().catch((thrown: unknown) => thrown)
    await executor.close()
    expect([isFault(error, 'queue'), (error as Error).message]).toEqual([true, 'there is no worker at here'])
    expect(said).toEqual(['there is no worker at here: waiting'])
  })

  it('takes no part of a worker of another version, and both say so', async () => {
    const post = new Post()
    const said: string[] = []
    const say = (text: string) => void said.push(text)
    const executor = new QueueExecutor({ version, shown: 'here', patience: 500, say, every: 50 })
    executor.begin(async () => post.end())
    await new Promise((resolve) => setTimeout(resolve, 50))
    const end = await new QueueWorker(post.end(), inProcess(), { version: '9.9.9', name: 'old', say }).begin()
    await executor.ready().catch(() => {})
    await executor.close()
    await end()
    expect(said.filter((text) => text.includes('no part'))).toEqual([
      expect.stringMatching(
        /^a study of tapeshift \S+ from \S+ waits here; this worker is 9\.9\.9 and takes no part in it$/,
      ),
      expect.stringMatching(/^the worker old is tapeshift 9\.9\.9, this is \S+: it takes no part$/),
    ])
  })
})
