/** Calls the program in this process, with streams in memory and a folder of its own. */
import { mkdtempSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { Readable, Writable } from 'node:stream'
import type { Io } from '../../src/cli/io.js'
import { main } from '../../src/cli/program.js'

class Memory extends Writable {
  text = ''
  isTTY = false
  columns?: number = 100
  override _write(chunk: Buffer, _encoding: string, done: () => void): void {
    this.text += chunk.toString()
    done()
  }
}

export interface Called {
  code: number
  out: string
  err: string
  cwd: string
}

/** Runs `tapeshift ...argv`; `interruptAfter` presses Ctrl-C that many milliseconds after the program listens. */
export async function call(
  argv: string[],
  options: {
    stdin?: string
    cwd?: string
    env?: Record<string, string>
    isTerminal?: boolean
    /** Columns of the terminal; undefined: it does not tell. */
    width?: number | undefined
    interruptAfter?: number
  } = {},
): Promise<Called> {
  const cwd = options.cwd ?? mkdtempSync(path.join(tmpdir(), 'tapeshift-test-'))
  const stdout = new Memory()
  const stderr = new Memory()
  if (options.width !== undefined) stdout.columns = options.width
  else if ('width' in options) delete stdout.columns
  stdout.isTTY = options.isTerminal ?? false
  const io: Io = {
    stdin: Readable.from([Buffer.from(options.stdin ?? '')]),
    stdout,
    stderr,
    env: options.env ?? {},
    cwd,
    onInterrupt(listener) {
      const timer =
        options.interruptAfter === undefined ? undefined : setTimeout(listener, options.interruptAfter)
      return () => clearTimeout(timer)
    },
  }
  const code = await main(argv, io)
  return { code, out: stdout.text, err: stderr.text, cwd }
}

/** A line that simulates in no time. */
export const smallLine = `title: Small line
target: 9 cases/min
cases: {a: {length: 400 mm, width: 300 mm, height: 250 mm}}
arrivals: {p: {time-between: {exponential: {mean: 6 s}}}}
line:
  infeed: {type: conveyor, length: 6 m}
  sealer: {type: sealer, jams: {chance: 1 %, clear: 60 s}}
  end: {type: station, time: 3 s}
shift: {length: 1 h}
study: {shifts: 12}
`
