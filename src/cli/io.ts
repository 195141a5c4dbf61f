/** What the program is given of the outside: streams, environment, folder and interrupts, so that tests can stand in. */

import type { Readable, Writable } from 'node:stream'
import type { TextStyle } from '../report/text.js'

export interface Io {
  stdin: Readable
  stdout: Writable & { isTTY?: boolean; columns?: number }
  stderr: Writable & { isTTY?: boolean; columns?: number }
  env: Record<string, string | undefined>
  cwd: string
  /** Calls `listener` at an interrupt; returns how to stop listening. */
  onInterrupt: (listener: () => void) => () => void
}

/** Exit codes, each with one meaning. */
export const exits = {
  done: 0,
  bug: 1,
  usage: 2,
  scenario: 3,
  requirement: 4,
  file: 5,
  interrupted: 130,
} as const

/** Whether `stream` shows bold text: a terminal that is not dumb, unless the environment says otherwise. */
function showsStyle(stream: { isTTY?: boolean }, env: Io['env']): boolean {
  if (env.NO_COLOR) return false
  if (env.FORCE_COLOR) return env.FORCE_COLOR !== '0'
  return stream.isTTY === true && env.TERM !== 'dumb'
}

/** How a report is set on standard output: bold where it shows, lines no longer than 120 letters. */
export const textStyle = ({ stdout, env }: Io): TextStyle => ({
  bold: showsStyle(stdout, env) ? (text) => `\u001b[1m${text}\u001b[22m` : (text) => text,
  width: Math.min(stdout.columns ?? 100, 120),
})
