/** The built program as a process: any number of workers gives the same bytes; a closed pipe is no error. */

import { execFile, spawn } from 'node:child_process'
import { existsSync, mkdtempSync, readFileSync, statSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { fileURLToPath } from 'node:url'
import { promisify } from 'node:util'
import { describe, expect, it } from 'vitest'
import { smallLine } from './in-process.js'

const program = fileURLToPath(new URL('../../.build/cli/main.js', import.meta.url))
const execute = promisify(execFile)

function folder(): string {
  const cwd = mkdtempSync(path.join(tmpdir(), 'tapeshift-test-'))
  writeFileSync(path.join(cwd, 'line.yaml'), smallLine)
  return cwd
}

describe('the built program', () => {
  it('gives byte-identical results for 1, 2 and 4 workers', async () => {
    const cwd = folder()
    const written: string[] = []
    for (const workers of ['1', '2', '4']) {
      const { stdout } = await execute(
        'node',
        [program, 'run', 'line.yaml', '--shifts', '37', '--json', '--workers', workers],
        { cwd, maxBuffer: 1e8 },
      )
      const file = (name: string) => readFileSync(path.join(cwd, 'out/line-run', name), 'utf8')
      written.push(JSON.stringify([stdout, file('result.json'), file('shifts.csv'), file('report.html')]))
    }
    expect(written[0]!.length).toBeGreaterThan(10_000)
    expect(written[1]).toBe(written[0])
    expect(written[2]).toBe(written[0])
  })

  it('ends quietly when its reader has had enough', async () => {
    const child = spawn('sh', ['-c', `node ${program} run line.yaml --json --no-files | head -c 100`], {
      cwd: folder(),
    })
    let err = ''
    child.stderr.on('data', (data: Buffer) => {
      err += data.toString()
    })
    const code = await new Promise((resolve) => child.on('close', resolve))
    expect([code, err]).toEqual([0, ''])
  })

  it('says so when its output cannot be written: 5', async () => {
    const child = spawn('sh', ['-c', `node ${program} run line.yaml --shifts 2 --no-files > /dev/full`], {
      cwd: folder(),
    })
    let err = ''
    child.stderr.on('data', (data: Buffer) => {
      err += data.toString()
    })
    const code = await new Promise((resolve) => child.on('close', resolve))
    expect([code, err]).toEqual([5, 'error: cannot write standard output: the disk is full\n'])
  })

  it('stops cleanly at an interrupt', async () => {
    const cwd = folder()
    const child = spawn('node', [program, 'run', 'line.yaml', '--shifts', '100000'], { cwd })
    let err = ''
    child.stderr.on('data', (data: Buffer) => {
      err += data.toString()
    })
    const ended = new Promise((resolve) => child.on('close', resolve))
    // once shifts are kept, however long that takes on a busy machine
    const journal = path.join(cwd, 'out/line-run/journal.ndjson')
    await expect.poll(() => existsSync(journal) && statSync(journal).size > 0, { timeout: 60_000 }).toBe(true)
    child.kill('SIGINT')
    expect(await ended).toBe(130)
    expect(err).toMatch(
      /shifts; they are saved in out\/line-run\/journal\.ndjson: to continue, repeat the command with --resume/,
    )
  })
})
