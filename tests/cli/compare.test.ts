/** `tapeshift compare` as its user meets it. */
import { execFileSync } from 'node:child_process'
import { existsSync, readdirSync, readFileSync } from 'node:fs'
import path from 'node:path'
import { parse as parseCsv } from 'csv-parse/sync'
import { describe, expect, it } from 'vitest'
import type { CompareResult } from '../../src/questions/compare/document.js'
import { compare, folder, json, one, text } from './compare-line.js'
import { call } from './in-process.js'

describe('tapeshift compare', () => {
  it('tells each variant against the base, writes its files and ends by naming the report', async () => {
    const { code, out, err, cwd } = await call(['compare', 'line.yaml', ...one], { cwd: folder() })
    expect([code, err]).toEqual([0, ''])
    expect(out).toMatch(/^Small line\n3 designs on the same random numbers, 12 shifts of 1 h each/)
    expect(out).toMatch(/quick .*has \d+\.\d+ ± \d+\.\d+ cases\/min\s+more\s+throughput/)
    expect(out).toContain('Against the base')
    expect(out.trimEnd().split('\n').at(-1)).toBe('Report: out/line-compare/report.html')
    expect(out).not.toMatch(/NaN|undefined|Infinity|\[object/)
    expect(readdirSync(path.join(cwd, 'out/line-compare')).sort()).toEqual([
      'charts',
      'differences.csv',
      'report.html',
      'result.json',
      'scenario.yaml',
      'shifts.csv',
      'try.html',
    ])
    // places where a line may break are no letters
    const page = readFileSync(path.join(cwd, 'out/line-compare/report.html'), 'utf8').replaceAll('<wbr>', '')
    for (const words of ['a quick end', 'longer', 'Against the base', 'line.end.time = 3 s'])
      expect(page).toContain(words)
  })

  it('writes a row per design and shift, and one per difference, unrounded', async () => {
    const { cwd, out } = await call(['compare', 'line.yaml', '--json', ...one], { cwd: folder() })
    const document = JSON.parse(out) as CompareResult
    const read = (name: string) =>
      parseCsv(readFileSync(path.join(cwd, 'out/line-compare', name), 'utf8'), { columns: true }) as Record<
        string,
        string
      >[]
    const rows = read('shifts.csv')
    expect(rows.map(({ variant, shift }) => [variant, shift])).toEqual(
      ['base', 'quick', 'longer'].flatMap((name) =>
        Array.from({ length: 12 }, (_, index) => [name, String(index + 1)]),
      ),
    )
    const meanOf = (name: string) =>
      rows
        .filter(({ variant }) => variant === name)
        .reduce((sum, row) => sum + Number(row['throughput [cases/s]']), 0) / 12
    const differences = read('differences.csv')
    for (const name of ['quick', 'longer']) {
      const row = differences.find(({ variant, measure }) => variant === name && measure === 'throughput')!
      const figure = document.differences[name]!.throughput!
      expect(Number(row.difference)).toBe(figure.mean)
      expect(Number(row.difference)).toBeCloseTo(meanOf(name) - meanOf('base'), 12)
      expect([Number(row.low), Number(row.high), Number(row.family)]).toEqual([
        figure.low,
        figure.high,
        figure.family,
      ])
      expect(row.against).toBe('base')
      expect(row.shown).toBe(figure.isShown ? 'yes' : 'no')
    }
    // a number below 0 is a number, and no formula
    expect(differences.some(({ difference }) => difference!.startsWith('-'))).toBe(true)
    expect(
      differences.every(({ difference }) => difference === '' || Number.isFinite(Number(difference))),
    ).toBe(true)
    expect(differences).toHaveLength(
      Object.values(document.differences).reduce((sum, each) => sum + Object.keys(each).length, 0),
    )
  })

  it('the scenario that it writes gives the same figures again, what-ifs left to the command line', async () => {
    const { cwd, out } = await call(['compare', 'line.yaml', '--json', ...one], { cwd: folder() })
    const again = await call(['compare', 'out/line-compare/scenario.yaml', '--json', '--no-files', ...one], {
      cwd,
    })
    const [a, b] = [out, again.out].map((each) => JSON.parse(each) as CompareResult)
    expect(b!.variants).toEqual(a!.variants)
    expect(b!.differences).toEqual(a!.differences)
  })

  it('compares with those that are named, in the order of the file, and what-ifs last', async () => {
    const named = async (...argv: string[]) => Object.keys((await json(argv)).result.variants)
    expect(await named()).toEqual(['base', 'quick', 'longer'])
    expect(await named('--variants', 'longer')).toEqual(['base', 'longer'])
    expect(await named('--variants', ' longer , quick ')).toEqual(['base', 'quick', 'longer'])
    expect(
      await named(
        '--variants',
        'quick',
        '--what-if',
        'line.end.time=4 s',
        '--what-if',
        'a: line.end.time=5 s',
      ),
    ).toEqual(['base', 'quick', 'what-if-1', 'a'])
  })

  it('a variant has the figures that a run of it has', async () => {
    const { result } = await json()
    const run = await call(['run', '-', '--json', '--no-files', '--variant', 'quick', ...one], {
      stdin: text,
    })
    const { measures, equipment, crew } = JSON.parse(run.out) as CompareResult['variants'][string]
    const { quick } = result.variants
    expect([quick!.measures, quick!.equipment, quick!.crew]).toEqual([measures, equipment, crew])
  })

  it('says how many shifts would show what matters', async () => {
    const { result, code } = await json([
      '--matters',
      'throughput 0.01 cases/min',
      '--matters',
      'target-held 3 %',
    ])
    expect(code).toBe(0)
    const { matters } = result.differences.longer!.throughput!
    expect(matters!.amount).toBeCloseTo(0.01 / 60, 12)
    expect(result.differences.longer!['target-held']!.matters!.amount).toBeCloseTo(0.03, 12)
    expect(result.differences.longer!['time-in-system']!.matters).toBeNull()
    const { out } = await compare(['--matters', 'throughput 0.01 cases/min'])
    expect(out).toContain('Shifts needed to show a difference that matters')
  })

  it('says nothing with --quiet and writes nothing with --no-files', async () => {
    const { code, out, err, cwd } = await compare(['--quiet'])
    expect([code, out, err]).toEqual([0, '', ''])
    expect(existsSync(path.join(cwd, 'out'))).toBe(false)
  })
})

describe('--json', () => {
  it('is one document, the same as the file, its keys in one order', async () => {
    const { out, err, cwd } = await call(['compare', 'line.yaml', '--json', ...one], { cwd: folder() })
    expect(err).toBe('')
    expect(readFileSync(path.join(cwd, 'out/line-compare/result.json'), 'utf8')).toBe(out)
    const document = JSON.parse(out) as CompareResult
    expect(`${JSON.stringify(document, null, 2)}\n`).toBe(out)
    expect(Object.keys(document)).toEqual([
      ...['format', 'command', 'made', 'display', 'shift', 'target', 'currency', 'best', 'compared'],
      ...['variants', 'differences', 'pairs', 'about', 'assumed', 'evidence', 'exact', 'notes', 'shifts'],
    ])
    expect(document).toMatchObject({
      format: 'tapeshift-result/1',
      command: 'compare',
      best: null,
      compared: ['throughput', 'target-held', 'time-in-system', 'cost-per-1000'],
      currency: 'EUR',
    })
    expect(Object.keys(document.variants.quick!).slice(0, 5)).toEqual([
      ...['note', 'set', 'shifts', 'requirements', 'tapeLayout'],
    ])
    expect(document.variants.quick!.set).toEqual({ 'line.end.time': '3 s' })
    expect(Object.keys(document.differences.quick!.throughput!)).toEqual([
      ...['mean', 'low', 'high', 'n', 'sd', 'unit', 'label', 'family', 'alone', 'p', 'isShown'],
      ...['varianceRatio', 'matters'],
    ])
    expect(Object.keys(document.differences.quick!)).toEqual(Object.keys(document.differences.longer!))
    expect(out).not.toMatch(/NaN|Infinity/)
  })
})

describe('--require', () => {
  it('ends with 4 where no design does all of it, and with 0 where one does', async () => {
    const plenty = await json(['--require', 'throughput >= 8 cases/min'])
    expect(plenty.code).toBe(0)
    const judged = Object.entries(plenty.result.variants).map(([name, { requirements }]) => [
      name,
      requirements[0]!.judgement,
    ])
    expect(judged).toEqual([
      ['base', 'not-met'],
      ['quick', 'met'],
      ['longer', 'not-met'],
    ])
    expect((await json(['--require', 'throughput >= 30 cases/min'])).code).toBe(4)
    // two that no design does both
    const two = ['--require', 'throughput >= 8 cases/min', '--require', 'throughput <= 7 cases/min']
    expect((await json(two)).code).toBe(4)
  })

  it('with --best it is the chosen one that must', async () => {
    const best = ['--best', 'highest throughput', '--within', '0.3 cases/min', '--shifts', '60']
    const under = await json([...best, '--require', 'throughput <= 7 cases/min'])
    expect(under.result.best!.pick).toBe('quick')
    expect(under.code).toBe(4)
    expect((await json([...best, '--require', 'throughput >= 8 cases/min'])).code).toBe(0)
  })
})

describe('--best', () => {
  const best = ['--best', 'throughput', '--within', '0.3 cases/min', '--shifts', '200']

  it('picks the one that is best by far, and says so first', async () => {
    const { code, result } = await json(best)
    expect(code).toBe(0)
    expect(result.best).toMatchObject({
      measure: 'throughput',
      unit: 'cases/s',
      isLargerBetter: true,
      pick: 'quick',
      most: 200,
    })
    expect(result.best!.within).toBeCloseTo(0.3 / 60, 12)
    const { base, quick, longer } = result.best!.designs
    expect([base!.verdict, quick!.verdict, longer!.verdict]).toEqual(['dropped', 'picked', 'dropped'])
    expect(result.best!.spent).toBe(
      Object.values(result.variants).reduce((sum, { shifts }) => sum + shifts, 0),
    )
    expect(result.best!.spent).toBeLessThan(3 * 200)
    const { out } = await compare(best)
    expect(out).toMatch(/Choose quick \(a quick end\): it has the highest throughput/)
    expect(out).toContain('How the best design was found')
  })

  it('lowest, and a measure without a usual direction', async () => {
    const lowest = [
      '--best',
      'lowest throughput',
      '--within',
      '0.3 cases/min',
      '--what-if',
      'worst: line.end.time=20 s',
    ]
    expect((await json(lowest)).result.best).toMatchObject({ pick: 'worst', isLargerBetter: false })
    const busy = ['--best', 'lowest equipment.end.states.working', '--within', '5 %']
    expect((await json(busy)).result.best!.pick).toBe('quick')
  })

  it('among those that keep what is required; the unit of the nearness is that of the money', async () => {
    const among = ['--what-if', 'fast: line.end.time=2 s', '--among', 'cost-per-1000 <= 70 EUR within 2 EUR']
    const { result, code } = await json([...best, ...among])
    expect(code).toBe(0)
    expect(result.best!.among).toEqual([
      { require: 'cost-per-1000 <= 70 EUR', near: 2, unit: 'EUR per 1000 cases' },
    ])
    expect(result.best!.designs.base!.verdict).toBe('refused')
    const { out } = await compare([...best, ...among])
    expect(out).toMatch(/±\s+2\s+EUR/)
    expect(out).not.toMatch(/2\s+money/)
  })

  it('none keeps it: 4, and says so', async () => {
    const none = [...best, '--among', 'throughput >= 40 cases/min within 1 cases/min']
    const { code, result } = await json(none)
    expect([code, result.best!.pick]).toEqual([4, null])
    expect((await compare(none)).out).toContain(
      'No design can be chosen: none meets throughput >= 40 cases/min.',
    )
  })

  it('one and the same: 4, and says in how many shifts they differed', async () => {
    const none = ['--variants', 'same', '--best', 'throughput', '--within', '0.3 cases/min']
    const same = `${text}  same: {set: {line.infeed.length: 6 m}}\n`
    const { code, out } = await compare(none, same)
    expect(code).toBe(4)
    expect(out).toMatch(
      /No design is chosen:\s+base\s+and\s+same\s+differed\s+in\s+none\s+of\s+\d+\s+shifts:\s+too\s+few/,
    )
  })

  it('not told within the most shifts: 4, and names what is open', async () => {
    const near = [
      '--variants',
      'longer',
      '--best',
      'throughput',
      '--within',
      '0.0001 cases/min',
      '--shifts',
      '30',
    ]
    const { code, result } = await json(near)
    expect([code, result.best!.pick]).toEqual([4, null])
    expect((await compare(near)).out).toMatch(
      /No design is chosen: after 30 shifts.*not\s+decided\s+for\s+base,\s+longer/s,
    )
  })
})

describe('made.repeat', () => {
  it.each([
    [
      [
        '--variants',
        'quick',
        '--what-if',
        "it: title=the works' own; line.infeed.length=7 m",
        '--measure',
        'output',
      ],
    ],
    [
      [
        '--pairs',
        '--matters',
        'throughput 0.1 cases/min',
        '--seed',
        'a b',
        '--confidence',
        '90 %',
        '--plain',
      ],
    ],
    [['--best', 'throughput', '--within', '0.3 cases/min', '--among', 'target-held <= 90 % within 5 %']],
    [['--set', 'line.infeed.length=8 m', '--require', 'throughput >= 3 cases/min', '--shifts', '7']],
  ])('run again gives the same document: %j', async (argv) => {
    const cwd = folder()
    const first = await call(['compare', 'line.yaml', '--json', '--no-files', ...one, ...argv], { cwd })
    expect([first.code, first.err]).toEqual([0, ''])
    const { repeat } = (JSON.parse(first.out) as CompareResult).made
    // the words as a shell would part them
    const words = execFileSync('sh', ['-c', `printf '%s\\0' ${repeat}`])
      .toString()
      .split('\0')
      .slice(1, -1)
    const again = await call([...words, '--json', '--no-files', ...one], { cwd })
    expect(again.code).toBe(0)
    // what the line names is no assumption of the program any more
    const shown = (out: string) => {
      const { assumed, ...rest } = JSON.parse(out) as CompareResult
      return {
        ...rest,
        assumed: assumed.filter(({ path: of }) => !['study.seed', 'study.shifts'].includes(of)),
      }
    }
    expect(shown(again.out)).toEqual(shown(first.out))
  })
})
