/** The README keeps its word: its commands run, its scenario loads, its quotation is what comes out, its measures are all there. */

import { cpSync, mkdtempSync, readFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { fileURLToPath } from 'node:url'
import { describe, expect, it } from 'vitest'
import type { RunResult } from '../../src/questions/run/document.js'
import { loadScenario } from '../../src/scenario/load.js'
import { demos } from '../demo.js'
import { call } from './in-process.js'

const root = fileURLToPath(new URL('../..', import.meta.url))
const readme = readFileSync(path.join(root, 'README.md'), 'utf8')
const blocks = (language: string) =>
  [...readme.matchAll(new RegExp(`\`\`\`${language}\n([\\s\\S]*?)\`\`\``, 'g'))].map((match) => match[1]!)

function folder(): string {
  const cwd = mkdtempSync(path.join(tmpdir(), 'tapeshift-test-'))
  cpSync(path.join(root, 'scenarios'), path.join(cwd, 'scenarios'), { recursive: true })
  return cwd
}

const words = (command: string) =>
  [...command.matchAll(/"([^"]*)"|(\S+)/g)].map((match) => match[1] ?? match[2]!).slice(1)

/** Commands in the shell blocks of a text. */
const commandsIn = (text: string): string[] =>
  [...text.matchAll(/```sh\n([\s\S]*?)```/g)]
    .flatMap((match) => match[1]!.split('\n'))
    .filter((line) => line.startsWith('tapeshift '))

/** The same command with few shifts, in this thread. */
function quickened(argv: readonly string[]): string[] {
  if (argv[0] === 'validate') return [...argv, '--workers', '1', '--no-files']
  if (!['run', 'compare', 'size', 'sweep'].includes(argv[0]!)) return [...argv]
  // a report is made of the files of a run
  const files = argv[0] === 'run' ? [] : ['--no-files']
  const some = argv[0] === 'size' ? ['--choose', 'line.infeed.length=4 m,12 m'] : ['--shifts', '3']
  return [...argv, ...some, '--workers', '1', ...files]
}

describe('README', () => {
  // they stand on one another
  const cwd = folder()
  const sections = readme
    .split(/^#{2,3} /m)
    .map((text) => ({ head: text.split('\n')[0]!, commands: commandsIn(text) }))
    .filter(({ commands }) => commands.length > 0)

  it('has commands', () => {
    expect(sections.length).toBeGreaterThanOrEqual(8)
  })

  it.each(sections)(
    'its commands run: $head',
    async ({ commands }) => {
      for (const command of commands) {
        const argv = words(command)
        const { code } = await call(quickened(argv), { cwd })
        // of three shifts nothing can be chosen, and a model that is wrong on purpose is refused: both have an exit code of their own
        const isRefused =
          argv.includes('--best') || (argv[0] === 'validate' && command.includes('half-the-jams'))
        expect([command, code]).toEqual([command, isRefused ? 4 : 0])
      }
    },
    300_000,
  )

  it('its scenario loads', () => {
    for (const block of blocks('yaml'))
      expect(Object.keys(loadScenario(block).scenario.line)).toEqual(['infeed', 'sealer'])
  })

  it.each([
    ['run', 'scenarios/soap-works.yaml', 'HOLDS the target'],
    ['compare', 'scenarios/tape-choice.yaml', 'RECOMMENDED: three-inch-long'],
  ])('quotes what %s %s prints', async (command, scenario, begin) => {
    const { out } = await call([command, scenario, '--no-files', '--workers', '1'], {
      cwd: folder(),
    })
    const [quotation] = blocks('text').filter((block) => block.includes(begin))
    const flowing = (text: string) => text.replace(/[\s\u2009]+/g, ' ').trim()
    expect(flowing(out)).toContain(flowing(quotation!))
  })

  it('quotes what its sweep prints', async () => {
    const [command] = blocks('sh').filter((block) => block.startsWith('tapeshift sweep'))
    const { out } = await call([...words(command!.trim()), '--no-files', '--workers', '1'], {
      cwd: folder(),
    })
    const [quotation] = blocks('text').filter((block) => block.includes('RECOMMENDED: line.infeed.length'))
    const flowing = (text: string) => text.replace(/[\s\u2009]+/g, ' ').trim()
    expect(flowing(out)).toContain(flowing(quotation!))
  })

  it('explains every measure', async () => {
    const cwd = folder()
    const unsaid: string[] = []
    for (const name of demos) {
      const { out } = await call(
        [
          'run',
          `scenarios/${name}.yaml`,
          '--json',
          '--no-files',
          '--shifts',
          '2',
          '--full',
          '--workers',
          '1',
        ],
        { cwd },
      )
      const result = JSON.parse(out) as RunResult
      const keys = [
        ...Object.keys(result.measures),
        ...Object.values(result.arrivals).flatMap((each) => Object.keys(each)),
        ...Object.values(result.crew).flatMap((each) => Object.keys(each)),
        ...Object.values(result.equipment).flatMap((each) => [
          ...Object.keys(each.measures),
          ...Object.values(each.heads ?? {}).flatMap((head) => Object.keys(head)),
          ...Object.keys(each.effectiveness ?? {}),
        ]),
      ]
      // `jams-stop` and the like are explained once, by their ending
      for (const key of new Set(keys)) {
        const stem = key
          .replace(/^(cost-per-1000|time-in-system)-/, '-')
          .replace(
            /^(jams|roll-changes|tape-breaks|size-settings|breakdowns|blade-services)-(stop|wait|in-breaks)$/,
            '-$2',
          )
          .replace(/^to-.*/, 'to-TARGET')
        if (!readme.includes(`${key}\``) && !readme.includes(`\`${stem}\``) && !readme.includes(`.${stem}\``))
          unsaid.push(key)
      }
    }
    expect(unsaid).toEqual([])
  })
})
