/** The page of section 1 that the build writes: whole, and read by groff without a warning. */
import { execFileSync, spawnSync } from 'node:child_process'
import { existsSync, readFileSync } from 'node:fs'
import path from 'node:path'
import { describe, expect, it } from 'vitest'
import { described } from '../../src/cli/described.js'
import { manPage } from '../../src/manual/man.js'
import { root } from './examples.js'
import { manual, program } from './program.js'

const file = path.join(root, '.build/man/tapeshift.1')

describe('the manual page', () => {
  it('is what the program says of itself, and in the package', () => {
    expect(existsSync(file), 'npm run build').toBe(true)
    expect(readFileSync(file, 'utf8')).toBe(manPage(described(program), manual.topics))
    const { man } = JSON.parse(readFileSync(path.join(root, 'package.json'), 'utf8'))
    expect(man).toEqual(['.build/man/tapeshift.1'])
  })

  it('is read by groff without a warning, with all commands and options', () => {
    const page = manPage(described(program), manual.topics)
    // no groff, no look at it
    if (!existsSync('/usr/bin/groff')) return
    const { stderr } = spawnSync('groff', ['-man', '-Tutf8', '-ww', '-z'], { input: page, encoding: 'utf8' })
    expect(stderr).toBe('')
    const text = execFileSync('groff', ['-man', '-Tascii', '-P-cbou'], { input: page, encoding: 'utf8' })
    for (const command of program.commands) {
      expect(text).toContain(`tapeshift ${command.name()}`)
      for (const { long } of command.options) expect(text).toContain(long!)
    }
    for (const head of ['NAME', 'SYNOPSIS', 'COMMANDS', 'TOPICS', 'EXIT STATUS', 'FILES', 'CAUTIONS'])
      expect(text).toMatch(new RegExp(`^${head}$`, 'm'))
  })

  it('takes no line of a text for a request', () => {
    const hostile = { ...described(program), meaning: ".so /etc/passwd\n'br \\fB" }
    expect(manPage(hostile, [])).not.toMatch(/^(?:\.so|'br)/m)
  })
})
