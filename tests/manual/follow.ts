/**
 * Follows the examples of a text as a reader does: in order, in a folder with the demos. The built program is asked: it simulates several
 * times as fast as its sources do in tests.
 */
import { execFile } from 'node:child_process'
import { cpSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { expect } from 'vitest'
import { asRun, commandsOf, type Fence, fencesOf, partOf, root, textOf } from './examples.js'

export const program = path.join(root, '.build/cli/main.js')

/** A folder with the demos, as a reader has it. */
function folder(): string {
  const cwd = mkdtempSync(path.join(tmpdir(), 'tapeshift-test-'))
  cpSync(path.join(root, 'scenarios'), path.join(cwd, 'scenarios'), { recursive: true })
  return cwd
}

/** Calls the built program; its output goes to no terminal. */
const call = (argv: readonly string[], cwd: string) =>
  new Promise<{ code: number; out: string; err: string }>((resolve) => {
    execFile(process.execPath, [program, ...argv], { cwd, maxBuffer: 1e8 }, (error, out, err) =>
      resolve({ code: error ? Number(error.code) : 0, out, err }),
    )
  })

/** Runs the commands of a fence; returns what the last one printed. */
async function run(fence: Fence, cwd: string): Promise<string> {
  const commands = commandsOf(fence)
  const isRead = /tapeshift report/.test(fence.text)
  const [, exit = '0'] = fence.marks.map((mark) => /^exit=(\d)$/.exec(mark)).find(Boolean) ?? []
  let printed = ''
  for (const [index, argv] of commands.entries()) {
    const { code, out, err } = await call(asRun(argv, fence, isRead), cwd)
    const expected = index === commands.length - 1 ? Number(exit) : 0
    expect([argv.join(' '), code, code === expected ? '' : err]).toEqual([argv.join(' '), expected, ''])
    // what went wrong stands on standard error
    printed = code === 0 ? out : `${out}\n${err}`
  }
  return printed
}

/** Changes lines of a file as an editor does: lines below `- ` go, each found by how it begins, those below `+ ` come in their place. */
function edit(file: string, { text }: Fence): void {
  let lines = readFileSync(file, 'utf8').split('\n')
  for (const [, out = '', into = ''] of text.matchAll(/((?:^- .*\n)+)((?:^\+ .*\n)*)/gm)) {
    const gone = out
      .trimEnd()
      .split('\n')
      .map((line) => line.slice(2))
    const begin = lines.findIndex((_, at) => gone.every((each, index) => lines[at + index]?.startsWith(each)))
    expect(begin, `${file}: no lines begin with\n${out}`).toBeGreaterThanOrEqual(0)
    const come =
      into === ''
        ? []
        : into
            .trimEnd()
            .split('\n')
            .map((line) => line.slice(2))
    lines = lines.toSpliced(begin, gone.length, ...come)
  }
  writeFileSync(file, lines.join('\n'))
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

/**
 * Runs all commands of `file`, and holds quotations against what comes out; what is marked `slow` only where `isSlow`. Where the
 * environment has `WRITE_QUOTATIONS`, they are written anew. `beside`: files that the reader has, by their names.
 */
export async function follow(
  file: string,
  isSlow: boolean,
  beside: Readonly<Record<string, string>> = {},
): Promise<void> {
  const cwd = folder()
  for (const [name, content] of Object.entries(beside)) writeFileSync(path.join(cwd, name), content)
  const text = textOf(file)
  let [printed, written] = ['', text]
  let isRun = false
  for (const fence of fencesOf(text)) {
    const [mark] = fence.marks
    if (fence.language === 'yaml' && mark?.endsWith('.yaml')) writeFileSync(path.join(cwd, mark), fence.text)
    if (fence.language === 'edit') edit(path.join(cwd, mark!), fence)
    if (fence.language === 'sh') {
      isRun = commandsOf(fence).length > 0 && (isSlow || !fence.marks.includes('slow'))
      if (isRun) printed = await run(fence, cwd)
    }
    if (fence.language !== 'text' || !isRun) continue
    const now = quoted(fence, printed, file)
    if (process.env.WRITE_QUOTATIONS)
      written = written.replace(`\`\`\`text\n${fence.text}\`\`\``, `\`\`\`text\n${now}\`\`\``)
    else expect(fence.text).toBe(now)
  }
  if (written !== text) writeFileSync(path.join(root, file), written)
}
