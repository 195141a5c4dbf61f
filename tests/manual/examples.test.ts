/**
 * The README and the manual keep their word: their commands run as they stand, in order, and what they quote is what comes out.
 * `WRITE_QUOTATIONS=yes` writes the quotations anew. The built program is asked: it simulates several times as fast as its sources here.
 */
import { execFile } from 'node:child_process'
import { cpSync, existsSync, mkdtempSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { describe, expect, it } from 'vitest'
import { loadScenario } from '../../src/scenario/load.js'
import { asRun, commandsOf, type Fence, fencesOf, files, partOf, root, textOf } from './examples.js'

/** A folder with the demos, as a reader has it. */
function folder(): string {
  const cwd = mkdtempSync(path.join(tmpdir(), 'tapeshift-test-'))
  cpSync(path.join(root, 'scenarios'), path.join(cwd, 'scenarios'), { recursive: true })
  return cwd
}

const program = path.join(root, '.build/cli/main.js')

/** Calls the built program; its output goes to no terminal. */
const call = (argv: readonly string[], cwd: string) =>
  new Promise<{ code: number; out: string; err: string }>((resolve) => {
    execFile(process.execPath, [program, ...argv], { cwd, maxBuffer: 1e8 }, (error, out, err) =>
      resolve({ code: error ? Number(error.code) : 0, out, err }),
    )
  })

/** Runs the commands of a fence; returns what the last one printed. */
async function run(fence: Fence, cwd: string, isRead: boolean): Promise<string> {
  const commands = commandsOf(fence)
  const [, exit = '0'] = fence.marks.map((mark) => /^exit=(\d)$/.exec(mark)).find(Boolean) ?? []
  let printed = ''
  for (const [index, argv] of commands.entries()) {
    const { code, out, err } = await call(asRun(argv, fence, isRead), cwd)
    const expected = index === commands.length - 1 ? Number(exit) : 0
    expect([argv.join(' '), code, code === expected ? '' : err]).toEqual([argv.join(' '), expected, ''])
    printed = out
  }
  return printed
}

/** Each part of a quotation as it comes out; `which` says where it stands in a message. */
function quoted({ text }: Fence, printed: string, which: string): string {
  const parts = text
    .trim()
    .split(/\n\n+/)
    .map((part) => {
      const [word] = part.split(/\s/)
      const found = partOf(printed, word!)
      expect(found, `${which}: no line begins with ${word}`).not.toBeNull()
      return found!
    })
  return `${parts.join('\n\n')}\n`
}

const withExamples = files.filter((file) => fencesOf(textOf(file)).some(({ language }) => language === 'sh'))

describe('examples', () => {
  it('are asked of the built program', () => {
    expect(existsSync(program), 'npm run build').toBe(true)
  })

  it('are in the README and in most guides', () => {
    expect(withExamples).toContain('README.md')
    expect(withExamples.length).toBeGreaterThan(12)
  })

  it.each(withExamples)('of %s run, and print what is quoted', async (file) => {
    const cwd = folder()
    const text = textOf(file)
    const fences = fencesOf(text)
    let [printed, isRun] = ['', false]
    let written = text
    for (const fence of fences) {
      if (fence.language === 'yaml' && fence.marks[0]?.endsWith('.yaml'))
        writeFileSync(path.join(cwd, fence.marks[0]), fence.text)
      if (fence.language === 'sh') {
        isRun = commandsOf(fence).length > 0 && !fence.marks.includes('slow')
        if (isRun) printed = await run(fence, cwd, /tapeshift report/.test(fence.text))
      }
      if (fence.language !== 'text' || !isRun) continue
      const now = quoted(fence, printed, file)
      if (process.env.WRITE_QUOTATIONS)
        written = written.replace(`\`\`\`text\n${fence.text}\`\`\``, `\`\`\`text\n${now}\`\`\``)
      else expect(fence.text).toBe(now)
    }
    if (written !== text) writeFileSync(path.join(root, file), written)
  })

  it('of scenarios load', () => {
    const whole = files
      .flatMap((file) => fencesOf(textOf(file)))
      .filter(({ language, marks }) => language === 'yaml' && !marks.includes('fragment'))
    expect(whole.length).toBeGreaterThanOrEqual(2)
    for (const { text } of whole) expect(Object.keys(loadScenario(text).scenario.line)).toContain('sealer')
  })
})
