/** A server of its own for a test, on a loopback port with a password and an append-only file, and workers as processes. */
import { type ChildProcess, spawn } from 'node:child_process'
import { existsSync, mkdtempSync } from 'node:fs'
import { connect, createServer } from 'node:net'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { setTimeout } from 'node:timers/promises'
import { fileURLToPath } from 'node:url'
import { expect } from 'vitest'

const executable = '/usr/bin/redis-server'
const program = fileURLToPath(new URL('../../.build/cli/main.js', import.meta.url))

export const isThere = existsSync(executable)

/** Without a server nothing of this is tested, which CI must never do. */
export function sayNotRun(): void {
  console.warn(`NOT RUN: there is no ${executable}, so no queue was tried (apt-get install redis-server)`)
  expect(process.env.CI).not.toBe('true')
}

const password = 'a word that stands nowhere'

const isFree = (port: number): Promise<boolean> =>
  new Promise((resolve) => {
    const server = createServer()
      .once('error', () => resolve(false))
      .listen(port, '127.0.0.1', () => server.close(() => resolve(true)))
  })

/** Below those that systems give to whoever asks for any: else another process may have it while the server is down. */
async function freePort(): Promise<number> {
  for (;;) {
    const port = 20_000 + Math.floor(Math.random() * 10_000)
    if (await isFree(port)) return port
  }
}

const answers = (port: number): Promise<boolean> =>
  new Promise((resolve) => {
    const socket = connect(port, '127.0.0.1')
      .once('connect', () => resolve(!socket.destroy().connecting))
      .once('error', () => resolve(false))
  })

const hasEnded = ({ exitCode, signalCode }: ChildProcess): boolean => exitCode !== null || signalCode !== null

const ended = (child: ChildProcess): Promise<void> =>
  hasEnded(child) ? Promise.resolve() : new Promise((resolve) => child.once('exit', () => resolve()))

export class RedisServer {
  private child: ChildProcess | null = null
  readonly folder = mkdtempSync(path.join(tmpdir(), 'tapeshift-redis-'))

  private constructor(
    readonly port: number,
    private readonly more: readonly string[],
  ) {}

  /** `PORT` among the arguments stands for its port. */
  static async start(...more: string[]): Promise<RedisServer> {
    const server = new RedisServer(await freePort(), more)
    await server.restart()
    return server
  }

  private get isSecure(): boolean {
    return this.more.includes('--tls-port')
  }

  get url(): string {
    return `${this.isSecure ? 'rediss' : 'redis'}://127.0.0.1:${this.port}`
  }

  get env() {
    return { TAPESHIFT_QUEUE_PASSWORD: password }
  }

  /** What programs are given: the environment, and the password in it. */
  get processEnv() {
    return { ...process.env, ...this.env }
  }

  async restart(): Promise<void> {
    const where = this.isSecure ? ['--port', '0'] : ['--port', String(this.port)]
    const argv = [...where, '--bind', '127.0.0.1', '--requirepass', password, '--dir', this.folder]
    const more = this.more.map((each) => (each === 'PORT' ? String(this.port) : each))
    this.child = spawn(executable, [...argv, '--appendonly', 'yes', '--save', '', ...more], {
      stdio: 'ignore',
    })
    while (!(await answers(this.port))) {
      if (hasEnded(this.child)) throw new Error(`the server on port ${this.port} ended as it began`)
      await setTimeout(20)
    }
  }

  async kill(): Promise<void> {
    this.child?.kill('SIGKILL')
    if (this.child) await ended(this.child)
  }

  stopAnswering(): void {
    this.child?.kill('SIGSTOP')
  }

  answerAgain(): void {
    this.child?.kill('SIGCONT')
  }
}

export class WorkerProcess {
  said = ''
  private constructor(readonly child: ChildProcess) {
    child.stderr!.on('data', (data: Buffer) => {
      this.said += data.toString()
    })
  }

  /** Starts one of one thread, and waits until it is at work. */
  static async start(
    server: RedisServer,
    name: string,
    more: readonly string[] = [],
    env: NodeJS.ProcessEnv = server.processEnv,
  ): Promise<WorkerProcess> {
    const argv = ['worker', '--queue', server.url, '--workers', '1', '--name', name, ...more]
    const worker = new WorkerProcess(
      spawn('node', [program, ...argv], { env, stdio: ['ignore', 'ignore', 'pipe'] }),
    )
    return worker
  }

  /** Throws with what it said where it ended before, or has not begun after a minute. */
  async isAtWork(): Promise<void> {
    const began = performance.now()
    while (!this.said.includes('at work')) {
      if (hasEnded(this.child) || performance.now() - began > 60_000)
        throw new Error(
          `a worker is not at work (${this.child.exitCode}, ${this.child.signalCode}): ${this.said}`,
        )
      await setTimeout(20)
    }
  }

  async kill(signal: NodeJS.Signals = 'SIGKILL'): Promise<void> {
    this.child.kill(signal)
    await ended(this.child)
  }
}

/** What a program printed, and how it ended. */
export interface Printed {
  code: number | null
  out: string
  err: string
}

/** Runs the program as a process. */
export function printed(argv: readonly string[], cwd: string, env: NodeJS.ProcessEnv): Promise<Printed> {
  const child = spawn('node', [program, ...argv], { cwd, env, stdio: ['ignore', 'pipe', 'pipe'] })
  const texts = { out: '', err: '' }
  child.stdout!.on('data', (data: Buffer) => {
    texts.out += data.toString()
  })
  child.stderr!.on('data', (data: Buffer) => {
    texts.err += data.toString()
  })
  return new Promise((resolve) => child.once('close', (code) => resolve({ code, ...texts })))
}
