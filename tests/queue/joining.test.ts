/** A server that goes away as somebody joins its queue is waited for, as at any other time. */
import { setTimeout } from 'node:timers/promises'
import { describe, expect, it } from 'vitest'
import { readAddress } from '../../src/queue/address.js'
import { joined } from '../../src/queue/server.js'
import type { Transport } from '../../src/queue/transport.js'
import { isThere, RedisServer, sayNotRun } from './redis.js'

if (!isThere) it('no queue is tried: what CI must never do', sayNotRun)

describe.runIf(isThere)('a server that goes once it has been joined, and comes back', () => {
  it.each([
    ['takes tasks', (transport: Transport) => transport.take(1, async () => {})],
    ['waits for answers', (transport: Transport) => transport.onDone(() => {})],
  ])(
    'is waited for by one who %s',
    async (_, begin) => {
      const server = await RedisServer.start()
      const transport = await joined(
        readAddress(server.url, server.env.TAPESHIFT_QUEUE_PASSWORD),
        'joining',
        () => {},
      )
      await server.kill()
      const begun = begin(transport)
      // the first attempt has failed
      await setTimeout(300)
      await server.restart()
      await expect(begun).resolves.toBeUndefined()
      await transport.close()
      await server.kill()
    },
    60_000,
  )
})
