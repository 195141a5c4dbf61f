/** What the program is given of the outside: streams, environment, folder and interrupts, so that tests can stand in. */

import type { Readable, Writable } from 'node:stream'
import type { Tone } from '../report/screen.js'
import type { ScreenStyle } from '../report/screen-text.js'
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
  queue: 6,
  interrupted: 130,
} as const

/** What each means, in words. */
export const exitWords: Readonly<Record<keyof typeof exits, string>> = {
  done: 'done',
  bug: 'a bug of tapeshift',
  usage: 'wrong usage',
  scenario:
    'the scenario or the record is invalid, or the line cannot work, locks up or never settles (--anyway: the code of the figures)',
  requirement:
    'a requirement is not met, no design keeps what is asked, the one picked is shown not to, or the model is not shown to lie within the margin',
  file: 'a file cannot be read or written',
  queue: 'workers on other machines, or their server, do not answer',
  interrupted: 'interrupted',
}

/** Whether `stream` shows bold text: a terminal that is not dumb, unless the environment says otherwise. */
function showsStyle(stream: { isTTY?: boolean }, env: Io['env']): boolean {
  if (env.NO_COLOR) return false
  if (env.FORCE_COLOR) return env.FORCE_COLOR !== '0'
  return stream.isTTY === true && env.TERM !== 'dumb'
}

/** Narrower than this nobody reads tables: a terminal that says so does not tell its width. */
const leastWidth = 40
/** Width of a terminal that does not tell it. */
const usualWidth = 80
/** Longer lines are hard to read. */
const mostWidth = 120

/** Letters a line: what the environment asks for (COLUMNS, as POSIX has it), else what the terminal tells, else 80. */
function widthOf({ stdout, env }: Pick<Io, 'stdout' | 'env'>): number {
  const told = [Number(env.COLUMNS), stdout.columns].find((each) => each !== undefined && each >= leastWidth)
  return Math.min(Math.floor(told ?? usualWidth), mostWidth)
}

const bold = (text: string) => `\u001b[1m${text}\u001b[22m`

/** How a report is set on standard output: bold where it shows. */
export const textStyle = (io: Io): TextStyle => ({
  bold: showsStyle(io.stdout, io.env) ? bold : (text) => text,
  width: widthOf(io),
})

/** Foreground colours of ECMA-48: red, yellow, green. */
const inks: Record<Exclude<Tone, 'plain'>, number> = { error: 31, warning: 33, good: 32 }

/** How the first screen is set: in colour where it shows. */
export function screenStyle(io: Io): ScreenStyle {
  const { stdout, env } = io
  const isInk = showsStyle(stdout, env)
  return {
    ...textStyle(io),
    toned: (tone, text) =>
      !isInk || text === '' ? text : bold(tone === 'plain' ? text : `\u001b[${inks[tone]}m${text}\u001b[39m`),
  }
}
