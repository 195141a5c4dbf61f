/** `tapeshift run` as its user meets it. */
import { existsSync, mkdirSync, readdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs'
import path from 'node:path'
import { parse as parseCsv } from 'csv-parse/sync'
import { describe, expect, it } from 'vitest'
import { parse } from 'yaml'
import type { RunResult } from '../../src/questions/run/document.js'
import { call, smallLine } from './in-process.js'

const one = ['--full', '--workers', '1']

describe('tapeshift run', () => {
  it('prints the report, writes its files and ends by naming the report', async () => {
    const { code, out, err, cwd } = await call(['run', '-', ...one], { stdin: smallLine })
    expect(err).toBe('')
    expect(code).toBe(0)
    expect(out).toContain('Small line')
    expect(out).toMatch(/Throughput: \d+\.\d+ ± \d+\.\d+ cases\/min/)
    expect(out).toMatch(/reaches its target of 9 cases\/min in \d+ % \(\d+ to \d+ %\) of the shifts/)
    expect(out.trimEnd().split('\n').at(-1)).toBe('Report: out/stdin-run/report.html')
    expect(out).not.toMatch(/NaN|undefined|Infinity/)
    const folder = path.join(cwd, 'out/stdin-run')
    expect(readdirSync(folder).sort()).toEqual([
      'charts',
      'report.html',
      'result.json',
      'scenario.yaml',
      'shifts.csv',
      'try.html',
    ])
    expect(readdirSync(path.join(folder, 'charts')).sort()).toEqual([
      'demand.png',
      'held.png',
      'losses.png',
      'output.png',
      'states.png',
      'tape.png',
    ])
  })

  it('prints the same report when it writes no files', async () => {
    const { out, cwd } = await call(['run', '-', ...one], { stdin: smallLine })
    const printed = await call(['run', '-', '--no-files', ...one], { stdin: smallLine, cwd })
    expect(`${printed.out}\nReport: out/stdin-run/report.html\n`).toBe(out)
  })

  it('gives the same document as a file and on standard output, with nothing else there', async () => {
    const { out, cwd } = await call(['run', '-', '--json', ...one], { stdin: smallLine })
    const document = JSON.parse(out) as RunResult
    expect(readFileSync(path.join(cwd, 'out/stdin-run/result.json'), 'utf8')).toBe(out)
    expect(document.format).toBe('tapeshift-result/1')
    expect(document.made).toMatchObject({
      seed: 'tapeshift',
      shifts: 12,
      confidence: 0.95,
      scenario: { title: 'Small line' },
    })
    expect(document.measures.throughput).toMatchObject({ n: 12, unit: 'cases/s' })
    expect(Object.keys(document.equipment)).toEqual(['infeed', 'sealer', 'end'])
    expect(document.equipment.sealer!.heads!.top).toHaveProperty('tape')
    expect(document.crew.operators!.busy!.mean).toBeGreaterThan(0)
    expect(out).not.toMatch(/NaN|Infinity/)
  })

  it('writes one row a shift, whose means are the figures of the report', async () => {
    const { out, cwd } = await call(['run', '-', '--json', ...one], { stdin: smallLine })
    const document = JSON.parse(out) as RunResult
    const rows = parseCsv(readFileSync(path.join(cwd, 'out/stdin-run/shifts.csv'), 'utf8'), {
      columns: true,
    }) as Record<string, string>[]
    expect(rows).toHaveLength(12)
    const mean = rows.reduce((sum, row) => sum + Number(row['throughput [cases/s]']), 0) / 12
    expect(mean).toBeCloseTo(document.measures.throughput!.mean!, 12)
    expect(rows.map((row) => Number(row['output [cases]']))).toEqual(document.outputs)
  })

  it('writes the scenario as resolved: it gives the same result again', async () => {
    const first = await call(
      ['run', '-', '--json', '--set', 'line.infeed.length=4 m', '--seed', 'again', ...one],
      { stdin: smallLine },
    )
    const resolved = readFileSync(path.join(first.cwd, 'out/stdin-run/scenario.yaml'), 'utf8')
    expect(resolved).toContain('width: 48 mm # assumed: common practice, no source')
    expect(parse(resolved)).toMatchObject({ line: { infeed: { length: '4 m' } }, study: { seed: 'again' } })
    const second = await call(['run', '-', '--json', ...one], { stdin: resolved })
    const [a, b] = [first, second].map(({ out }) => JSON.parse(out) as RunResult)
    expect(b!.measures).toEqual(a!.measures)
    expect(b!.equipment).toEqual(a!.equipment)
    expect(b!.made.scenario.sha256).toBe(a!.made.scenario.sha256)
  })

  it('a variant is the base with its changes', async () => {
    const text = `${smallLine}variants: {long: {set: {line.infeed.length: 12 m}}}\n`
    const variant = await call(['run', '-', '--json', '--no-files', '--variant', 'long', ...one], {
      stdin: text,
    })
    const set = await call(['run', '-', '--json', '--no-files', '--set', 'line.infeed.length=12 m', ...one], {
      stdin: text,
    })
    const [a, b] = [variant, set].map(({ out }) => JSON.parse(out) as RunResult)
    expect(a!.equipment).toEqual(b!.equipment)
    expect(a!.made.repeat).toBe('tapeshift run - --variant long --shifts 12 --seed tapeshift')
  })

  it('writes nothing with --no-files, says nothing with --quiet', async () => {
    const { code, out, err, cwd } = await call(['run', '-', '--quiet', '--no-files', ...one], {
      stdin: smallLine,
    })
    expect([code, out, err]).toEqual([0, '', ''])
    expect(existsSync(path.join(cwd, 'out'))).toBe(false)
  })

  it('reports in feet and pounds where the scenario asks for it', async () => {
    const { out } = await call(['run', '-', '--no-files', ...one], { stdin: `${smallLine}display: us\n` })
    expect(out).toMatch(/ ft of tape a shift/)
    expect(out).toMatch(/ lb\)/)
  })

  it('without a target gives no verdict, and says how to get one', async () => {
    const { out } = await call(['run', '-', '--no-files', ...one], {
      stdin: smallLine.replace('target: 9 cases/min\n', ''),
    })
    expect(out).toContain('No target is given')
  })

  it('sets bold text on a terminal, not with NO_COLOR or TERM=dumb', async () => {
    const stdin = smallLine
    const boldOn = '\u001b['
    expect((await call(['run', '-', '--no-files', ...one], { stdin, isTerminal: true })).out).toContain(
      boldOn,
    )
    expect(
      (await call(['run', '-', '--no-files', ...one], { stdin, isTerminal: true, env: { NO_COLOR: '1' } }))
        .out,
    ).not.toContain(boldOn)
    expect(
      (await call(['run', '-', '--no-files', ...one], { stdin, isTerminal: true, env: { TERM: 'dumb' } }))
        .out,
    ).not.toContain(boldOn)
    expect((await call(['run', '-', '--no-files', ...one], { stdin })).out).not.toContain(boldOn)
  })

  it('stops at an interrupt with exit code 130, says what is kept, and goes on from there', async () => {
    const { code, err, cwd } = await call(['run', '-', '--shifts', '100000', ...one], {
      stdin: smallLine,
      interruptAfter: 100,
    })
    expect(code).toBe(130)
    const kept = Number(/interrupted after (\d+) of 100000 shifts; they are saved in/.exec(err)?.[1])
    expect(kept).toBeGreaterThan(0)
    const journal = path.join(cwd, 'out/stdin-run/journal.ndjson')
    expect(readFileSync(journal, 'utf8').trimEnd().split('\n')).toHaveLength(kept + 1)
    expect(readdirSync(path.join(cwd, 'out/stdin-run'))).toEqual(['journal.ndjson'])
  })

  it('draws times from a CSV beside the scenario, and copies it to the results', async () => {
    const { cwd } = await call(['--help'])
    writeFileSync(path.join(cwd, 'times.csv'), 'pack\n5\n7\n')
    writeFileSync(
      path.join(cwd, 'line.yaml'),
      smallLine.replace('{exponential: {mean: 6 s}}', '{observed: {file: times.csv, column: pack, unit: s}}'),
    )
    const { code, out, err } = await call(['run', 'line.yaml', ...one], { cwd })
    // how far it is, every few seconds, is no complaint
    expect([code, err.replace(/^simulated .*\n/gm, '')]).toEqual([0, ''])
    expect(out).toContain('Report: out/line-run/report.html')
    const again = await call(['run', 'out/line-run/scenario.yaml', '--no-files', ...one], { cwd })
    expect(again.code).toBe(0)
  })
})

describe('hostile names', () => {
  it('in a title are text in the page, in the terminal and in the table', async () => {
    const text = smallLine.replace('title: Small line', 'title: "<script>alert(1)</script>\\u001b[31m =cmd"')
    const { out, cwd } = await call(['run', '-', ...one], { stdin: text })
    expect(out).not.toContain('\u001b')
    const page = readFileSync(path.join(cwd, 'out/stdin-run/report.html'), 'utf8')
    expect(page).not.toContain('<script>alert')
    expect(page).toContain('&lt;script&gt;')
  })
})

describe('bad input', () => {
  const refused = async (argv: string[], options: Parameters<typeof call>[1] = {}) => {
    const { code, out, err } = await call(argv, options)
    expect(out).toBe('')
    expect(err).not.toMatch(/\n\s+at .*\.(ts|js)/)
    return [code, err] as const
  }

  it('an invalid scenario ends with 3 and all its findings', async () => {
    const [code, err] = await refused(['run', '-', ...one], {
      stdin: smallLine.replace('400 mm', '400').replace('6 m', '6'),
    })
    expect(code).toBe(3)
    expect(err).toContain('standard input:3:21: cases.a.length: a length needs a unit')
    expect(err).toContain('line.infeed.length')
    expect(err).toContain('2 findings: the scenario was not simulated.')
  })

  it.each([
    [['run'], 'missing required argument'],
    [['run', 'x.yaml', '--shifts', '1000000000'], 'whole number from 2 to 100000'],
    [['run', 'x.yaml', '--shifts', '1'], 'whole number from 2 to 100000'],
    [['run', 'x.yaml', '--shifts', 'ten'], 'whole number from 2 to 100000'],
    [['run', 'x.yaml', '--workers', '0'], 'whole number from 1 to 256'],
    [['run', 'x.yaml', '--shfts', '10'], 'Did you mean --shifts'],
    [['rum', 'x.yaml'], 'Did you mean run'],
    [['run', '.'], 'is a folder'],
  ])('%j is wrong usage: 2', async (argv, words) => {
    const [code, err] = await refused(argv, { stdin: smallLine })
    expect(code).toBe(2)
    expect(err).toContain(words)
  })

  it('--set and --confidence that do not fit end with 3 and name the option', async () => {
    const [code, err] = await refused(['run', '-', '--set', 'line.infed.length=3 m'], { stdin: smallLine })
    expect(code).toBe(3)
    expect(err).toContain('--set line.infed.length=3 m')
    expect(err).toContain('did you mean `infeed`?')
    const [other, words] = await refused(['run', '-', '--confidence', '95'], { stdin: smallLine })
    expect(other).toBe(3)
    expect(words).toContain('--confidence: study.confidence: a share needs a unit')
  })

  it('results never overwrite what the scenario is read from: 2', async () => {
    const { cwd } = await call(['--help'])
    const observed = (file: string) =>
      smallLine.replace('{exponential: {mean: 6 s}}', `{observed: {file: ${file}, column: a, unit: s}}`)
    writeFileSync(path.join(cwd, 'scenario.yaml'), smallLine)
    writeFileSync(path.join(cwd, 'times.csv'), 'a\n6\n')
    writeFileSync(path.join(cwd, 'shifts.csv'), 'a\n6\n')
    writeFileSync(path.join(cwd, 'a.yaml'), observed('times.csv'))
    writeFileSync(path.join(cwd, 'b.yaml'), observed('shifts.csv'))
    for (const [argv, words] of [
      [['run', 'scenario.yaml', '--out', '.'], 'would overwrite scenario.yaml'],
      [['run', 'a.yaml', '--out', '.'], 'would overwrite times.csv'],
      [['run', 'b.yaml'], 'but the results use this name'],
      [['run', 'a.yaml', '--out', ''], '--out needs the name of a folder'],
    ] as const) {
      const [code, err] = await refused([...argv, ...one], { cwd })
      expect([argv, code]).toEqual([argv, 2])
      expect(err).toContain(words)
    }
    expect(readFileSync(path.join(cwd, 'scenario.yaml'), 'utf8')).toBe(smallLine)
    expect(readFileSync(path.join(cwd, 'times.csv'), 'utf8')).toBe('a\n6\n')
  })

  it('control characters of a CSV do not reach the terminal', async () => {
    const { cwd } = await call(['--help'])
    writeFileSync(path.join(cwd, 'times.csv'), 'a\n\u001b[31mq\n')
    writeFileSync(
      path.join(cwd, 'line.yaml'),
      smallLine.replace('{exponential: {mean: 6 s}}', '{observed: {file: times.csv, column: a, unit: s}}'),
    )
    const [code, err] = await refused(['run', 'line.yaml', ...one], { cwd })
    expect(code).toBe(3)
    expect(err).not.toContain('\u001b')
  })

  it('a file that is not there ends with 5', async () => {
    const [code, err] = await refused(['run', 'none.yaml'])
    expect(code).toBe(5)
    expect(err).toContain('cannot read none.yaml: there is no such file or folder')
  })

  it('a folder that cannot be written ends with 5, names it, and leaves nothing half-written', async () => {
    const { cwd } = await call(['--help'])
    writeFileSync(path.join(cwd, 'taken'), 'a file where a folder should be')
    const { code, err } = await call(['run', '-', '--out', 'taken/here', ...one], { cwd, stdin: smallLine })
    expect(code).toBe(5)
    expect(err).toMatch(/taken is a file, but results need a folder/)
    expect(readdirSync(cwd)).toEqual(['taken'])
  })

  it('CSV files outside the folder of the scenario are refused, links included', async () => {
    const { cwd } = await call(['--help'])
    const folder = path.join(cwd, 'plant')
    mkdirSync(folder)
    writeFileSync(path.join(cwd, 'secret.csv'), 'a\n1\n')
    symlinkSync(path.join(cwd, 'secret.csv'), path.join(folder, 'link.csv'))
    for (const file of ['../secret.csv', path.join(cwd, 'secret.csv'), 'link.csv']) {
      writeFileSync(
        path.join(folder, 'line.yaml'),
        smallLine.replace('{exponential: {mean: 6 s}}', `{observed: {file: ${file}, column: a, unit: s}}`),
      )
      const [code, err] = await refused(['run', 'plant/line.yaml'], { cwd })
      expect(code).toBe(3)
      expect(err).toMatch(/outside the folder of the scenario/)
    }
  })
})
