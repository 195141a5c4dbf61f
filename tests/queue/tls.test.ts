/** A server with TLS: whom its certificate convinces, and whom it does not. */
import { execFileSync } from 'node:child_process'
import { mkdtempSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { smallLine } from '../cli/in-process.js'
import { isThere, printed, RedisServer, sayNotRun, WorkerProcess } from './redis.js'

const cwd = mkdtempSync(path.join(tmpdir(), 'tapeshift-queue-tls-'))
const at = (name: string) => path.join(cwd, name)

if (!isThere) it('no queue is tried: what CI must never do', sayNotRun)

describe.runIf(isThere)('a server with TLS', () => {
  let server: RedisServer
  let worker: WorkerProcess
  beforeAll(async () => {
    const certificate = [
      '-subj',
      '/CN=localhost',
      '-addext',
      'subjectAltName=DNS:localhost,IP:127.0.0.1',
      '-days',
      '2',
    ]
    execFileSync(
      'openssl',
      [
        'req',
        '-x509',
        '-newkey',
        'rsa:2048',
        '-nodes',
        ...certificate,
        '-keyout',
        at('key.pem'),
        '-out',
        at('cert.pem'),
      ],
      { stdio: 'ignore' },
    )
    writeFileSync(at('line.yaml'), smallLine)
    server = await RedisServer.start(
      '--tls-port',
      'PORT',
      '--tls-cert-file',
      at('cert.pem'),
      '--tls-key-file',
      at('key.pem'),
      '--tls-ca-cert-file',
      at('cert.pem'),
      '--tls-auth-clients',
      'no',
    )
  })
  afterAll(async () => {
    await worker?.kill()
    await server?.kill()
  })

  it('simulates for those who trust it, and tells those who do not', async () => {
    const env = { ...server.processEnv, NODE_EXTRA_CA_CERTS: at('cert.pem') }
    worker = await WorkerProcess.start(server, 'anna', [], env)
    const argv = ['run', 'line.yaml', '--json', '--no-files', '--quiet']
    const there = await printed([...argv, '--queue', server.url], cwd, env)
    const here = await printed([...argv, '--workers', '1'], cwd, process.env)
    expect([there.code, there.out], there.err).toEqual([0, here.out])
    const refused = await printed([...argv, '--queue', server.url], cwd, server.processEnv)
    expect([refused.code, refused.err]).toEqual([2, expect.stringContaining('the server cannot be trusted')])
  })
})
