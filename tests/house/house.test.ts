/** The house: rooms whose arrows run one way, downwards; no file that leads back to itself; and what each room may not know. */
import { readdirSync, readFileSync } from 'node:fs'
import path from 'node:path'
import { fileURLToPath } from 'node:url'
import { describe, expect, it } from 'vitest'

const src = fileURLToPath(new URL('../../src', import.meta.url))

/** From the cellar up: a room may use those before it. `cli` and `node.ts` stand on the public face, and nothing stands on them. */
const rooms = [
  ...[
    'version.ts',
    'trade',
    'scenario',
    'engine',
    'statistics',
    'inputs',
    'record',
    'catalogue',
    'line',
    'hand',
    'shifts',
    'queue',
  ],
  ...['report', 'pictures', 'answers', 'questions', 'page', 'manual', 'index.ts', 'try', 'node.ts', 'cli'],
]

/** What the scenario asks of a kind of equipment stands on its floor; its model, and what it says by hand and in pictures, on that of the line. */
const facets: Record<string, string> = {
  keys: 'scenario',
  'shared-keys': 'scenario',
  heads: 'scenario',
  rules: 'scenario',
  traits: 'scenario',
}

const files = readdirSync(src, { recursive: true, encoding: 'utf8' })
  .filter((file) => /\.tsx?$/.test(file) && !file.endsWith('.d.ts'))
  .map((file) => file.split(path.sep).join('/'))
const textOf = new Map(files.map((file) => [file, readFileSync(path.join(src, file), 'utf8')]))

/** Every way of naming another file: import and export from, for its effect alone, at need, of a type, and by its address. */
const named = /\b(?:from|import|require)\s*\(?\s*(['"`])([^'"`]+)\1|new URL\(\s*(['"`])([^'"`]+)\3/g

/** All that a text names. */
const namesIn = (text: string): { name: string; isAddress: boolean }[] =>
  [...text.matchAll(named)].map(([, , imported, , address]) => ({
    name: imported ?? address!,
    isAddress: address !== undefined,
  }))

/** What a file names: files of the house, and packages. */
function namedBy(file: string): { files: string[]; packages: string[] } {
  const found = { files: [] as string[], packages: [] as string[] }
  for (const { name, isAddress } of namesIn(textOf.get(file)!)) {
    const to = path.posix.join(path.posix.dirname(file), name)
    const target =
      [to.replace(/\.js$/, '.ts'), to.replace(/\.js$/, '.tsx')].find((each) => textOf.has(each)) ?? to
    if (!name.startsWith('.')) {
      if (!isAddress && /^(?:node:|@?[a-z][\w./-]*$)/.test(name)) found.packages.push(name)
    } else if (textOf.has(target)) found.files.push(target)
  }
  return found
}

const roomOf = (file: string): string => {
  const [room] = file.split('/') as [string]
  return room === 'kinds' ? (facets[path.posix.basename(file, '.ts')] ?? 'line') : room
}

const arrows = files.flatMap((from) => namedBy(from).files.map((to) => ({ from, to })))

describe('what a file names', () => {
  it.each([
    ["import { a } from './a.js'", './a.js'],
    ["import type { A } from './a.js'", './a.js'],
    ["import {\n  a,\n  type B,\n} from './a.js'", './a.js'],
    ["import * as a from './a.js'", './a.js'],
    ["import './a.js'", './a.js'],
    ["export * from './a.js'", './a.js'],
    ["export { a } from './a.js'", './a.js'],
    ["const { a } = await import('./a.js')", './a.js'],
    ["void import(\n  './a.js'\n)", './a.js'],
    ["let a: import('./a.js').A", './a.js'],
    ["let a: typeof import('./a.js')", './a.js'],
    ['import a from "./a.js"', './a.js'],
    ["const a = require('./a.js')", './a.js'],
    ["const file = new URL('./a.js', import.meta.url)", './a.js'],
  ])('is seen in %j', (text, name) => {
    expect(namesIn(text).map((each) => each.name)).toEqual([name])
  })
})

describe('rooms', () => {
  it('are all known', () => {
    expect([...new Set(files.map(roomOf))].filter((room) => !rooms.includes(room))).toEqual([])
    expect(arrows.length).toBeGreaterThan(500)
  })

  it('use what stands below them alone, types included', () => {
    const floor = (file: string) => rooms.indexOf(roomOf(file))
    expect(arrows.filter(({ from, to }) => floor(from) < floor(to))).toEqual([])
  })

  it('of questions know none of each other, nor the list of them', () => {
    const question = (file: string) => /^questions\/([a-z]+)\//.exec(file)?.[1]
    const across = arrows.filter(
      ({ from, to }) => question(from) && to.startsWith('questions/') && question(from) !== question(to),
    )
    expect(across).toEqual([])
  })

  it('of kinds of equipment know none of each other', () => {
    const kind = (file: string) => /^kinds\/([a-z-]+)\//.exec(file)?.[1]
    expect(arrows.filter(({ from, to }) => kind(from) && kind(to) && kind(from) !== kind(to))).toEqual([])
  })

  it('hold no file that leads back to itself', () => {
    const onward = new Map(files.map((file) => [file, namedBy(file).files]))
    const done = new Set<string>()
    const circles: string[][] = []
    const visit = (file: string, way: readonly string[]): void => {
      if (way.includes(file)) circles.push([...way.slice(way.indexOf(file)), file])
      else if (!done.has(file)) for (const next of onward.get(file)!) visit(next, [...way, file])
      done.add(file)
    }
    for (const file of files) visit(file, [])
    expect(circles).toEqual([])
  })
})

describe('what only one place knows', () => {
  /** Rooms and files for Node alone; all else runs in a browser. */
  const ofNode = (file: string) => /^(?:cli\/|node\.ts|queue\/|shifts\/threads\/|report\/png\.ts)/.test(file)

  it('Node is known to the command line, the threads, the queue and the pictures in files', () => {
    const wrong = files
      .filter((file) => !ofNode(file))
      .filter(
        (file) =>
          namedBy(file).packages.some((name) => name.startsWith('node:')) ||
          /(?<![-\w])process\.|\bBuffer\b|\brequire\(/.test(textOf.get(file)!),
      )
    expect(wrong).toEqual([])
  })

  it('the page of a browser is known to its programs', () => {
    const wrong = files.filter(
      (file) =>
        !/^(?:page|try\/view)\//.test(file) &&
        /\b(?:document\.querySelector|window\.)/.test(textOf.get(file)!),
    )
    expect(wrong).toEqual([])
  })

  it('chance comes from the streams alone, and no result from a clock of the machine', () => {
    const wrong = files.filter(
      (file) =>
        !file.startsWith('cli/') &&
        !/^(?:page|try\/view)\//.test(file) &&
        /Math\.random|Date\.now|new Date\(|Math\.pow/.test(textOf.get(file)!),
    )
    expect(wrong).toEqual([])
    const generators = files.filter((file) =>
      namedBy(file).packages.some((name) => name.startsWith('seedrandom')),
    )
    expect(generators).toEqual(['engine/stream.ts'])
  })

  it('what is drawn asks no machine for a logarithm: machines round them differently in the last digit', () => {
    const drawn = files.filter((file) => /^(?:engine|inputs|line|kinds)\//.test(file))
    const wrong = drawn.filter((file) =>
      /Math\.(?:log|log1p|log10|exp|expm1|sin|cos|tan|cbrt|hypot)\(/.test(textOf.get(file)!),
    )
    expect(wrong).toEqual([])
  })

  it('the engine has never heard of a case', () => {
    const own = files.filter((file) => file.startsWith('engine/'))
    expect(own.flatMap((file) => namedBy(file).files).filter((to) => !to.startsWith('engine/'))).toEqual([])
  })
})
