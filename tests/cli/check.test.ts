/** `tapeshift check`: the document, the text, exit codes, and what stands in no other place. */
import { cpSync, mkdtempSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { describe, expect, it } from 'vitest'
import type { CheckResult } from '../../src/questions/check/document.js'
import { cautions } from '../../src/trade/cautions.js'
import { demoFolder, demos } from '../demo.js'
import { soundLine } from '../hand/line.js'
import { call } from './in-process.js'

function folderWith(text: string): string {
  const cwd = mkdtempSync(path.join(tmpdir(), 'tapeshift-test-'))
  writeFileSync(path.join(cwd, 'line.yaml'), text)
  return cwd
}

/**
 * 400 x 300 x 300 mm, 12 kg, C flute of 32 lb/in; 24.4 m/min, gap 300 mm; 15 cases/min; 48 mm x 1371 m x 48 um, legs 70 mm;
 * no stops. Each figure below is worked by hand.
 */
const worked = `cases: {box: {length: 400 mm, width: 300 mm, height: 300 mm, weight: 12 kg, flute: C, board: {wall: single, ect: 32 lbf/in}}}
arrivals: {packing: {rate: 15 cases/min}}
line: {sealer: {type: sealer, belt-speed: 24.4 m/min, minimum-gap: 300 mm, roll-change: {time: 0 s}}}
tape: {width: 48 mm, roll: 1371 m, leg: 70 mm, thickness: 48 um, stretch: 0 %, lost-per-roll: 0 m}
shift: {length: 8 h}
`

describe('tapeshift check --json', () => {
  it('gives the worked line, SI with units, in a fixed order', async () => {
    const { code, out, err } = await call(['check', '-', '--json'], { stdin: worked })
    expect([code, err]).toEqual([0, ''])
    const result = JSON.parse(out) as CheckResult
    expect(Object.keys(result)).toEqual([
      'format',
      'command',
      'made',
      'display',
      'canWork',
      'counts',
      'findings',
      'cases',
      'hand',
      'closure',
      'assumed',
      'evidence',
      'exact',
      'cautions',
    ])
    expect([result.format, result.command, result.canWork]).toEqual(['tapeshift-result/1', 'check', true])
    // Item 222 / Rule 41: 32 lb/in single wall carries 65 lb and 75 united inches; the box has 12 kg = 26 lb and 39.4 in
    expect(result.cases.box).toMatchObject({
      given: 'outside',
      united: { value: expect.closeTo(39.37 * 0.0254, 4), unit: 'm' },
      boardRow: {
        name: 'single wall, 65 lb and 75 in',
        weight: { value: expect.closeTo(29.48, 2), unit: 'kg' },
      },
    })
    const hand = result.hand!
    expect(hand.arriving.perShift).toEqual({ value: expect.closeTo(7200, 9), unit: 'cases' })
    expect(hand.pieces.sealer!.rate).toEqual({ value: expect.closeTo(34.857 / 60, 5), unit: 'cases/s' })
    const figure = (measure: string) => hand.rows.find((row) => row.measure === measure)
    expect(figure('measures.tape-per-case')).toMatchObject({ value: expect.closeTo(1.08, 9), unit: 'm/case' })
    expect(figure('equipment.sealer.states.working')).toMatchObject({
      value: expect.closeTo(0.4303, 4),
      unit: 'share',
    })
    expect(hand.tape!.heads[0]!.stripsPerRoll).toEqual({ value: 2538, unit: 'cases' })
    expect(hand.tape!.changes).toEqual({ value: 4, unit: 'count' })
    expect(hand.tape!.mass).toEqual({ value: expect.closeTo(16.9, 1), unit: 'kg' })
    expect(hand.curves[0]!.ceiling).toEqual({ value: expect.closeTo(1 / 0.45, 9), unit: 'cases/s' })
    expect(result.assumed).toContainEqual({
      path: 'line.sealer.bed',
      value: '1.9 m',
      basis: 'from memory, low confidence',
    })
    expect(result.cautions).toEqual(cautions)
  })

  it('gives the same bytes again, and takes no seed into account', async () => {
    const cwd = folderWith(soundLine)
    const first = await call(['check', 'line.yaml', '--json'], { cwd })
    expect((await call(['check', 'line.yaml', '--json'], { cwd })).out).toBe(first.out)
    expect(JSON.parse(first.out).made.repeat).toBe('tapeshift check line.yaml')
  })

  it('has no number that JSON cannot hold: what is without limit is null', async () => {
    const text = `cases: {a: {length: 400 mm, width: 300 mm, height: 250 mm}}
arrivals: {p: {time-between: 5 s}}
line: {split: {type: divert, rule: alternate, to: [one, exit]}, one: {type: station, time: 3 s, waiting-room: unlimited}}
shift: {length: 4 h}
`
    const { code, out } = await call(['check', '-', '--json'], { stdin: text })
    expect(code).toBe(0)
    const { hand, closure } = JSON.parse(out) as CheckResult
    expect(hand!.pieces.split!.rate).toEqual({ value: null, unit: 'cases/s' })
    expect(hand!.buffers[0]!.places).toEqual({ value: null, unit: 'cases' })
    expect([hand!.tape, closure]).toEqual([null, null])
  })

  it('of a scenario that breaks the rules of the format: its findings, and 3', async () => {
    const stdin = worked.replace('tape: {width: 48 mm', 'tape: {width: 72 mm')
    const { code, out, err } = await call(['check', '-', '--json'], { stdin })
    expect([code, err]).toEqual([3, ''])
    const result = JSON.parse(out) as CheckResult
    expect(result).toMatchObject({
      canWork: false,
      hand: null,
      made: null,
      counts: { error: 2, warning: 0, note: 0 },
    })
    expect(result.findings[0]).toMatchObject({
      code: 'conflict',
      severity: 'error',
      path: 'line.sealer.heads.top.takes',
      message: expect.stringContaining('the tape of 72 mm does not fit this head'),
    })
  })
})

describe('tapeshift check as text', () => {
  it.each(demos)('%s: can work, and says what was worked out, assumed and to be careful of', async (name) => {
    const { code, out, err } = await call(['check', path.join(demoFolder, `${name}.yaml`), '--full'])
    expect([code, err]).toEqual([0, ''])
    expect(out).toContain('No error found')
    for (const title of [
      'Cases',
      'Capacity of each piece',
      'What a simulation should find',
      'Tape by head',
      'Rate over belt speed',
      'Assumed',
      'Safety',
    ])
      expect(out).toContain(`\n${title}`)
    const flowing = out.replace(/\s+/g, ' ')
    for (const caution of cautions) expect(flowing).toContain(caution)
    expect(out.split('\n').every((line) => line.length <= 100 || !line.includes(' '))).toBe(true)
    expect(out).not.toMatch(/NaN|undefined|Infinity|null|\[object/)
  })

  it('a demo says by itself that one of its variants cannot work: 3, errors first, with their place', async () => {
    const cwd = mkdtempSync(path.join(tmpdir(), 'tapeshift-test-'))
    cpSync(demoFolder, cwd, { recursive: true })
    const { code, out } = await call(['check', 'soap-works.yaml', '--variant', 'crawling', '--full'], { cwd })
    expect(code).toBe(3)
    expect(out).toContain('This line cannot work as described')
    expect(out.indexOf('Errors: the line cannot work as described')).toBeLessThan(out.indexOf('Warnings'))
    // 6 m/min over the mean pitch of 0.707 m are 8.48 cases/min, and sizes are set in 42 % of the headways: 0.168 s each
    expect(out.replace(/\s+/g, ' ')).toMatch(
      /\[target-above-machine\] line\.sealer\.belt-speed \(soap-works\.yaml:\d+:\d+\) `sealer` passes 8\.29 cases\/min/,
    )
  })

  it('--quiet leaves the findings and one line of caution, which nothing switches off', async () => {
    const { out } = await call(['check', '-', '--quiet'], { stdin: soundLine })
    expect(out).toContain('Notes')
    expect(out).not.toContain('Capacity of each piece')
    expect(out.trimEnd().split('\n').at(-1)).toMatch(/^Safety: /)
  })

  it('prints in the units that the scenario asks for', async () => {
    const { out } = await call(['check', '-', '--set', 'display=us', '--full'], { stdin: soundLine })
    // 24.4 m/min are 80.05 ft/min, 400 mm are 15.75 in
    expect(out).toContain('80.1 ft/min')
    expect(out).toContain('15.75 in')
    // defaults stand as the file would write them
    expect(out.slice(0, out.indexOf('\nAssumed'))).not.toMatch(/\d mm\b|m\/min/)
  })

  it('shows what a hostile name holds as dots', async () => {
    const { out } = await call(['check', '-', '--quiet'], {
      stdin: `title: "a\\u001b[31mb"\n${soundLine.replace(/^title.*\n/, '')}`,
    })
    expect(out).not.toContain('\u001b')
    expect(out).toContain('a·[31mb')
  })

  it('a scenario that cannot be read goes to standard error: 3; a file that is not there: 5', async () => {
    const broken = await call(['check', '-'], { stdin: 'cases: {}' })
    expect([broken.code, broken.out]).toEqual([3, ''])
    expect(broken.err).toContain('[missing-key]')
    expect((await call(['check', 'nowhere.yaml'])).code).toBe(5)
  })

  it('help begins with examples', async () => {
    const { code, out } = await call(['check', '--help'])
    expect(code).toBe(0)
    expect(out).toMatch(/^Examples:\n {2}tapeshift check line\.yaml/)
  })
})
