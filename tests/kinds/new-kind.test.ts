/** A kind of equipment more: with its keys alone the compiler asks for a row of every registry, and for nothing else. */
import { execFile } from 'node:child_process'
import { cp, mkdir, mkdtemp, readFile, rm, symlink, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { promisify } from 'node:util'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'

const run = promisify(execFile)
const root = resolve(import.meta.dirname, '../..')
let folder = ''

/** Every registry beside the keys, and the row of a kind that does what a divert does but turns cases. */
const rows: Readonly<Record<string, string>> = {
  'src/kinds/hand.ts': 'turntable: divertByHand as never,',
  'src/kinds/models.ts': 'turntable: (floor, name, keys) => new Divert(floor, name, keys as never),',
  'src/kinds/pictures.ts': 'turntable: divertInPictures as never,',
  'src/kinds/rules.ts': 'turntable: {},',
  'src/kinds/traits.ts':
    'turntable: { tapes: false, conveys: false, hasPlaces: false, parts: null, noun: null },',
}

/** Puts a row before that of the divert. */
async function addRow(file: string, row: string): Promise<void> {
  const text = await readFile(join(folder, file), 'utf8')
  const at = /^ {2}divert: /m
  expect(text).toMatch(at)
  await writeFile(join(folder, file), text.replace(at, `  ${row}\n  divert: `))
}

/** Files that the errors of the compiler name. */
async function filesAtFault(): Promise<string[]> {
  const compiler = join(root, 'node_modules/typescript/bin/tsc')
  const said = await run(process.execPath, [compiler, '-p', '.', '--pretty', 'false', '--incremental'], {
    cwd: folder,
    maxBuffer: 1 << 24,
  }).then(
    () => '',
    ({ stdout }: { stdout: string }) => stdout,
  )
  return [...new Set([...said.matchAll(/^(\S+)\(\d+,\d+\): error/gm)].map((match) => match[1]!))].sort()
}

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'kind-'))
  await cp(join(root, 'src'), join(folder, 'src'), { recursive: true })
  await symlink(join(root, 'node_modules'), join(folder, 'node_modules'))
  for (const file of ['tsconfig.json', 'package.json']) await cp(join(root, file), join(folder, file))
  await mkdir(join(folder, 'src/kinds/turntable'))
  const divert = await readFile(join(folder, 'src/kinds/divert/keys.ts'), 'utf8')
  await writeFile(
    join(folder, 'src/kinds/turntable/keys.ts'),
    divert
      .replace(".literal('divert')", ".literal('turntable')")
      .replace('export const divert', 'export const turntable')
      .replace('DivertKeys = z.output<typeof divert>', 'TurntableKeys = z.output<typeof turntable>'),
  )
  const keys = join(folder, 'src/kinds/keys.ts')
  await writeFile(
    keys,
    (await readFile(keys, 'utf8'))
      .replace(
        "import { station } from './station/keys.js'\n",
        "import { station } from './station/keys.js'\nimport { turntable } from './turntable/keys.js'\n",
      )
      .replace('{ conveyor,', '{ turntable, conveyor,'),
  )
})

afterAll(() => rm(folder, { recursive: true, force: true }))

describe('a new kind', () => {
  it('is asked for in every registry and nowhere else, and compiles once it has its rows', async () => {
    expect(await filesAtFault()).toEqual(Object.keys(rows).sort())
    for (const [file, row] of Object.entries(rows)) await addRow(file, row)
    expect(await filesAtFault()).toEqual([])
  }, 300_000)
})
