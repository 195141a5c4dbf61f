/** What commands print first: one screen of 80 columns, its verdict as the first words; all tables with --full. */

import { cpSync, mkdtempSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { describe, expect, it } from 'vitest'
import { demoFolder } from '../demo.js'
import { call, smallLine } from './in-process.js'

const cwd = mkdtempSync(path.join(tmpdir(), 'tapeshift-test-'))
cpSync(demoFolder, cwd, { recursive: true })

const one = ['--no-files', '--workers', '1']
const cases: [command: string, first: RegExp, argv: string[]][] = [
  ['run', /^HOLDS|^NOT SHOWN|^DOES NOT HOLD/, ['soap-works.yaml', '--shifts', '12']],
  ['run', /^HOLDS|^NOT SHOWN|^DOES NOT HOLD/, ['gift-corner.yaml', '--shifts', '12']],
  ['check', /^NOTHING FOUND/, ['soap-works.yaml']],
  ['check', /^NOTHING FOUND/, ['two-sealers.yaml']],
  ['compare', /^RECOMMENDED|^NONE IS SHOWN/, ['tape-choice.yaml', '--shifts', '12']],
  ['compare', /^RECOMMENDED|^NONE IS SHOWN/, ['two-sealers.yaml', '--shifts', '4']],
  [
    'size',
    /^HOLDS|^NOT SHOWN|^DOES NOT HOLD/,
    [
      'soap-works.yaml',
      '--shifts',
      '60',
      '--choose',
      'line.infeed.length=4 m,8 m',
      '--holds',
      '9 cases/min in 90 % of shifts',
    ],
  ],
  [
    'size',
    /^HOLDS|^NOT SHOWN|^DOES NOT HOLD/,
    [
      'gift-corner.yaml',
      '--shifts',
      '60',
      '--choose',
      'line.infeed.length=4 m,8 m',
      '--holds',
      '7 cases/min in 90 % of shifts',
    ],
  ],
  [
    'sweep',
    /^RECOMMENDED|^NONE IS SHOWN|^NOT SHOWN/,
    ['soap-works.yaml', '--shifts', '6', '--vary', 'line.infeed.length=4..8/2 m'],
  ],
  [
    'sweep',
    /^RECOMMENDED|^NONE IS SHOWN|^NOT SHOWN/,
    ['gift-corner.yaml', '--shifts', '6', '--vary', 'line.infeed.length=4..8/2 m'],
  ],
]

/** Words that are nobody's in the trade. */
const notSaid = /\bmend\b|leave it|of it\b|held in|not passed by|whoever|NaN|undefined|\[object|Infinity/

describe('the first screen', () => {
  it.each(cases)(
    '%s: begins with %s (%j)',
    async (command, first, argv) => {
      const asked = [command, ...argv, ...(command === 'check' ? [] : one)]
      const { out } = await call(asked, { cwd, width: 80 })
      const lines = out.trimEnd().split('\n')
      expect(lines.length).toBeLessThanOrEqual(26)
      expect(lines.filter((line) => line.length > 80)).toEqual([])
      expect(lines[2]).toMatch(first)
      expect(out.replace(/\s+/g, ' ')).not.toMatch(notSaid)
      expect(out).toContain('\nSafety    Estimates only')
      expect(lines.at(-1)).toContain('--full')
    },
    120_000,
  )

  it('--full prints all tables', async () => {
    const { out } = await call(['run', '-', ...one, '--full'], { stdin: smallLine })
    for (const title of [
      'Figures of the line',
      'Where output is lost, cases a shift',
      'Hand calculation and simulation',
      'Limits',
    ])
      expect(out).toContain(`\n${title}`)
  })

  it('is as wide as 80 where neither terminal nor environment tells, or tells less than 40', async () => {
    const at = async (width: number | undefined, columns?: string) => {
      const env = columns === undefined ? {} : { COLUMNS: columns }
      const { out } = await call(['check', '-'], { stdin: smallLine, width, env })
      return { out, longest: Math.max(...out.split('\n').map((line) => line.length)) }
    }
    const usual = await at(80)
    expect(usual.longest).toBeLessThanOrEqual(80)
    for (const width of [undefined, 0, 1, 12, 39]) expect((await at(width)).out).toBe(usual.out)
    for (const columns of ['0', '1', '', '-5', 'wide'])
      expect((await at(undefined, columns)).out).toBe(usual.out)
    expect((await at(undefined, '40')).longest).toBeLessThanOrEqual(40)
    expect((await at(60)).longest).toBeLessThanOrEqual(60)
    // lines of more than 120 letters are hard to read
    expect((await at(undefined, '200')).out).toBe((await at(120)).out)
    expect((await at(200)).longest).toBeLessThanOrEqual(120)
    // what the environment asks for comes first
    expect((await at(200, '60')).out).toBe((await at(60)).out)
  })

  it('has colour on a terminal alone, and the word always', async () => {
    const at = async (env: Record<string, string>, isTerminal = true) =>
      (
        await call(['run', '-', ...one, '--set', 'target=20 cases/min'], {
          stdin: smallLine,
          isTerminal,
          env,
        })
      ).out
    expect(await at({})).toContain('\u001b[31mDOES NOT HOLD\u001b[39m')
    for (const out of [await at({ NO_COLOR: '1' }), await at({ TERM: 'dumb' }), await at({}, false)]) {
      expect(out).not.toContain('\u001b')
      expect(out).toContain('\nDOES NOT HOLD the target of 20 cases/min')
    }
  })

  it('never calls held what check calls impossible', async () => {
    // the target is met at the rate of the belts, but the roll is larger than its drum
    const stdin = smallLine
      .replace('target: 9', 'target: 5')
      .replace('type: sealer,', 'type: sealer, heads: {top: {drum: 100 mm}},')
    const { out, code } = await call(['run', '-', ...one], { stdin })
    expect(code).toBe(3)
    expect(out).toMatch(/\nNOT SHOWN: by the simulation the line would hold/)
    expect(out.replace(/\s+/g, ' ')).toContain(
      'but it cannot work as described: the roll is larger than the drum',
    )
    expect(out.replace(/\s+/g, ' ')).toMatch(/ Errors .*\(help: roll-does-not-fit/)
    expect(out).toContain('Fix the errors first')
  })

  it.each([
    [300, 180],
    [10_000, 6000],
  ])(
    'check groups what is so of many of %d cases, counts them all and names the worst three',
    async (all, low) => {
      // legs of 70 mm meet on cases below 140 mm: six of ten, and the lowest are the worst
      const rows = Array.from(
        { length: all },
        (_, at) => `k${at + 1},400,300,${at < low ? (at >= 6 && at < 9 ? 90 : 120) : 260}`,
      )
      writeFileSync(path.join(cwd, `kinds-${all}.csv`), ['name,L,W,H', ...rows].join('\n'))
      const stdin = smallLine.replace(
        /cases: .*/,
        `cases: {file: kinds-${all}.csv, columns: {name: name, length: L, width: W, height: H}, unit: mm}`,
      )
      const { out, code } = await call(['check', '-'], { cwd, stdin, width: 80 })
      expect(code).toBe(3)
      const text = out.replace(/[\s\u2009]+/g, ' ')
      const number = (value: number) => String(value).replace(/\B(?=(\d{3})+$)/, ' ')
      expect(text).toContain(
        `Errors ${number(low)} of ${number(all)} cases, worst k7, k8 and k9: The case k7 is 90 mm`,
      )
      expect(text).not.toContain('are told')
      expect(out.trimEnd().split('\n').length).toBeLessThanOrEqual(25)
    },
  )

  it('without a target says so', async () => {
    const { out } = await call(['run', '-', ...one], { stdin: smallLine.replace(/target.*\n/, '') })
    expect(out).toMatch(/\nNO TARGET is given: the output is \d/)
  })
})
