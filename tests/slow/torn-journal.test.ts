/** A journal whose last line was torn by a crash, at every byte of it: what is whole is kept, and the rest simulated again. */
import { mkdirSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { beforeAll, describe, expect, it } from 'vitest'
import { Journal, type JournalOwner } from '../../src/cli/journal.js'
import { call, smallLine } from '../cli/in-process.js'

const shifts = 4
const names = ['result.json', 'shifts.csv', 'report.html']

/** A folder of its own, with the scenario in it. */
function place(): string {
  const cwd = mkdtempSync(path.join(tmpdir(), 'tapeshift-torn-'))
  writeFileSync(path.join(cwd, 'line.yaml'), smallLine)
  mkdirSync(path.join(cwd, 'out'))
  return cwd
}

const argv = ['run', 'line.yaml', '--workers', '1', '--quiet', '--out', 'out', '--shifts']

/** Header and lines of the first shifts, each with its line end, as the program wrote them. */
let lines: Buffer[]
let undisturbed: Buffer[]

beforeAll(async () => {
  const whole = place()
  expect((await call([...argv, String(shifts)], { cwd: whole })).code).toBe(0)
  undisturbed = names.map((name) => readFileSync(path.join(whole, 'out', name)))
  const long = place()
  expect((await call([...argv, '100000'], { cwd: long, interruptAfter: 1500 })).code).toBe(130)
  lines = readFileSync(path.join(long, 'out', 'journal.ndjson'), 'utf8')
    .split(/(?<=\n)/)
    .slice(0, shifts + 1)
    .map((line) => Buffer.from(line))
  expect(lines.length).toBe(shifts + 1)
  expect(lines.slice(1).map((line) => JSON.parse(line.toString()).shift)).toEqual([1, 2, 3, 4])
}, 120_000)

/** A study that goes on from such a journal, in a folder of its own, ends with the bytes of one that nobody disturbed. */
async function expectUndisturbed(journal: readonly Buffer[], what: string): Promise<void> {
  const cwd = place()
  writeFileSync(path.join(cwd, 'out', 'journal.ndjson'), Buffer.concat(journal))
  const { code, err } = await call([...argv, String(shifts), '--resume'], { cwd })
  expect([code, err], what).toEqual([0, ''])
  for (const [index, name] of names.entries())
    expect(readFileSync(path.join(cwd, 'out', name)).equals(undisturbed[index]!), `${name}, ${what}`).toBe(
      true,
    )
}

describe('a journal torn in its last line', () => {
  it('keeps the lines before, and takes the lost shift again, at every byte', () => {
    const folder = place()
    const file = path.join(folder, 'journal.ndjson')
    const { format: _, ...owner } = JSON.parse(lines[0]!.toString()) as { format: string } & JournalOwner
    const whole = Buffer.concat(lines)
    const last = lines.at(-1)!
    writeFileSync(file, whole)
    const complete = Journal.open(folder, owner, true, () => {})
    complete.close()
    expect([...complete.knownOf('').keys()]).toEqual([1, 2, 3, 4])
    const lost = complete.knownOf('').get(shifts)!
    for (let left = 0; left < last.length; left++) {
      writeFileSync(file, whole.subarray(0, whole.length - last.length + left))
      const journal = Journal.open(folder, owner, true, () => {})
      if (journal.knownOf('').size !== shifts - 1 || journal.knownOf('').has(shifts))
        expect.fail(`${left} bytes left: knows ${[...journal.knownOf('').keys()]}`)
      journal.keep('', shifts, [lost])
      journal.close()
      if (!readFileSync(file).equals(whole)) expect.fail(`${left} bytes left: the journal is another one`)
    }
  })

  it('through the whole program, at places all along the line: the bytes of an undisturbed run', async () => {
    const last = lines.at(-1)!
    // the ends, where a line is nothing yet or lacks only its line end, and every tenth of it
    const places = [0, 1, 2, last.length - 2, last.length - 1]
    for (let tenth = 1; tenth < 10; tenth++) places.push(Math.floor((tenth * last.length) / 10))
    for (const left of places)
      await expectUndisturbed([...lines.slice(0, -1), last.subarray(0, left)], `${left} bytes left`)
  })

  it('that the disk filled with zeros, as after a loss of power', async () => {
    await expectUndisturbed(
      [...lines.slice(0, -1), lines.at(-1)!.subarray(0, 50), Buffer.alloc(4096)],
      'zeros after 50 bytes',
    )
  })
})
