/** Every package that the project is built from, tested with or ships may be used so: its licence is one of a closed list. */
import { existsSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'

/** Permissive licences, and their terms: keep the notice. Names of SPDX. */
const permissive = [
  'MIT',
  'ISC',
  'BSD-2-Clause',
  'BSD-3-Clause',
  'Apache-2.0',
  '0BSD',
  'BlueOak-1.0.0',
  'Unlicense',
  'CC0-1.0',
  'Zlib',
  'Python-2.0',
  'BSL-1.0',
]

/** A font whose words allow use, copies and embedding, and ask that it is not sold alone (Bitstream Vera; changes are in the public domain). */
const fonts: Readonly<Record<string, string>> = { 'dejavu-fonts-ttf': 'SEE LICENSE IN README.md AND LICENSE' }

/** Of tools that are used as they are and never shipped: their terms hold for changes of their own files. */
const ofTools = ['MPL-2.0']

interface Locked {
  license?: string
  dev?: boolean
}

const { packages } = JSON.parse(readFileSync('package-lock.json', 'utf8')) as {
  packages: Record<string, Locked>
}

const nameOf = (place: string): string =>
  place.slice(place.lastIndexOf('node_modules/') + 'node_modules/'.length)

/** What the lock or, where that says nothing, the package says of itself. */
function licenceOf(place: string, { license }: Locked): string {
  if (license !== undefined) return license
  const file = `${place}/package.json`
  return existsSync(file) ? String((JSON.parse(readFileSync(file, 'utf8')) as Locked).license) : 'not said'
}

/** An SPDX expression of licences joined by OR needs one that is allowed, by AND all. */
const isAllowed = (expression: string): boolean =>
  expression
    .replace(/[()]/g, '')
    .split(' OR ')
    .some((choice) => choice.split(' AND ').every((each) => permissive.includes(each.trim())))

describe('licences', () => {
  it.each([
    ['MIT', true],
    ['(MIT OR GPL-3.0)', true],
    ['MIT AND GPL-3.0', false],
    ['GPL-3.0', false],
    ['undefined', false],
  ])('%s: %s', (expression, is) => {
    expect(isAllowed(expression)).toBe(is)
  })

  it('of all that is installed are of the list', () => {
    const own = Object.entries(packages).filter(([place]) => place !== '')
    expect(own.length).toBeGreaterThan(50)
    const wrong = own
      .map(([place, locked]) => ({
        name: nameOf(place),
        licence: licenceOf(place, locked),
        isTool: locked.dev === true,
      }))
      .filter(
        ({ name, licence, isTool }) =>
          !(isAllowed(licence) || fonts[name] === licence || (isTool && ofTools.includes(licence))),
      )
    expect(wrong).toEqual([])
  })

  it('of all that is bundled travel with the program, and are of the list', () => {
    const text = readFileSync('.build/cli/licences.txt', 'utf8')
    const bundled = [...text.matchAll(/^((?:@[\w.-]+\/)?[\w.-]+) \d+\.\d+\.\d+\S*, (.+)$/gm)]
    expect(bundled.length).toBeGreaterThan(5)
    const wrong = bundled
      .map(([, name, licence]) => [name!, licence!] as const)
      .filter(([name, licence]) => !isAllowed(licence) && fonts[name] !== licence)
    expect(wrong).toEqual([])
  })
})
