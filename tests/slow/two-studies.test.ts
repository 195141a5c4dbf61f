/** Several processes that begin the same study in one folder at once: one works there, the others are refused, and the results are whole. */
import { spawn } from 'node:child_process'
import { mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { fileURLToPath } from 'node:url'
import { describe, expect, it } from 'vitest'
import { smallLine } from '../cli/in-process.js'
import { expectTried } from '../tried.js'

const program = fileURLToPath(new URL('../../.build/cli/main.js', import.meta.url))
const cwd = mkdtempSync(path.join(tmpdir(), 'tapeshift-two-'))
writeFileSync(path.join(cwd, 'line.yaml'), smallLine)
const rounds = 4
const together = 4

function study(out: string): Promise<{ code: number | null; err: string }> {
  const argv = ['run', 'line.yaml', '--shifts', '20', '--workers', '1', '--quiet', '--out', out]
  const child = spawn('node', [program, ...argv], { cwd, stdio: ['ignore', 'ignore', 'pipe'] })
  let err = ''
  child.stderr.on('data', (data: Buffer) => {
    err += data.toString()
  })
  return new Promise((resolve) => child.on('close', (code) => resolve({ code, err })))
}

const files = (out: string): Map<string, string> =>
  new Map(
    readdirSync(path.join(cwd, out), { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map((entry) => path.join(entry.parentPath, entry.name))
      .sort()
      .map((file) => [path.relative(path.join(cwd, out), file), readFileSync(file).toString('latin1')]),
  )

describe('studies begun at once in one folder', () => {
  let tried = 0

  it('leave one whole result', async () => {
    expect(await study('alone')).toEqual({ code: 0, err: '' })
    const undisturbed = files('alone')
    let refused = 0
    for (let round = 0; round < rounds; round++) {
      const out = `round-${round}`
      const ends = await Promise.all(Array.from({ length: together }, () => study(out)))
      tried += ends.length
      for (const { code, err } of ends) {
        if (code === 0) expect(err).toBe('')
        else {
          refused++
          expect(code, err).toBe(2)
          // one that began as the first wrote its results may find its journal
          expect(err).toMatch(
            /^error: (?:another study (?:is running|has just started) in this folder|.*of this same study)/,
          )
        }
      }
      expect(ends.some(({ code }) => code === 0)).toBe(true)
      expect(files(out)).toEqual(undisturbed)
    }
    // else nothing was tried
    expect(refused).toBeGreaterThanOrEqual(rounds)
  })

  it('each is counted', () => expectTried('processes at once in one folder', tried))
})
