/** The head of the answers of run, compare, size and sweep, in this process: text, document, page, exit code, with and without --anyway. */
import { readFileSync } from 'node:fs'
import path from 'node:path'
import { describe, expect, it } from 'vitest'
import type { Warning } from '../../src/answers/warning.js'
import type { RunResult } from '../../src/questions/run/document.js'
import type { SizeResult } from '../../src/questions/size/document.js'
import type { SweepResult } from '../../src/questions/sweep/document.js'
import { call } from './in-process.js'

/** A line with ample room for 9 cases/min; `kinds` cases that are too low for legs of 70 mm: 81 mm, 82 mm and so on. */
const line = (kinds: number, money = '', title = 'Low cases') => `title: '${title}'
target: 9 cases/min
cases: {${kinds === 0 ? 'high: {length: 400 mm, width: 300 mm, height: 300 mm}' : Array.from({ length: kinds }, (_, kind) => `k${kind + 1}: {length: 400 mm, width: 300 mm, height: ${81 + (kind % 50)} mm}`).join(', ')}}
arrivals: {p: {time-between: 5 s}}
line: {infeed: {type: conveyor, length: 12 m}, sealer: {type: sealer}}
shift: {length: 1 h}
study: {shifts: 3}
${money}
variants:
  slow: {note: belts that pass 5.7 cases/min, set: {line.sealer.belt-speed: 4 m/min}}
  longer: {set: {line.infeed.length: 18 m}}
size: {choose: {line.infeed.length: [6 m, 12 m]}, holds: [9 cases/min in 50 % of shifts within 20 %]}
`
const unpriced = line(
  0,
  'money: {currency: EUR, labour: 31 EUR/h, capital: {line.infeed: 900 EUR/m, line.sealer: 24000 EUR}}',
)
const priced = unpriced.replace('EUR}}', 'EUR}, life: 8 yr, interest: 8 %, shifts: 480 per yr}')

const ask = (command: string, argv: string[], stdin: string) =>
  call([command, '-', '--no-files', '--full', '--workers', '1', ...argv], { stdin })
const documentOf = async <T>(command: string, argv: string[], stdin: string) => {
  const { code, out, err } = await ask(command, ['--json', ...argv], stdin)
  return { code, err, result: JSON.parse(out) as T & { warnings?: Warning[] } }
}
/** As one line, for the text is broken anywhere. */
const flat = (text: string) => text.replace(/\s+/g, ' ')

describe('run on a line that check calls impossible', () => {
  it('is headed by one line for all 52 findings, claims nothing without it, and ends with 3', async () => {
    const { code, out, err } = await ask('run', [], line(52))
    expect(code).toBe(3)
    expect(err).toBe(
      'error: The line cannot work as described: check finds 52 errors (legs-meet). With --anyway the exit code ignores this.\n',
    )
    const text = flat(out)
    // the lowest two of each height are worst
    expect(text).toContain(
      'The line cannot work as described: check finds 52 errors. The figures below ignore this. - error legs-meet, 52 times, worst at `cases.k1`, `cases.k51` and `cases.k2`: The case `k1` is 81 mm from seam to seam',
    )
    expect(text.indexOf('cannot work')).toBeLessThan(text.indexOf('Throughput: '))
    expect(text.match(/legs-meet/g)).toHaveLength(1)
    expect(text).toMatch(
      /It would reach its target of 9 cases\/min in 100 % \(\d+ to 100 %\) of the shifts and on average it would reach the target, but the line cannot work as described: the legs of opposite strips meet on the end of the case\./,
    )
    expect(text).not.toMatch(/holds the target|It reaches its target/)
  })

  it('has the same document with --anyway, and the exit code of the figures', async () => {
    const refused = await documentOf<RunResult>('run', [], line(52))
    const anyway = await documentOf<RunResult>('run', ['--anyway'], line(52))
    expect([refused.code, anyway.code, anyway.err]).toEqual([3, 0, ''])
    expect(anyway.result).toEqual(refused.result)
    expect(anyway.result.warnings).toMatchObject([
      {
        ...{ severity: 'error', code: 'legs-meet', count: 52, designs: [] },
        paths: ['cases.k1', 'cases.k51', 'cases.k2'],
      },
    ])
    const missed = ['--require', 'throughput >= 20 cases/min']
    expect((await ask('run', missed, line(52))).code).toBe(3)
    expect((await ask('run', [...missed, '--anyway'], line(52))).code).toBe(4)
    const met = await ask('run', ['--require', 'target-held >= 20 %', '--anyway'], line(1))
    expect(flat(met.out)).toMatch(/Met: it is .*?, but the line cannot work as described/)
  })

  it('says why it ends with 3 where it prints no report', async () => {
    const { code, out, err } = await ask('run', ['--quiet'], line(2))
    expect([code, out]).toEqual([3, ''])
    expect(err).toContain('check finds 2 errors (legs-meet)')
    expect(await ask('run', ['--quiet', '--anyway'], line(2))).toMatchObject({ code: 0, out: '', err: '' })
  })

  it('has no head and no such field where there is nothing to be known', async () => {
    const { code, result } = await documentOf<RunResult>('run', [], line(0))
    expect([code, result.warnings]).toEqual([0, undefined])
    expect(flat((await ask('run', [], line(0))).out)).toContain('On average it reaches the target.')
  })

  it('keeps 300 findings short, and words of the scenario text, in the page too', async () => {
    const { cwd, out } = await call(['run', '-', '--full', '--workers', '1'], {
      stdin: line(300, '', '<b onload=x>1 & 2</b>'),
    })
    const head = out.slice(0, out.indexOf('Throughput: '))
    expect(head).toContain('300 times')
    expect(head.length).toBeLessThan(900)
    const page = readFileSync(path.join(cwd, 'out/stdin-run/report.html'), 'utf8')
    expect(page).not.toContain('<b onload')
    const at = page.indexOf('class="foremost"')
    expect(at).toBeGreaterThan(0)
    expect(at).toBeLessThan(page.indexOf('class="question"'))
    expect(page.slice(at)).toContain('cases.k1')
    // made again from the document alone, in the same folder, it is the same page
    const again = await call(['report', 'out/stdin-run/result.json', '--out', 'out/stdin-run/again.html'], {
      cwd,
    })
    expect(again.code).toBe(0)
    expect(readFileSync(path.join(cwd, 'out/stdin-run/again.html'), 'utf8')).toBe(page)
  })
})

describe('compare', () => {
  it('names the variant that cannot work beside what it is said to do', async () => {
    const { code, out, err } = await ask('compare', ['--shifts', '20'], line(0))
    expect(code).toBe(3)
    expect(err).toMatch(
      /^error: Cannot work as described: slow; check finds 1 error \(target-above-machine\)\./,
    )
    expect(flat(out)).toContain('slow (cannot work as described) holds the target in 0 %')
    expect((await ask('compare', ['--anyway'], line(0))).code).toBe(0)
  })

  it('without that variant ends with 0', async () => {
    const { code, result } = await documentOf('compare', ['--variants', 'longer'], line(0))
    expect([code, result.warnings]).toEqual([0, undefined])
  })

  it('says of which base a variant is better', async () => {
    const base = [
      '--set',
      'line.sealer.belt-speed=4 m/min',
      '--what-if',
      'fast: line.sealer.belt-speed=20 m/min',
    ]
    const { code, out } = await ask('compare', ['--variants', 'longer', '--shifts', '20', ...base], line(0))
    expect(code).toBe(3)
    expect(flat(out)).toContain(
      'fast holds the target in 100 % of the shifts instead of 0 % of the base, which cannot work as described',
    )
  })

  it('calls none cheaper by a cost that leaves out what they differ in', async () => {
    const argv = ['--variants', 'longer']
    const { code, out } = await ask('compare', argv, unpriced)
    expect(code).toBe(0)
    const beside =
      'The cost leaves out capital recovery, in which these designs differ (`money.capital` without `money.life`, `money.interest` and `money.shifts`), so it does not show which one is cheapest.'
    expect(flat(out)).toContain(beside)
    expect((await ask('compare', argv, priced)).out).not.toContain('leaves out')
  })
})

describe('sweep', () => {
  const lengths = ['--vary', 'line.infeed.length=12..18/6 m', '--shifts', '3']
  const speeds = ['--vary', 'line.sealer.belt-speed=4..12/4 m/min', '--shifts', '3']

  it('names no cheapest length where the price of a metre is dropped, in words and in the document', async () => {
    const { code, out } = await ask('sweep', lengths, unpriced)
    expect(code).toBe(0)
    expect(flat(out)).toContain('warning price-dropped: `money.capital` is given, but not `money.life`')
    expect(flat(out)).toContain('capital recovery, in which these designs differ')
    expect(out).not.toMatch(/cost least/)
    const { result } = await documentOf<SweepResult>('sweep', lengths, unpriced)
    expect(result.curve!.cost).toBeNull()
    expect(result.warnings).toMatchObject([
      {
        ...{ code: 'price-dropped', differs: true, leavesOut: 'capital recovery' },
        ...{ given: ['money.capital'], missing: ['money.life', 'money.interest', 'money.shifts'] },
      },
    ])
  })

  it('names it where the price is whole, and where what varies has no price', async () => {
    const whole = await ask('sweep', lengths, priced)
    expect(flat(whole.out)).toContain('1000 cases cost least at 12 m')
    expect(whole.out).not.toContain('price-dropped')
    const other = await ask('sweep', speeds, unpriced)
    expect(flat(other.out)).toContain('1000 cases without capital recovery cost least at')
  })

  it('a grid names no cheapest point either', async () => {
    const grid = ['--vary', 'line.infeed.length=12..18/6 m', '--vary', 'line.sealer.belt-speed=8..12/4 m/min']
    const { out } = await ask('sweep', [...grid, '--shifts', '2'], unpriced)
    expect(flat(out)).toContain('it does not show which one is cheapest')
    expect(out).not.toMatch(/cost least/)
  })

  it('names the points that cannot work, and ends with 0 as long as some can', async () => {
    const { code, err, result } = await documentOf<SweepResult>('sweep', speeds, line(0))
    expect([code, err]).toEqual([0, ''])
    // 4 m/min over 0.7 m pass 5.7 cases/min, 8 m/min 11.4
    expect(result.points.map(({ errors }) => errors)).toEqual([
      ['target-above-machine'],
      undefined,
      undefined,
    ])
    expect(result.warnings![0]!.designs).toEqual(['line.sealer.belt-speed = 4 m/min'])
    const { out } = await ask('sweep', speeds, line(0))
    expect(flat(out)).toContain('; but at 4 m/min the line cannot work as described.')
    expect(out).toContain('4 m/min (cannot work)')
  })

  it('says that of more than 200 points none was checked', async () => {
    const grid = ['--vary', 'line.infeed.length=1..15/1 m', '--vary', 'line.sealer.belt-speed=4..17/1 m/min']
    const { code, result } = await documentOf<SweepResult>('sweep', [...grid, '--shifts', '2'], line(0))
    expect([code, result.points.length, result.warnings]).toEqual([0, 210, undefined])
    expect(result.notes).toContain(
      'With 210 points, check looked only at the scenario as it stands: run check on the point that you choose.',
    )
  })

  it('ends with 3 where the scenario as it stands, or every point, cannot work', async () => {
    const base = [...speeds, '--set', 'line.sealer.belt-speed=4 m/min']
    expect((await ask('sweep', base, line(0))).code).toBe(3)
    expect((await ask('sweep', [...base, '--anyway'], line(0))).code).toBe(0)
    const all = ['--vary', 'line.sealer.belt-speed=4..5/1 m/min', '--shifts', '3']
    const { code, out } = await ask('sweep', all, line(0))
    expect(code).toBe(3)
    expect(flat(out)).toContain('but at every value tried the line cannot work as described')
    expect((await ask('sweep', [...all, '--anyway'], line(0))).code).toBe(0)
  })
})

describe('size', () => {
  it('says beside the pick what its order by cost leaves out', async () => {
    const { code, out } = await ask('size', ['--shifts', '60'], unpriced)
    expect(code).toBe(0)
    expect(flat(out)).toMatch(
      /Choose line\.infeed\.length = 6 m: the first design in the order below that holds [^:]*The cost leaves out capital recovery, in which these designs differ/,
    )
    expect(out).not.toMatch(/the cheapest design|No design costs less/)
    expect((await ask('size', ['--shifts', '60'], priced)).out).toContain('the cheapest design')
  })

  it('is about the pick: what is ruled out before, and the scenario itself, are none of its errors', async () => {
    const slow = [
      '--set',
      'line.sealer.belt-speed=4 m/min',
      '--choose',
      'line.sealer.belt-speed=4 m/min,12 m/min',
    ]
    const { code, result } = await documentOf<SizeResult>('size', [...slow, '--shifts', '60'], line(0))
    expect([code, result.warnings, result.designs[result.pick!]!.set]).toEqual([
      0,
      undefined,
      { 'line.sealer.belt-speed': '12 m/min' },
    ])
  })

  it('with --every-design a pick that cannot work heads the answer, and ends with 3', async () => {
    const full = ['--every-design', '--shifts', '20']
    const { code, result } = await documentOf<SizeResult>('size', full, line(2))
    expect([code, result.warnings![0]]).toMatchObject([3, { code: 'legs-meet', designs: ['the pick'] }])
    const { code: anyway, out } = await ask('size', [...full, '--anyway'], line(2))
    expect(anyway).toBe(0)
    expect(flat(out)).toContain('50 % of shifts, but it cannot work as described')
    // without it such designs are not simulated, and none is left
    expect((await ask('size', ['--shifts', '20'], line(2))).code).toBe(4)
  })
})

describe('--help', () => {
  it.each(['run', 'compare', 'size', 'sweep'])('of %s says what --anyway and 3 mean', async (command) => {
    const { out } = await call([command, '--help'])
    expect(flat(out)).toContain('--anyway do not end with exit code 3')
    expect(flat(out)).toMatch(/Exit codes: 0 done; 3 check finds/)
  })
})
