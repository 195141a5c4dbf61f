/** What the figures of a page are made of takes logarithms, exponentials and powers from a library: engines round their own in the last digit as they like. */
import { existsSync, readFileSync } from 'node:fs'
import path from 'node:path'
import { fileURLToPath } from 'node:url'
import { expect, it } from 'vitest'

const root = fileURLToPath(new URL('../..', import.meta.url))

/** Where a machine's own may stand: it is probed there, rounds room up to a power of two, or says where a figure is cut for people to read. */
const mayAsk = [
  'src/engine/logarithms.ts',
  'src/engine/ring.ts',
  'src/kinds/conveyor/bed.ts',
  'src/kinds/conveyor/belt-conveyor.ts',
  'src/kinds/sealer/belts.ts',
  'src/kinds/spell.ts',
  'src/catalogue/printed-units.ts',
  'src/report/format.ts',
]

/** A function that engines round as they like, or a power other than a square or one of two, which are exact or products. */
const own =
  /\bMath\.(?:a?cosh?|a?sinh?|a?tanh?|atan2|cbrt|exp|expm1|hypot|log|log10|log1p|log2|pow)\b|(?<!\b2 )\*\*(?! 2(?![\w.]))/

/** The files that are loaded with a file, itself included; types are none. */
function loadedWith(file: string, seen = new Set<string>()): Set<string> {
  if (seen.has(file)) return seen
  seen.add(file)
  const text = readFileSync(path.join(root, file), 'utf8')
  for (const [, , name] of text.matchAll(/^(?:import|export)(?! type)[^'"]*?(['"])(\.[^'"]+)\1/gm)) {
    const to = path.join(path.dirname(file), name!).replace(/\.js$/, '.ts')
    if (existsSync(path.join(root, to))) loadedWith(to, seen)
  }
  return seen
}

const withoutComments = (text: string): string => text.replace(/\/\*[\s\S]*?\*\/|\/\/.*$/gm, '')

it.each([
  ['Math.log(x)', true],
  ['x ** 3', true],
  ['x ** 2.5', true],
  ['10 ** digits', true],
  ['x ** 2 + 1', false],
  ['2 ** -32', false],
  ['ln(x) * Math.sqrt(y)', false],
])('%s: %s', (code, isOwn) => {
  expect(own.test(code)).toBe(isOwn)
})

it('and nothing that the worker of the page loads asks the machine', () => {
  const files = [...loadedWith('src/try/study/serve.ts')]
  expect(files.length).toBeGreaterThan(200)
  const asking = files.filter((file) =>
    own.test(withoutComments(readFileSync(path.join(root, file), 'utf8'))),
  )
  expect(asking.sort()).toEqual([...mayAsk].sort())
})
