/** What commands print first: one screen of 80 columns, its verdict as the first words; all tables with --full. */

import { cpSync, mkdtempSync } from 'node:fs'
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
      expect(lines.length).toBeLessThanOrEqual(30)
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

  it('is as wide as 80 where the terminal does not tell, or tells less than 40', async () => {
    const at = async (width: number | undefined) =>
      (await call(['run', '-', ...one], { stdin: smallLine, width })).out
    const usual = await at(80)
    expect(await at(12)).toBe(usual)
    expect(await at(undefined)).toBe(usual)
    expect(await at(60)).not.toBe(usual)
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
    expect(out).toMatch(/\nErrors {4}roll-does-not-fit/)
    expect(out).toContain('Fix the errors first')
  })

  it('check groups what is so of many cases, and counts them all', async () => {
    // legs of 70 mm meet on cases below 140 mm: 60 of these 100
    const kinds = Array.from(
      { length: 100 },
      (_, kind) => `k${kind + 1}: {length: 400 mm, width: 300 mm, height: ${kind < 60 ? 120 : 260} mm}`,
    )
    const stdin = smallLine.replace(/cases: .*/, `cases: {${kinds.join(', ')}}`)
    const { out, code } = await call(['check', '-'], { stdin, width: 80 })
    expect(code).toBe(3)
    expect(out).toContain('legs-meet, 60 of 100 cases, the worst are k1, k2, k3 and 2 more')
    expect(out.trimEnd().split('\n').length).toBeLessThanOrEqual(30)
  })

  it('without a target says so', async () => {
    const { out } = await call(['run', '-', ...one], { stdin: smallLine.replace(/target.*\n/, '') })
    expect(out).toMatch(/\nNO TARGET is given: the line puts out \d/)
  })
})
