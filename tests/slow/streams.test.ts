/** Readers that have had enough, streams that are closed or on a full disk: a plain exit code, and never a stack of calls. */
import { spawnSync } from 'node:child_process'
import { mkdtempSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { fileURLToPath } from 'node:url'
import { describe, expect, it } from 'vitest'
import { smallLine } from '../cli/in-process.js'
import { expectTried } from '../tried.js'

const program = fileURLToPath(new URL('../../.build/cli/main.js', import.meta.url))
const cwd = mkdtempSync(path.join(tmpdir(), 'tapeshift-streams-'))
writeFileSync(path.join(cwd, 'line.yaml'), smallLine)

const commands = [
  'check line.yaml --full',
  'run line.yaml --shifts 2 --workers 1 --no-files',
  'run line.yaml --shifts 2 --workers 1 --no-files --json',
  'trace line.yaml --shift 1',
  '--help',
]
const full = 'error: cannot write standard output: the disk is full\n'

/** What a shell makes of the streams, the exit code of the program, and what it may say. */
const streams: [string, number, readonly string[]][] = [
  ['| head -c 1 > first', 0, ['']],
  ['| true', 0, ['']],
  ['> /dev/full', 5, [full]],
  // the system gives a program that is begun without a stream an empty one
  ['>&-', 0, ['']],
  ['2>&- > out', 0, ['']],
  ['2> /dev/full > out', 0, ['']],
]

describe('streams that take nothing', () => {
  let tried = 0

  it.each(commands)('of %s', (command) => {
    for (const [stream, code, said] of streams) {
      tried++
      const script = `set -o pipefail; node ${program} ${command} ${stream}`
      const { status, signal, stderr } = spawnSync('bash', ['-c', script], { cwd, encoding: 'utf8' })
      expect([status, signal], stream).toEqual([code, null])
      expect(said, stream).toContain(stderr)
    }
  })

  it('each is counted', () => expectTried('closed and full streams', tried))
})
