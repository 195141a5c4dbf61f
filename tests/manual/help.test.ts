/** `tapeshift help` and `tapeshift completions`: what they print, and of what there is none. */
import { execFileSync } from 'node:child_process'
import { existsSync, mkdtempSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { describe, expect, it } from 'vitest'
import { shellNames } from '../../src/manual/completions/names.js'
import { terminalText } from '../../src/manual/terminal.js'
import { call } from '../cli/in-process.js'
import { manual, program } from './program.js'

const help = (...words: string[]) => call(['help', ...words], { width: 80 })

describe('help', () => {
  it('lists all topics', async () => {
    const { code, out } = await help()
    expect(code).toBe(0)
    for (const { name, title } of manual.topics) {
      expect(out).toContain(`- ${name}: `)
      expect(title).not.toBe(name)
    }
  })

  it('prints a topic, no line wider than the terminal but what is typed or a table of wide words', async () => {
    const { out } = await help('how-sure')
    expect(out).toMatch(/^How sure is an answer\?\n/)
    const prose = out.split('\n').filter((line) => !line.startsWith('  tapeshift '))
    expect(prose.filter((line) => line.length > 80)).toEqual([])
    expect(out).not.toMatch(/\*\*|^#|```/m)
  })

  it('of a command prints its help, and where more stands', async () => {
    const { code, out } = await help('size')
    expect(code).toBe(0)
    expect(out).toContain('--holds <PROMISE>')
    expect(out).toContain('More: tapeshift help how-many')
  })

  it('is named in the help of every command that has a guide', async () => {
    const names = program.commands.map((each) => each.name())
    for (const command of names.filter((name) => !['help', 'manual', 'completions'].includes(name))) {
      const { out } = await call([command, '--help'])
      const [, topic] = /\nMore: tapeshift help ([a-z-]+)\n$/.exec(out) ?? []
      expect([command, manual.topics.some(({ name }) => name === topic)]).toEqual([command, true])
    }
  })

  it.each([
    ['line.sealer.jams', 'line.PIECE.jams.chance: Chance that a case jams', 'keys'],
    ['line.sealer.belt-speed', '`24 m/min`, from memory', 'keys'],
    ['shift.breaks.0.at', 'shift.breaks.N.at', 'keys'],
    ['belt-speed', 'line.PIECE.belt-speed', 'keys'],
    ['throughput', 'Rate, mean over shifts', 'measures'],
    ['equipment.sealer.measures.held-p95', 'equipment.NAME.held-p95', 'measures'],
    ['equipment.divert.to-sealer', 'equipment.NAME.to-TARGET', 'measures'],
    ['blocked', 'equipment.NAME.states.blocked', 'states'],
    ['legs-meet', 'The legs of opposite strips meet', 'findings'],
    ['--choose', '--choose CHOICE (size)', 'commands'],
    ['journal.ndjson', 'the finished shifts of an interrupted study', 'files'],
  ])('looks %s up', async (word, words, topic) => {
    const { code, out } = await help(word)
    expect(code).toBe(0)
    expect(out.replace(/\s+/g, ' ').toLowerCase()).toContain(words.toLowerCase())
    expect(out).toContain(`All of these: \`tapeshift help ${topic}\``)
  })

  it('of a piece that is called as its kind says what that kind has', async () => {
    const { out } = await help('line.conveyor.length')
    expect(out).toContain('line.PIECE.length (conveyor)')
    expect(out).not.toContain('divert')
  })

  it.each([
    ['belt-sped', 'did you mean `belt-speed`?'],
    ['how-mny', 'did you mean `how-many`?'],
    ['guess', '`tapeshift help scenario-file`'],
    ['xyzzyplugh', '`tapeshift help` lists the topics'],
    ['\u001b[31m', '`·[31m`'],
  ])('of %j says what is near, and ends as wrong usage', async (word, words) => {
    const { code, out, err } = await help(word)
    expect([code, out]).toEqual([2, ''])
    expect(err).toContain(words)
  })

  it('shows no HTML that a text holds as such, and lists in lists', () => {
    const style = { bold: (text: string) => text, width: 40 }
    expect(terminalText('# A <b>\n\n1. one\n   - two\n', style)).toBe('A <b>\n\n1. one\n   - two\n')
  })
})

describe('completions', () => {
  const folder = mkdtempSync(path.join(tmpdir(), 'tapeshift-test-'))
  const scriptOf = async (shell: string) => {
    const { out } = await call(['completions', shell])
    const file = path.join(folder, shell)
    writeFileSync(file, out)
    return { out, file }
  }

  it('bash completes commands, options, words of an option, files and topics', async () => {
    const { file } = await scriptOf('bash')
    writeFileSync(path.join(folder, 'my line.yaml'), '')
    const complete = (...words: string[]) =>
      execFileSync(
        'bash',
        [
          '-c',
          `source "$1"; shift; complete -p tapeshift >/dev/null || exit 1
COMP_WORDS=("$@"); COMP_CWORD=$(($# - 1)); _tapeshift; printf '%s\\n' "\${COMPREPLY[@]}"`,
          ...['bash', file, 'tapeshift', ...words],
        ],
        { cwd: folder, encoding: 'utf8' },
      )
        .trimEnd()
        .split('\n')
    expect(complete('s')).toEqual(['size', 'sweep'])
    expect(complete('')).toEqual([...program.commands.map((each) => each.name()), '--version'])
    expect(complete('run', 'x', '--inp')).toEqual(['--inputs'])
    expect(complete('run', 'x', '--inputs', '')).toEqual(['drawn', 'fixed'])
    expect(complete('run', 'my')).toEqual(['my line.yaml'])
    expect(complete('help', 'how-m')).toEqual(['how-many', 'how-much'])
    expect(complete('completions', '')).toEqual([...shellNames])
    expect(complete('manual', '--o')).toEqual(['--out'])
  })

  it.each(shellNames)('%s has every command and every option, and its shell takes it', async (shell) => {
    const { out, file } = await scriptOf(shell)
    for (const command of program.commands) {
      expect(out).toContain(command.name())
      for (const { long } of command.options)
        expect(out).toContain(shell === 'fish' ? `-l ${long!.slice(2)} ` : long)
    }
    // a quote in a description would end what it stands in
    for (const line of out.split('\n').filter((each) => !each.startsWith('#')))
      expect(line.split("'").length % 2, line).toBe(1)
    const binary = `/usr/bin/${shell}`
    // no shell, no look at its syntax
    if (existsSync(binary)) execFileSync(binary, ['-n', file])
  })

  it('of another shell are refused', async () => {
    const { code, err } = await call(['completions', 'ksh'])
    expect(code).toBe(2)
    expect(err).toContain('bash')
  })
})
