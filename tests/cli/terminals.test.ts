/** Terminals as they are not meant to be: no width or a senseless one, dumb, without colour, a full or a closed stream. */
import { describe, expect, it } from 'vitest'
import { expectTried } from '../tried.js'
import { call, smallLine } from './in-process.js'

const commands = [
  ['check', '-'],
  ['check', '-', '--full'],
  ['run', '-', '--shifts', '3', '--workers', '1', '--no-files'],
  ['--help'],
]
const widths = [0, -1, 1, 39, 40, 80, 1e9, Number.NaN]
const environments: Readonly<Record<string, string>>[] = [
  {},
  { TERM: 'dumb' },
  { NO_COLOR: '1' },
  { FORCE_COLOR: '3' },
  { COLUMNS: '' },
  { COLUMNS: '-80' },
  { COLUMNS: '1e999' },
  { COLUMNS: '0x50' },
  { COLUMNS: 'wide' },
  { TERM: '', LANG: 'C' },
  { TERM: '\u001b[2J', LC_ALL: 'xx' },
]

describe('an odd terminal', () => {
  let tried = 0

  it.each(commands.map((argv) => [argv.join(' '), argv] as const))('%s', async (_, argv) => {
    const plain = await call(argv, { stdin: smallLine, env: {} })
    expect(plain.code).toBe(0)
    const words = (text: string) =>
      text
        // biome-ignore lint/suspicious/noControlCharactersInRegex: what sets bold and colour
        .replace(/\u001b\[\d+m/g, '')
        .replace(/[^\p{L}]/gu, '')
    const terminals = [
      ...environments.map((env) => [env, undefined] as const),
      ...widths.map((width) => [{} as Record<string, string>, width] as const),
    ]
    for (const [env, width] of terminals) {
      tried++
      const { code, out, err } = await call(argv, { stdin: smallLine, env, width, isTerminal: true })
      expect([code, err], JSON.stringify([env, width])).toEqual([0, plain.err])
      // however it is broken into lines, no letter is lost
      expect(words(out).length).toBeGreaterThan(0.9 * words(plain.out).length)
      if (env.NO_COLOR || env.TERM === 'dumb') expect(out).not.toContain('\u001b')
      // nothing of what the environment says reaches the terminal
      expect(out).not.toContain('\u001b[2J')
      expect(out).not.toMatch(/\b(?:NaN|undefined|Infinity)\b/)
    }
  })

  it('each is counted', () => expectTried('odd terminals', tried))
})
