/** Files and folders of others in the place of those that a study writes: none is written over, and no set of results is half old and half new. */
import {
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { describe, expect, it } from 'vitest'
import { expectTried } from '../tried.js'
import { call, smallLine } from './in-process.js'

const argv = ['run', 'line.yaml', '--workers', '1', '--quiet', '--shifts', '2', '--out', 'out']

function place(): string {
  const cwd = mkdtempSync(path.join(tmpdir(), 'tapeshift-foreign-'))
  writeFileSync(path.join(cwd, 'line.yaml'), smallLine)
  mkdirSync(path.join(cwd, 'out'))
  return cwd
}

let tried = 0
const study = (cwd: string, ...more: string[]) => {
  tried++
  return call([...argv, ...more], { cwd })
}
const precious = 'a file of somebody else'

describe('a journal', () => {
  it.each(['', '\n'])('that is a link: what it leads to stays, with the line end %j', async (end) => {
    const cwd = place()
    const other = path.join(cwd, 'other')
    writeFileSync(other, precious + end)
    symlinkSync(other, path.join(cwd, 'out', 'journal.ndjson'))
    for (const more of [[], ['--resume']]) {
      const { code, err } = await study(cwd, ...more)
      expect(code).toBe(2)
      expect(err).toContain('journal.ndjson is a link, not a file: choose another --out, or delete it')
    }
    expect(readFileSync(other, 'utf8')).toBe(precious + end)
  })

  it('that is a link to nothing: nothing is made there', async () => {
    const cwd = place()
    symlinkSync(path.join(cwd, 'nothing'), path.join(cwd, 'out', 'journal.ndjson'))
    expect((await study(cwd)).code).toBe(2)
    expect(readdirSync(cwd)).not.toContain('nothing')
  })

  it('of one line without its end that is not ours: it stays', async () => {
    const cwd = place()
    const file = path.join(cwd, 'out', 'journal.ndjson')
    writeFileSync(file, precious)
    const { code, err } = await study(cwd)
    expect(code).toBe(2)
    expect(err).toContain('is not a journal of this program')
    expect(readFileSync(file, 'utf8')).toBe(precious)
  })

  it.each(['{"format":"tapeshift-journal/2","vers', '{"format":"tape\0\0\0'])(
    'whose first line was torn, or filled up with zeros, begins anew: %j',
    async (torn) => {
      const cwd = place()
      writeFileSync(path.join(cwd, 'out', 'journal.ndjson'), torn)
      expect((await call(argv, { cwd })).code).toBe(0)
    },
  )
})

describe('a folder in the place of a result', () => {
  it.each(['result.json', 'report.html'])('%s: the earlier files stay, all of them', async (name) => {
    const cwd = place()
    expect((await call([...argv, '--seed', 'earlier'], { cwd })).code).toBe(0)
    const earlier = () =>
      readdirSync(path.join(cwd, 'out'), { recursive: true, withFileTypes: true })
        .filter((entry) => entry.isFile() && entry.name !== name && entry.name !== 'journal.ndjson')
        .map((entry) => path.join(entry.parentPath, entry.name))
        .sort()
        .map((file) => [file, readFileSync(file, 'latin1')])
    const before = earlier()
    rmSync(path.join(cwd, 'out', name))
    mkdirSync(path.join(cwd, 'out', name))
    const { code, err } = await study(cwd)
    expect([code, err]).toEqual([5, `error: cannot write ${path.join(cwd, 'out', name)}: it is a folder\n`])
    expect(earlier()).toEqual(before)
  })
})

describe('each', () => {
  it('is counted', () => expectTried('files that are not ours', tried))
})
