/** Workers and their server that are killed at any moment: studies of the demos end with the bytes of one machine. */
import { mkdtempSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { setTimeout } from 'node:timers/promises'
import { fileURLToPath } from 'node:url'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { Stream } from '../../src/engine/stream.js'
import { isThere, printed, RedisServer, sayNotRun, WorkerProcess } from '../queue/redis.js'
import { expectTried } from '../tried.js'

const scenarios = fileURLToPath(new URL('../../scenarios', import.meta.url))
const at = (name: string) => path.join(scenarios, name)

/** Each takes some seconds on one machine: longer than workers live. */
const questions: readonly (readonly string[])[] = [
  ['run', at('soap-works.yaml'), '--shifts', '500'],
  ['compare', at('tape-choice.yaml'), '--shifts', '60'],
  [
    'size',
    at('soap-works.yaml'),
    '--holds',
    '9 cases/min in 90 % of shifts within 3 %',
    '--choose',
    'line.infeed.length=4..12/4 m',
    '--every-design',
    '--shifts',
    '100',
  ],
  ['sweep', at('soap-works.yaml'), '--vary', 'line.infeed.length=4..12/2 m', '--shifts', '100'],
  [
    'validate',
    at('lindmoor-record/line-4-half-the-jams.yaml'),
    at('lindmoor-record/record.yaml'),
    '--margin',
    '1 %',
    '--hold-out',
    '10 %',
    '--runs',
    '39',
  ],
]
const killsEach = 10

const cwd = mkdtempSync(path.join(tmpdir(), 'tapeshift-queue-kills-'))
const names = ['anna', 'bert', 'carl']
let server: RedisServer
let workers: WorkerProcess[] = []
const moments = new Stream('queue', 'kills')
let kills = 0

/** Kills a worker, or now and then the server, and starts it again. */
async function strike(): Promise<void> {
  const which = Math.floor(moments.next() * (names.length + 1))
  if (which < names.length) {
    // it has taken tasks, on a slow machine too
    await workers[which]!.isAtWork()
    await setTimeout(1000 * moments.next())
    await workers[which]!.kill()
    workers[which] = await WorkerProcess.start(server, names[which]!)
  } else {
    await server.kill()
    await setTimeout(300)
    await server.restart()
  }
  kills++
}

if (!isThere) it('no queue is tried: what CI must never do', sayNotRun)

describe.runIf(isThere)('a study whose workers and server are killed', () => {
  beforeAll(async () => {
    moments.begin('queue', 1)
    server = await RedisServer.start()
    workers = await Promise.all(names.map((name) => WorkerProcess.start(server, name)))
  })
  afterAll(async () => {
    for (const worker of workers) await worker.kill()
    await server?.kill()
    expectTried('kills of workers and their server', kills)
  })

  it.each(questions)(
    '%s gives the bytes of one machine',
    async (...argv) => {
      const here = await printed([...argv, '--json', '--no-files', '--quiet'], cwd, process.env)
      expect(here.out.length, here.err).toBeGreaterThan(1000)
      const strikes = async (): Promise<void> => {
        for (let each = 0; each < killsEach; each++) {
          // while it begins, goes on, and ends
          await setTimeout(1000 * moments.next())
          await strike()
        }
      }
      const struck = strikes()
      const there = await printed(
        [...argv, '--json', '--no-files', '--queue', server.url, '--patience', '2 min'],
        cwd,
        server.processEnv,
      )
      await struck
      expect([there.code, there.out], there.err).toEqual([here.code, here.out])
    },
    300_000,
  )
})
