/** `tapeshift compare` with what it does not take, and with words that mean harm. */
import { readFileSync } from 'node:fs'
import path from 'node:path'
import { describe, expect, it } from 'vitest'
import { shiftsCsv } from '../../src/answers/csv.js'
import { compare, one, text } from './compare-line.js'
import { call, smallLine } from './in-process.js'

describe('wrong usage: 2', () => {
  it.each([
    [['--variants', 'quik'], '--variants: there is no variant `quik`; did you mean `quick`?'],
    [['--variants', ''], '--variants: there is no variant'],
    [['--within', '1'], 'belong to --best: add it'],
    [['--among', 'target-held >= 90 %'], 'belong to --best: add it'],
    [['--best', 'throughput'], '--best needs --within'],
    [['--best', 'target-held', '--within', '1 %'], 'ranking by a share of shifts takes very many shifts'],
    [['--best', 'crew.operators.busy', '--within', '1 %'], 'Write "highest crew.operators.busy" or'],
    [['--best', 'thruput', '--within', '1'], 'did you mean `throughput`?'],
    [['--best', 'output-p10', '--within', '1'], 'there is no interval for the difference of two quantiles'],
    [['--best', 'output', '--within', '0'], '--within 0: it must be above 0'],
    [['--best', 'output', '--within', '-3'], 'it must be above 0'],
    [['--best', 'throughput', '--within', '1'], 'needs a unit'],
    [
      ['--best', 'output', '--within', '1', '--among', 'throughput >= 9 cases/min'],
      'such as "throughput >= 9 cases/min within 0.1 cases/min"',
    ],
    [['--best', 'output', '--within', '1', '--among', 'output >= 500'], '"output >= 500 within 0.1"'],
    [
      ['--best', 'output', '--within', '1', '--among', 'output-p10 >= 500'],
      'a quantile has no value for a single shift',
    ],
    [['--best', 'output', '--within', '1', '--among', 'target-held > 100 %'], 'can prove 0 % or 100 %'],
    [['--best', 'output', '--within', '1', '--among', 'target-held <= 0 %'], 'can prove 0 % or 100 %'],
    [['--best', 'output', '--within', '1', '--among', 'output'], 'it must be a measure, then >=, <=, > or <'],
    [['--measure', 'output-p10'], 'there is no interval for the difference of two quantiles'],
    [['--measure', 'thruput'], '--measure: this line has no measure `thruput`; did you mean `throughput`?'],
    [['--matters', 'output 5'], '`output` is not compared; add --measure output'],
    [['--matters', 'throughput'], 'it must be a measure and an amount'],
    [['--matters', 'throughput 0 cases/min'], 'it must be above 0'],
    [['--matters', 'throughput 1'], 'needs a unit'],
    [['--require', 'thruput >= 9 cases/min'], 'did you mean `throughput`?'],
    [['--resume'], '--resume needs a folder with results: leave out --no-files'],
    [['--variant', 'quick'], "unknown option '--variant'"],
    [['--shifts', '1'], 'whole number from 2 to'],
  ])('%j', async (argv, words) => {
    const { code, out, err } = await compare(argv)
    expect(err).toContain(words)
    expect(err).not.toMatch(/\n\s+at .*\.(ts|js)|bug of/)
    expect([code, out]).toEqual([2, ''])
  })

  it('nothing to compare with, and a variant called base', async () => {
    const alone = await compare([], smallLine)
    expect([alone.code, alone.out]).toEqual([2, ''])
    expect(alone.err).toContain('nothing to compare with: the scenario has no variants')
    const named = await compare([], `${smallLine}variants: {base: {set: {line.infeed.length: 7 m}}}\n`)
    expect(named.code).toBe(2)
    expect(named.err).toContain('a variant may not be called `base`')
    const whatIf = await compare(['--what-if', 'base: line.infeed.length=7 m'], smallLine)
    expect(whatIf.code).toBe(2)
    // without variants one of the command line is enough
    expect((await compare(['--what-if', 'line.infeed.length=7 m'], smallLine)).code).toBe(0)
  })

  it('what the shifts say nothing of cannot be ranked', async () => {
    const never = ['--what-if', 'never: line.end.time=2 h', '--best', 'cost-per-1000', '--within', '1 EUR']
    const { code, out, err } = await compare(never)
    expect(err).toMatch(
      /none of the first 50 shifts of never says anything about cost-per-1000.*choose by another measure/,
    )
    expect([code, out]).toEqual([2, ''])
  })

  it('a wrong what-if is a wrong scenario: 3, and names the option', async () => {
    const { code, err, out } = await compare(['--what-if', 'a: line.infed.length=7 m'])
    expect([code, out]).toEqual([3, ''])
    expect(err).toContain('--what-if a: line.infed.length=7 m')
    expect(err).toContain('did you mean `infeed`?')
    expect((await compare(['--what-if', 'quick: line.infeed.length=7 m'])).code).toBe(3)
  })
})

describe('hostile words', () => {
  const hostile = '<script>alert(1)</script>\u001b[31m =cmd'

  it('in a title, a note and a value are text in the page and in the terminal', async () => {
    const written = text
      .replace('title: Small line', `title: ${JSON.stringify(hostile)}`)
      .replace('note: a quick end', `note: ${JSON.stringify(hostile)}`)
    const what = ['--what-if', `odd: title=${JSON.stringify(`${hostile}<img src=x>`)}`]
    const best = ['--best', 'throughput', '--within', '0.3 cases/min', '--shifts', '60']
    for (const argv of [what, [...what, ...best]]) {
      const { code, out, err, cwd } = await call(['compare', '-', ...one, ...argv], { stdin: written })
      expect(code).toBe(0)
      expect(out + err).not.toContain('\u001b')
      expect(out).toContain('<script>alert(1)</script>')
      const page = readFileSync(path.join(cwd, 'out/stdin-compare/report.html'), 'utf8')
      expect(page).not.toMatch(/<script>alert|<img src=x/)
      expect(page).toContain('&lt;script&gt;')
    }
  })

  it('on the command line do not reach the terminal either', async () => {
    for (const argv of [
      ['--variants', 'a\u001b[31m'],
      ['--best', '\u001b[31m', '--within', '1'],
      ['--best', 'output', '--within', '\u001b[31m1'],
      ['--best', 'output', '--within', '1', '--among', '\u001b[31m >= 5'],
      ['--matters', 'throughput \u001b[31m'],
      ['--measure', '\u001b[31m'],
      ['--what-if', '\u001b[31m: x=1'],
      ['--what-if', 'a: \u001b[31m=1'],
    ]) {
      const { code, err } = await compare(argv)
      expect(code).toBeGreaterThanOrEqual(2)
      expect([argv, err.includes('\u001b')]).toEqual([argv, false])
    }
  })

  it('a name that is a formula is none in the table, and no name of a variant at all', async () => {
    const csv = shiftsCsv([
      { name: '=cmd()', columns: [], shifts: [] },
      { name: '+1', columns: [], shifts: [] },
    ])
    expect(csv).toBe('variant,shift\n')
    const none = new Float64Array()
    const shift = { values: none, controls: none, outputs: none, held: none }
    const rows = shiftsCsv(
      ['=cmd()', '+1', '-1', '@x'].map((name) => ({ name, columns: [], shifts: [shift] })),
    )
    expect(rows).toBe("variant,shift\n'=cmd(),1\n'+1,1\n'-1,1\n'@x,1\n")
    const { code, err } = await compare(
      [],
      `${smallLine}variants: {"=cmd": {set: {line.infeed.length: 7 m}}}\n`,
    )
    expect(code).toBe(3)
    expect(err).toContain('begin with a letter')
  })
})
