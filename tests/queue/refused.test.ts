/** A worker with a user who may not do what a queue needs says so: it ends where it cannot begin, and waits where that may be mended. */
import { setTimeout } from 'node:timers/promises'
import { describe, expect, it } from 'vitest'
import { isThere, printed, RedisServer, sayNotRun, WorkerProcess } from './redis.js'

if (!isThere) it('no queue is tried: what CI must never do', sayNotRun)

const words = 'this user may not do what a queue needs'
const env = { ...process.env, TAPESHIFT_QUEUE_PASSWORD: 'word' }

/** A server with a user `hand` who may do what `rules` say. */
async function withUser(...rules: string[]): Promise<[server: RedisServer, url: string]> {
  const server = await RedisServer.start('--user', 'hand', 'on', '>word', '~*', '&*', ...rules)
  return [server, server.url.replace('//', '//hand@')]
}

describe.runIf(isThere)('a worker whose user', () => {
  it('may put nothing there ends, and says why', async () => {
    const [server, url] = await withUser('+ping', '+info', '+hello', '+client', '+select', '+get')
    try {
      const { code, err } = await printed(['worker', '--queue', url, '--workers', '1'], server.folder, env)
      expect(err).toBe(`error: the queue refused: ${words}\n`)
      expect(code).toBe(2)
    } finally {
      await server.kill()
    }
  }, 60_000)

  it('may take no tasks says so, and waits', async () => {
    const [server, url] = await withUser('+@all', '-evalsha', '-eval')
    const worker = await WorkerProcess.start(server, 'hand', ['--queue', url], env)
    try {
      for (let tries = 0; tries < 300 && !worker.said.includes(words); tries++) await setTimeout(100)
      expect(worker.said).toContain(`${server.url}: ${words}: waiting\n`)
      expect(worker.child.exitCode).toBeNull()
    } finally {
      await worker.kill()
      await server.kill()
    }
  }, 60_000)
})
