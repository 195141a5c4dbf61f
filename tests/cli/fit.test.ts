/** `tapeshift fit`: what it prints and writes of the demo record, the scenario that it fills, and what it refuses. */
import { cpSync, existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { beforeAll, describe, expect, it } from 'vitest'
import { parse } from 'yaml'
import type { FitResult } from '../../src/questions/fit/document.js'
import { reportOf } from '../../src/questions/report-of-document.js'
import { terminalReport } from '../../src/report/terminal.js'
import { jamsOf } from '../../src/scenario/jams.js'
import { meanOf } from '../../src/scenario/law.js'
import { demoFolder } from '../demo.js'
import { line, type Stop, stopRows } from '../questions/fits.js'
import { truth } from '../record/plant.js'
import { recordText } from '../record/texts.js'
import { fitted, folderOf } from './fit-folder.js'
import { type Called, call } from './in-process.js'

const read = (...names: string[]) => readFileSync(path.join(...names), 'utf8')

describe('the demo record', () => {
  const cwd = mkdtempSync(path.join(tmpdir(), 'tapeshift-fit-'))
  let called: Called
  let result: FitResult
  beforeAll(async () => {
    cpSync(path.join(demoFolder, 'lindmoor-record'), cwd, { recursive: true })
    called = await call(['fit', 'record.yaml', '--into', 'line-4.yaml', '--write', 'new.yaml'], {
      cwd,
      width: 80,
    })
    result = JSON.parse(read(cwd, 'out/record-fit/result.json')) as FitResult
  }, 120_000)

  it('is fitted: 0, with values, what they rest on and what was done', () => {
    expect([called.code, called.err]).toEqual([0, ''])
    expect(called.out.split('\n')[2]).toMatch(/^FITTED: \d+ of 13 inputs have a value in this record/)
    const tables = terminalReport(reportOf(result), { bold: (text) => text, width: 100 })
    expect(tables).toContain('Values for the scenario')
    expect(tables).toMatch(/358 in \d+ cases/)
    expect(tables).toContain('1 stop that ends before the')
    expect(called.out).toContain(
      'Report: out/record-fit/report.html\nScenario: new.yaml\nNext: tapeshift check new.yaml\n',
    )
    expect(result.inputs.map(({ path: of }) => of)).toContain('line.palletiser.every.stop')
    expect(result.record).toMatchObject({ shifts: 64, zone: 'Europe/Berlin', heldOut: [] })
    expect(result.record.files.map(({ file, rows }) => [file, rows])).toEqual([
      ['shifts.csv', 64],
      ['stops.csv', 3134],
      ['cases.csv', 78_853],
    ])
  })

  it('prints one screen of 80 columns, with what the files are called', () => {
    const lines = called.out.trimEnd().split('\n')
    expect(lines.length).toBeLessThanOrEqual(28)
    expect(lines.filter((each) => each.length > 80)).toEqual([])
    expect(called.out).toContain('\nSafety    Estimates only')
    expect(called.out).toContain('\nAll tables: --full.\nReport: ')
    // the fewest events first: it never broke down
    expect(called.out).toMatch(
      /fewest events first.*\ninput +rate or mean\nline\.palletiser\.breakdowns\.after +0 \(/,
    )
    expect(called.out.replace(/\s+/g, ' ')).toMatch(/Record \d+ of 82 051 rows changed or left out\./)
  })

  it('stands in files: values by path, a page, and pictures', () => {
    const folder = path.join(cwd, 'out/record-fit')
    expect(readdirSync(folder).sort()).toEqual(['charts', 'fitted.yaml', 'report.html', 'result.json'])
    const { values } = parse(read(folder, 'fitted.yaml')) as { values: Record<string, unknown> }
    for (const { path: of, value, also } of result.inputs) {
      expect(values[of]).toEqual(value === null ? undefined : parse(value))
      for (const [other, text] of Object.entries(also)) expect(values[other]).toEqual(parse(text))
    }
    const charts = readdirSync(path.join(folder, 'charts'))
    expect(charts).toContain('quantiles-line-sealer-jams-clear.png')
    for (const chart of charts)
      expect(
        readFileSync(path.join(folder, 'charts', chart))
          .subarray(1, 4)
          .toString(),
      ).toBe('PNG')
  })

  it('leaves a scenario as it was but for the values, and a comment above each', () => {
    const before = read(cwd, 'line-4.yaml').split('\n')
    const after = read(cwd, 'new.yaml').split('\n')
    const kept = after.filter((each) => !/^ *# from the record/.test(each))
    expect(kept).toHaveLength(before.length)
    const changed = before.flatMap((each, index) => (each === kept[index] ? [] : [each.trim().split(':')[0]]))
    expect(changed).toEqual([
      ...['bottles', 'refills', 'time-between', 'jams', 'breakdowns'],
      ...['roll-change', 'tape-breaks', 'every', 'breakdowns'],
    ])
    // what stood behind a value stands there still
    for (const [index, each] of before.entries()) {
      const behind = /#.*$/.exec(each)?.[0]
      if (behind) expect(kept[index]).toContain(behind)
    }
  })

  it('makes a scenario that passes its check and runs', async () => {
    const check = await call(['check', 'new.yaml'], { cwd })
    expect(check.code, check.err).toBe(0)
    const run = await call(['run', 'new.yaml', '--shifts', '3', '--workers', '1', '--no-files', '--quiet'], {
      cwd,
    })
    expect([run.code, run.err]).toEqual([0, ''])
  })

  it('makes its page again from the result, to the last byte', async () => {
    const again = await call(['report', 'out/record-fit/result.json', '--out', 'again.html'], { cwd })
    expect(again.code, again.err).toBe(0)
    expect(read(cwd, 'again.html') === read(cwd, 'out/record-fit/report.html')).toBe(true)
  })

  it('is not written over what is there: 5, before anything is reckoned', async () => {
    const before = read(cwd, 'new.yaml')
    const { code, out, err } = await call(
      ['fit', 'record.yaml', '--into', 'line-4.yaml', '--write', 'new.yaml', '--no-files'],
      { cwd },
    )
    expect([code, out]).toEqual([5, ''])
    expect(err).toContain('new.yaml: the file exists')
    expect(read(cwd, 'new.yaml')).toBe(before)
  })

  // how often such records hold the truth is for tests/studies/record-recovery.test.ts: this is one of them. Its gaps between cases lie 2.5 standard errors
  // above the truth, before anybody fits them: that interval misses
  it('holds the truths within the intervals that it prints, as often as these say', () => {
    const { sealer, palletiser } = truth.line
    if (sealer?.type !== 'sealer' || palletiser?.type !== 'station') throw new Error('another line')
    const jams = jamsOf(sealer.jams)[0]!.keys
    const breaks = sealer['tape-breaks']!
    const breakdowns = sealer.breakdowns!
    const truths: [string, number][] = [
      ['line.sealer.jams.chance', jams.chance],
      ['line.sealer.jams.clear', meanOf(jams.clear)],
      ['line.sealer.roll-change.time', meanOf(sealer['roll-change'].time)],
      ['line.sealer.tape-breaks.chance', breaks.chance],
      ['line.sealer.tape-breaks.fix', meanOf(breaks.fix)],
      ['line.sealer.breakdowns.after', 1 / meanOf(breakdowns.after)],
      ['line.sealer.breakdowns.repair', meanOf(breakdowns.repair)],
      ['line.palletiser.every.stop', meanOf(palletiser.every!.stop)],
      ['line.palletiser.breakdowns.after', 0],
      ['arrivals.filling.time-between', meanOf(truth.arrivals.filling!['time-between']!)],
    ]
    const missed = truths.flatMap(([of, is]) => {
      const { rate, mean } = result.inputs.find((each) => each.path === of)!
      const { low, high } = (rate ?? mean)!
      return (low ?? 0) <= is && is <= (high ?? Infinity) ? [] : [[of, low, is, high]]
    })
    // of ten intervals at 95 % three or more miss in 1.2 % of such records
    expect(missed.map(([of]) => of)).toEqual(['arrivals.filling.time-between'])
  })
})

describe('tapeshift fit', () => {
  it('prints the document alone with --json, nothing with --quiet, and leaves no file with --no-files', async () => {
    const cwd = folderOf()
    const json = await fitted(cwd, '--json', '--no-files')
    expect([json.code, json.err]).toEqual([0, ''])
    expect(JSON.parse(json.out)).toMatchObject({ format: 'tapeshift-result/1', command: 'fit' })
    const quiet = await fitted(cwd, '--quiet', '--no-files')
    expect([quiet.code, quiet.out, quiet.err]).toEqual([0, '', ''])
    expect(existsSync(path.join(cwd, 'out'))).toBe(false)
  })

  it('gives the same bytes again, and other days for another seed', async () => {
    const cwd = folderOf()
    const held = ['--hold-out', '30 %', '--quiet', '--out']
    for (const [out, seed] of [
      ['a', '1'],
      ['b', '1'],
      ['c', '2'],
    ] as const)
      expect((await fitted(cwd, ...held, out, '--seed', seed)).code).toBe(0)
    for (const name of [
      'result.json',
      'fitted.yaml',
      'report.html',
      'charts/trend-line-sealer-jams-chance.png',
    ])
      expect(
        readFileSync(path.join(cwd, 'a', name)).equals(readFileSync(path.join(cwd, 'b', name))),
        name,
      ).toBe(true)
    const days = (out: string) => (JSON.parse(read(cwd, out, 'result.json')) as FitResult).record.heldOut
    expect(days('a')).toHaveLength(2)
    expect(days('c')).not.toEqual(days('a'))
  })

  it.each([
    [['--into', 'line.yaml'], 'give both'],
    [['--write', 'new.yaml'], 'give both'],
    [['--out', ''], 'need a name'],
    [['--into', '-', '--write', 'new.yaml'], '--into needs a file'],
    [['--hold-out', '95 %'], 'from 0 % to 90 %'],
    [['--hold-out', 'some'], '--hold-out some'],
    [['--confidence', '20 %'], 'from 50 % to 99.99 %'],
  ])('refuses %j: 2', async (options, words) => {
    const { code, out, err } = await fitted(folderOf(), '--no-files', ...options)
    expect([code, out]).toEqual([2, ''])
    expect(err).toContain(words)
  })

  it('puts no result in the place of what it reads or was asked to write: 2', async () => {
    const cwd = folderOf({ 'fitted.yaml': recordText({ times: 'iso', 'rounded-to': '0 s' }) })
    const before = read(cwd, 'fitted.yaml')
    const over = await call(['fit', 'fitted.yaml', '--out', '.'], { cwd })
    expect(over.code).toBe(2)
    expect(over.err).toContain('would overwrite fitted.yaml: choose another --out')
    expect(read(cwd, 'fitted.yaml')).toBe(before)
    const written = await fitted(cwd, '--into', 'line.yaml', '--write', 'x/result.json', '--out', 'x')
    expect(written.code).toBe(2)
  })

  it('writes times that no law fits beside the scenario that draws on them', async () => {
    const lumps = Array.from(
      { length: 90 },
      (_, n): Stop => [1 + (n % 8), 22_000 + 300 * n, [20, 100, 250][n % 3]!],
    )
    const cwd = folderOf({ 'stops.csv': stopRows(lumps) })
    mkdirSync(path.join(cwd, 'new'))
    const asked = ['--into', 'line.yaml', '--write', 'new/line.yaml', '--quiet', '--no-files']
    const { code, err } = await fitted(cwd, ...asked)
    expect(code, err).toBe(0)
    expect(readdirSync(path.join(cwd, 'new')).sort()).toEqual([
      'line.yaml',
      'observed-line.sealer.jams.clear.csv',
    ])
    expect(parse(read(cwd, 'new/line.yaml')).line.sealer.jams.clear.observed.column).toBe('seconds')
    const run = await call(
      ['run', 'new/line.yaml', '--shifts', '2', '--workers', '1', '--no-files', '--quiet'],
      { cwd },
    )
    expect(run.code, run.err).toBe(0)
    // a file of theirs that is there is not touched, and no half of the others is left
    writeFileSync(path.join(cwd, 'observed-line.sealer.jams.clear.csv'), 'mine')
    const again = await fitted(cwd, '--into', 'line.yaml', '--write', 'other.yaml', '--quiet', '--no-files')
    expect(again.code).toBe(5)
    expect(existsSync(path.join(cwd, 'other.yaml'))).toBe(false)
  })

  it('refuses a scenario without the piece that the record names: 3', async () => {
    const cwd = folderOf({ 'line.yaml': line.replace('  sealer:', '  packer:') })
    const { code, err } = await fitted(cwd, '--into', 'line.yaml', '--write', 'new.yaml')
    expect(code).toBe(3)
    expect(err).toContain('`sealer` does not exist in `line`')
    expect(existsSync(path.join(cwd, 'new.yaml'))).toBe(false)
  })
})
