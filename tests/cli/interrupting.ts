/** Presses Ctrl-C on a study in this process as soon as its journal keeps so much. */
import { existsSync, readFileSync } from 'node:fs'
import path from 'node:path'
import { Readable, Writable } from 'node:stream'
import { expect } from 'vitest'
import { main } from '../../src/cli/program.js'

/** The journal of a study in the folder `out` of `cwd`. */
export const journalOf = (cwd: string, out: string): string => path.join(cwd, 'out', out, 'journal.ndjson')

/** Lines that a journal keeps, its header left out; none without one. */
export const keptIn = (journal: string): string[] =>
  existsSync(journal) ? readFileSync(journal, 'utf8').trimEnd().split('\n').slice(1) : []

/** Runs `argv` until the journal keeps `least` lines; asserts that it was interrupted, and returns what it told. */
export async function interrupted(
  cwd: string,
  journal: string,
  least: number,
  argv: readonly string[],
): Promise<string> {
  const texts = { out: '', err: '' }
  const into = (name: keyof typeof texts) =>
    new Writable({
      write(chunk: Buffer, _encoding, done) {
        texts[name] += chunk.toString()
        done()
      },
    })
  const code = await main(argv, {
    stdin: Readable.from([]),
    stdout: into('out'),
    stderr: into('err'),
    env: {},
    cwd,
    onInterrupt(listener) {
      const timer = setInterval(() => {
        if (keptIn(journal).length < least) return
        clearInterval(timer)
        listener()
      }, 1)
      return () => clearInterval(timer)
    },
  })
  expect([code, texts.out]).toEqual([130, ''])
  return texts.err
}
