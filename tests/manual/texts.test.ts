/** The README is short, what README and manual point at is there, and their English is plain. */
import { existsSync, readdirSync, readFileSync } from 'node:fs'
import path from 'node:path'
import { describe, expect, it } from 'vitest'
import { entriesOf } from '../../src/manual/find.js'
import { written } from '../../src/manual/topics.js'
import { files, root, textOf } from './examples.js'
import { manual, program } from './program.js'

const sources = readdirSync(path.join(root, 'src'), { recursive: true, encoding: 'utf8' })
  .filter((file) => file.endsWith('.ts'))
  .map((file) => path.join('src', file))

/** Whether `tapeshift help WORD` prints something. */
const isKnown = (word: string): boolean =>
  /^[A-Z]+$/.test(word) ||
  manual.topics.some(({ name }) => name === word) ||
  program.commands.some((command) => command.name() === word) ||
  entriesOf(manual, word).length > 0

describe('README', () => {
  it('has under 200 lines', () => {
    expect(textOf('README.md').split('\n').length).toBeLessThan(200)
  })

  it('links to what is there', () => {
    const links = [...textOf('README.md').matchAll(/\]\(([^)]+)\)/g)].map(([, link]) => link!)
    expect(links.length).toBeGreaterThan(3)
    expect(links.filter((link) => !existsSync(path.join(root, link)))).toEqual([])
  })

  it('shows a picture that the program drew: a PNG, and small', () => {
    const picture = readFileSync(path.join(root, 'src/manual/picture.png'))
    expect(picture.subarray(1, 4).toString()).toBe('PNG')
    expect(picture.length).toBeLessThan(150_000)
    expect(textOf('README.md')).toContain('src/manual/picture.png')
  })
})

describe('pointers', () => {
  it.each([...files, ...sources.filter((file) => /tapeshift help [a-z]/.test(textOf(file)))])(
    'of %s lead somewhere',
    (file) => {
      const words = [...textOf(file).matchAll(/tapeshift help ([\w.-]*\w)/g)].map(([, word]) => word!)
      expect(words.filter((word) => !isKnown(word))).toEqual([])
    },
  )

  it('of the README name every topic but those that others name', () => {
    const all = files.map(textOf).join('\n')
    const unnamed = Object.keys(written).filter((topic) => !all.includes(`tapeshift help ${topic}`))
    // whoever reads the list finds these
    expect(unnamed).toEqual(['results', 'safety'])
  })
})

describe('topics', () => {
  it('are files, and all files are topics', () => {
    expect(files.slice(1).map((file) => path.basename(file, '.md'))).toEqual(Object.keys(written).sort())
  })

  it.each(files)('%s is plain', (file) => {
    const prose = textOf(file).replace(/^```[\s\S]*?^```$/gm, '')
    expect(prose).not.toMatch(
      /\b(mend(s|ed)?|leave it|of it|held in|not passed by|places at work|whoever|hang on)\b/i,
    )
  })
})
