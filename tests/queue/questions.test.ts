/** Questions that are answered by workers over a real server: the bytes of one machine. */
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { setTimeout } from 'node:timers/promises'
import { Redis } from 'ioredis'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { text as compareLine } from '../cli/compare-line.js'
import { call } from '../cli/in-process.js'
import { choose, holds, text as sizeLine } from '../cli/size-line.js'
import { isThere, RedisServer, sayNotRun, WorkerProcess } from './redis.js'

const questions: readonly (readonly string[])[] = [
  ['run', 'compare.yaml', '--shifts', '30', '--full'],
  ['compare', 'compare.yaml', '--shifts', '20', '--full'],
  ['size', 'size.yaml', ...choose, ...holds, '--full'],
  ['sweep', 'compare.yaml', '--vary', 'line.infeed.length=4..8/2 m', '--shifts', '10', '--full'],
]

const cwd = mkdtempSync(path.join(tmpdir(), 'tapeshift-queue-'))
let server: RedisServer
const workers: WorkerProcess[] = []

if (!isThere) it('no queue is tried: what CI must never do', sayNotRun)

describe.runIf(isThere)('over a server', () => {
  beforeAll(async () => {
    for (const [name, text] of Object.entries({ 'compare.yaml': compareLine, 'size.yaml': sizeLine }))
      writeFileSync(path.join(cwd, name), text)
    server = await RedisServer.start()
    for (const name of ['anna', 'bert']) workers.push(await WorkerProcess.start(server, name))
    for (const worker of workers) await worker.isAtWork()
  })
  afterAll(async () => {
    for (const worker of workers) await worker.kill('SIGKILL')
    await server?.kill()
  })

  const over = (...argv: string[]) => call([...argv, '--queue', server.url], { cwd, env: server.env })

  it.each(questions)('%s answers with the bytes of one machine', async (...argv) => {
    const [here, there] = [
      await call([...argv, '--json', '--no-files', '--workers', '1'], { cwd }),
      await over(...argv, '--json', '--no-files'),
    ]
    expect(there.err).toBe(here.err)
    expect([there.code, there.out]).toEqual([here.code, here.out])
    expect(here.out.length).toBeGreaterThan(1000)
  })

  it('a study that was cut off here goes on there', async () => {
    const argv = ['run', 'compare.yaml', '--shifts', '400', '--json', '--out', 'cut']
    const cut = await call([...argv, '--workers', '1'], { cwd, interruptAfter: 100 })
    expect(cut.code).toBe(130)
    const kept = readFileSync(path.join(cwd, 'cut', 'journal.ndjson'), 'utf8').split('\n').length
    const [there, whole] = [
      await over(...argv, '--resume'),
      await call([...argv.slice(0, -1), 'whole', '--workers', '1'], { cwd }),
    ]
    expect(kept).toBeGreaterThan(2)
    expect([there.code, there.out]).toEqual([0, whole.out])
  })

  it('says nothing of the password, whatever goes wrong', async () => {
    const wrong = ['run', 'compare.yaml', '--no-files', '--queue']
    const secret = 'open-sesame'
    const refused = await call([...wrong, `redis://:${secret}@127.0.0.1:${server.port}`], { cwd })
    expect([refused.code, refused.out]).toEqual([2, ''])
    expect(refused.err).toBe('error: the queue refused: the password is wrong or missing\n')
    for (const url of [
      `http://:${secret}@a`,
      `redis://:${secret}@`,
      `:${secret}`,
      `redis://:${secret}@a:1/x`,
    ]) {
      const { code, err } = await call([...wrong, url], { cwd })
      expect([code, err]).toEqual([
        2,
        expect.stringMatching(/^error: --queue: .*: write redis:\/\/HOST:PORT/),
      ])
      expect(err).not.toContain(secret)
    }
  })

  it('waits for a server as long as it was asked to, and keeps what was simulated', async () => {
    const nobody = await RedisServer.start()
    await nobody.kill()
    const argv = ['run', 'compare.yaml', '--no-files', '--patience', '1 s', '--queue', nobody.url]
    const { code, err } = await call(argv, { cwd, env: nobody.env })
    const shown = `the queue at ${nobody.url}: there is no server at this address`
    expect([code, err]).toEqual([6, `note: ${shown}: waiting\nerror: ${shown}\n`])
  })

  it('a worker that stops answering: another takes its tasks over', async () => {
    const argv = ['run', 'compare.yaml', '--shifts', '300', '--json', '--no-files']
    const study = over(...argv)
    await setTimeout(200)
    workers[0]!.child.kill('SIGSTOP')
    const { code, out } = await study
    workers[0]!.child.kill('SIGCONT')
    expect([code, out]).toEqual([0, (await call([...argv, '--workers', '1'], { cwd })).out])
  })

  it('a server that stops answering is waited for', async () => {
    server.stopAnswering()
    const argv = ['run', 'compare.yaml', '--shifts', '12', '--json', '--no-files']
    const study = over(...argv)
    await setTimeout(1000)
    server.answerAgain()
    const { code, out } = await study
    expect([code, out]).toEqual([0, (await call([...argv, '--workers', '1'], { cwd })).out])
  })

  it('a full server is waited for as long as it was asked to', async () => {
    const client = new Redis({ port: server.port, password: server.env.TAPESHIFT_QUEUE_PASSWORD })
    const argv = ['run', 'compare.yaml', '--shifts', '12', '--json', '--no-files']
    await client.config('SET', 'maxmemory', '1')
    const full = await over(...argv, '--patience', '1 s')
    const study = over(...argv)
    await setTimeout(1000)
    await client.config('SET', 'maxmemory', '0')
    client.disconnect()
    const shown = `the queue at ${server.url}: the server is full (its maxmemory)`
    expect([full.code, full.err]).toEqual([6, expect.stringContaining(`error: ${shown}\n`)])
    const { code, out } = await study
    expect([code, out]).toEqual([0, (await call([...argv, '--workers', '1'], { cwd })).out])
  })

  it('a worker ends when it is asked to', async () => {
    const [last] = workers.splice(1)
    const gone = new Promise((resolve) => last!.child.once('exit', (code) => resolve(code)))
    last!.child.kill('SIGINT')
    expect(await gone).toBe(0)
  })
})
