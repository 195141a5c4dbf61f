/** `tapeshift size` with what it does not take, and with words that mean harm. */
import { readFileSync } from 'node:fs'
import path from 'node:path'
import { describe, expect, it } from 'vitest'
import { call } from './in-process.js'
import { holds, one, size, text } from './size-line.js'

describe('wrong usage: 2', () => {
  const some = ['--choose', 'line.infeed.length=4 m,6 m']
  it.each([
    [[], 'nothing to choose: give --choose'],
    [some, 'there is no promise: give --holds'],
    [['--choose', 'line.infeed.length', ...holds], 'a choice must be PATH=v1,v2,v3 or PATH=low..high/step'],
    [['--choose', 'line.infeed.length=', ...holds], 'a choice must have at least one value'],
    [['--choose', 'line.infeed.length=1..5', ...holds], 'a range must be low..high/step'],
    [['--choose', 'line.infeed.length=5..1/1 m', ...holds], 'a range must rise: from 1 to 5 m'],
    [['--choose', 'line.infeed.length=1 m..3 ft/1', ...holds], 'a range must have one unit, not m and ft'],
    [['--choose', 'line.infeed.length=4 m,4 m', ...holds], 'the value `4 m` is given twice'],
    [[...some, ...some, ...holds], 'line.infeed.length is chosen twice: give all its values in one choice'],
    [['--choose', 'variant=base,doubld', ...holds], 'there is no variant `doubld`; there are base, doubled'],
    [
      ['--choose', 'line.sealer.belt-speed=60 m/min,70 m/min', ...holds],
      'none of the 2 designs can be simulated: line.sealer.belt-speed: faster than the rating of the top head',
    ],
    [
      ['--choose', 'line.infeed.length=1..1000/1 m', '--choose', 'line.end.servers=1..101/1', ...holds],
      '101000 designs are too many: at most 100000',
    ],
    [[...some, '--holds', '9 cases/min'], 'it must be a measure'],
    [[...some, '--holds', '9 in 95 % of shifts'], 'needs a unit'],
    [[...some, '--holds', 'thruput >= 9 cases/min within 1 %'], 'did you mean `throughput`?'],
    [[...some, '--holds', 'output >= 500'], 'such as "output >= 500 within 0.1"'],
    [[...some, '--holds', '9 cases/min in 100 % of shifts'], 'nothing is certain for all shifts'],
    [[...some, '--holds', 'target-held >= 100 %'], 'nothing is certain for all shifts'],
    [[...some, '--holds', 'output-p10 >= 500 within 5'], 'a quantile has no value for a single shift'],
    [
      [...some, ...holds, '--order', 'line.infed.length'],
      '--order: `line.infed.length` is not one of the choices; did you mean `line.infeed.length`?',
    ],
    [
      [...some, ...holds, '--rising', 'line.end.servers'],
      '--rising: `line.end.servers` is not one of the choices',
    ],
    [
      ['--choose', 'line.infeed.length=6 m,4 m', ...holds, '--rising', 'line.infeed.length'],
      'the values of `line.infeed.length` do not rise',
    ],
    [[...some, ...holds, '--shifts', '1'], 'whole number from 2 to'],
    [[...some, ...holds, '--resume'], '--resume needs a folder with results: leave out --no-files'],
    [[...some, ...holds, '--variant', 'doubled'], "unknown option '--variant'"],
  ])('%j', async (argv, words) => {
    const { code, out, err } = await size(argv)
    expect(err).toContain(words)
    expect(err).not.toMatch(/\n\s+at .*\.(ts|js)|bug of/)
    expect([code, out]).toEqual([2, ''])
  })

  it('a value that fits nowhere is a wrong scenario: 3', async () => {
    for (const [choice, words] of [
      ['line.infed.length=4 m', 'did you mean `infeed`?'],
      ['line.infeed.length=4 m,5', 'needs a unit'],
      ['line.infeed.length=4 m,5 s', 'is a unit of a time'],
    ] as const) {
      const { code, out, err } = await size(['--choose', choice, ...holds])
      expect([choice, code, out]).toEqual([choice, 3, ''])
      expect(err).toContain(words)
    }
  })

  it('a range of the scenario that is none, and a key that is none', async () => {
    const own = (choice: string) =>
      size(
        [],
        `${text}size:\n  choose: {line.infeed.length: ${choice}}\n  holds: [9 cases/min in 60 % of shifts]\n`,
      )
    const falling = await own('{from: 6 m, to: 2 m, step: 1 m}')
    expect(falling.code).toBe(2)
    expect(falling.err).toContain('size.choose.line.infeed.length: a range must rise: from 2 to 6 m')
    const odd = await size(
      [],
      `${text}size:\n  choose: {line.end.servers: [1, 2]}\n  holds: [9 cases/min in 60 % of shifts]\n  rising: [line.infeed.length]\n`,
    )
    expect([odd.code, odd.err]).toEqual([
      2,
      expect.stringContaining('size.rising: `line.infeed.length` is not one of the choices'),
    ])
    const unknown = await own('{from: 6 m, upto: 2 m, step: 1 m}')
    expect(unknown.code).toBe(3)
  })
})

describe('hostile words', () => {
  const hostile = '<script>alert(1)</script>\u001b[31m =cmd'

  it('in a title and in the values of a choice are text in the page, the tables and the terminal', async () => {
    const written = text.replace('title: Small line', `title: ${JSON.stringify(hostile)}`)
    const values = JSON.stringify([hostile, '=1+1', '<img src=x>']).slice(1, -1)
    const { code, out, err, cwd } = await call(
      ['size', '-', ...one, '--choose', `title=${values}`, '--choose', 'line.end.servers=2', ...holds],
      { stdin: written },
    )
    expect(code).toBe(0)
    expect(out + err).not.toContain('\u001b')
    const at = (name: string) => readFileSync(path.join(cwd, 'out/stdin-size', name), 'utf8')
    expect(at('report.html')).not.toMatch(/<script>alert|<img src=x/)
    expect(at('designs.csv')).not.toMatch(/(^|,)"?=/m)
  })

  it('on the command line do not reach the terminal either', async () => {
    const some = ['--choose', 'line.infeed.length=4 m']
    for (const argv of [
      ['--choose', '\u001b[31m'],
      ['--choose', '\u001b[31m=1', ...holds],
      ['--choose', 'a=\u001b[31m..2/1', ...holds],
      ['--choose', 'a=1..2/1 \u001b[31m', '--choose', 'a=1', ...holds],
      ['--choose', 'a=1 \u001b[31m..2 m/1', ...holds],
      ['--choose', 'variant=\u001b[31m', ...holds],
      ['--choose', 'line.infeed.length=\u001b[31m,\u001b[31m', ...holds],
      [...some, '--holds', '\u001b[31m'],
      [...some, '--holds', '\u001b[31m >= 5 within 1'],
      [...some, '--holds', '9 cases/min in \u001b[31m of shifts'],
      [...some, ...holds, '--order', '\u001b[31m'],
      [...some, ...holds, '--rising', '\u001b[31m'],
    ]) {
      const { code, err } = await size(argv)
      expect([argv, code >= 2]).toEqual([argv, true])
      expect([argv, err.includes('\u001b')]).toEqual([argv, false])
    }
  })
})
