/** Pieces that variants and what-ifs add or take out: how the ways of those that stay close, and what is said where they cannot. */
import { describe, expect, it } from 'vitest'
import { Line } from '../../src/line/line.js'
import { loadScenario } from '../../src/scenario/load.js'
import type { ScenarioError } from '../../src/scenario/problems.js'

const st = 'type: station, time: 1 s'
const box = '{length: 400 mm, width: 300 mm, height: 300 mm}'

const text = (line: string, variants = '', rest = '') => `cases: {bars: ${box}, flakes: ${box}}
arrivals: {p: {rate: 5 cases/min}}
line: {${line}}
variants: {${variants}}
shift: {length: 1 h}
${rest}`

/** The ways of the pieces of a variant: name, and where it says that its cases go. */
function ways(line: string, change: string, rest = ''): string {
  const [variant] = loadScenario(text(line, `v: {${change}}`, rest)).variants
  const { line: pieces, arrivals } = variant!.scenario
  const told = Object.entries(pieces).map(([name, { to }]) =>
    to === undefined ? name : `${name} to ${JSON.stringify(to)}`,
  )
  return [...told, ...Object.values(arrivals).flatMap(({ to }) => (to === undefined ? [] : [`from ${to}`]))]
    .join('; ')
    .replaceAll('"', '')
}

/** Findings, each with the word that stands at its place. */
function problems(line: string, variants: string, whatIfs: string[] = []): string[] {
  const written = text(line, variants)
  try {
    loadScenario(written, { whatIfs })
    return []
  } catch (error) {
    return (error as ScenarioError).problems.map(({ code, path, line: at, column, rule, fix }) => {
      const [word] = /^\w*/.exec(written.split('\n')[at - 1]?.slice(column - 1) ?? '')!
      return `${word}: ${path} ${code}: ${rule} (${fix})`
    })
  }
}

const row = `a: {${st}}, b: {${st}}, c: {${st}}`
const lanes = `d: {type: divert, to: [a, b]}, a: {${st}, to: c}, b: {${st}}, c: {${st}, right-of-way: a}`

describe('a piece that is added', () => {
  it('takes what the one before it passed on: by the order of the file, by `to`, and out of the line', () => {
    expect(ways(row, `add: {x: {after: a, ${st}}}`)).toBe('a; x; b; c')
    expect(ways(lanes, `add: {x: {after: a, ${st}}}`)).toBe('d to [a,b]; a; x to c; b; c')
    expect(ways(row, `add: {x: {after: c, ${st}}}`)).toBe('a; b; c; x')
  })

  it('goes where it says, and may stand behind another that is added; the right of way of the one before is its own', () => {
    expect(ways(row, `add: {x: {after: a, ${st}, to: c}}, remove: [b]`)).toBe('a; x to c; c')
    expect(ways(row, `add: {x: {after: a, ${st}}, y: {after: x, ${st}}}, set: {line.y.time: 3 s}`)).toBe(
      'a; x; y; b; c',
    )
    const [v] = loadScenario(text(lanes, `v: {add: {x: {after: a, ${st}}}}`)).variants
    expect(v!.scenario.line.c!['right-of-way']).toBe('x')
  })

  it('by hand: 5 cases a minute for 10 minutes through three places of 1 s each, and one of 20 s more', () => {
    const [v] = loadScenario(
      text(row, `v: {add: {x: {after: b, type: station, time: 20 s}}, set: {shift.length: 10 min}}`),
    ).variants
    const line = new Line(v!.scenario)
    const { values } = line.simulate('s', 1)
    const output = line.columns.findIndex(({ measure }) => measure.path.join('.') === 'measures.output')
    // the first comes at 12 s and is out at 12 + 2 + 20 + 1 = 35 s, one every 20 s from then on: (600 - 35) / 20 = 28.25
    expect(values[output]).toBe(29)
  })

  it('is an option too', () => {
    const read = loadScenario(text(row), {
      whatIfs: [`v: add.x={after: a, ${st}}; remove=[b, c]; line.x.time=4 s`],
    })
    expect(Object.keys(read.variants[0]!.scenario.line)).toEqual(['a', 'x'])
    expect(read.variants[0]!.set).toEqual({
      'add.x': { after: 'a', type: 'station', time: '1 s' },
      'line.x.time': '4 s',
      remove: 'b, c',
    })
    expect(Object.keys(loadScenario(text(row), { sets: ['remove=b'] }).scenario.line)).toEqual(['a', 'c'])
  })
})

describe('a piece that is taken out', () => {
  it('leaves its cases to what comes behind it: first, in between, last', () => {
    expect(ways(row, 'remove: [a]')).toBe('b; c')
    expect(ways(row, 'remove: [b]')).toBe('a; c')
    expect(ways(row, 'remove: [b, c]')).toBe('a')
    // what it passed on to does not follow in the file
    expect(ways(`a: {${st}, to: c}, b: {${st}, to: exit}, c: {${st}, to: b}`, 'remove: [a]')).toBe(
      'b to exit; c to b; from c',
    )
    expect(
      ways(`a: {${st}}, b: {${st}, to: d}, c: {${st}, to: exit}, d: {${st}, to: c}`, 'remove: [b]'),
    ).toBe('a to d; c to exit; d to c')
  })

  it('of a lane of a divert: the divert goes with it, or the way where more than one is left', () => {
    expect(ways(lanes, 'remove: [d, b]')).toBe('a to c; c')
    expect(ways(lanes, 'remove: [d, a]')).toBe('b; c')
    expect(
      ways(
        `d: {type: divert, to: [a, b, e]}, a: {${st}, to: c}, b: {${st}, to: c}, e: {${st}}, c: {${st}}`,
        'remove: [b]',
      ),
    ).toBe('d to [a,e]; a to c; e; c')
    // part of a lane: the rest of it stays
    expect(
      ways(
        `d: {type: divert, to: [a, b]}, a: {${st}}, e: {${st}, to: c}, b: {${st}}, c: {${st}}`,
        'remove: [a]',
      ),
    ).toBe('d to [e,b]; e to c; b; c')
  })

  it('of a loop: an inspection with what closes its rejects again', () => {
    const loop = `a: {${st}}, look: {type: inspect, rejects-to: fix}, last: {${st}, to: exit}, fix: {${st}, to: a}`
    expect(ways(loop, 'remove: [look, fix]')).toBe('a; last to exit')
    expect(problems(loop, 'v: {remove: [look]}')).toEqual([
      'look: line.fix conflict: no case reaches this piece (name it in the `to` of another piece, or remove it)',
    ])
  })

  it('takes its price and the post at it along', () => {
    const seal = 'type: sealer, flaps: {folded-by: people}'
    const [v] = loadScenario(
      text(
        `a: {${st}}, s: {${seal}}`,
        'v: {remove: [s]}',
        'crew: {f: {does: [jams, roll-change], stands-at: s}}\nmoney: {currency: EUR, life: 8 yr, interest: 5 %, shifts: 200 per yr, capital: {line.s: 20000 EUR, line.a: 3000 EUR}}',
      ),
    ).variants
    expect(v!.scenario.crew.f).not.toHaveProperty('stands-at')
    expect(Object.keys(v!.scenario.money!.capital!)).toEqual(['line.a'])
  })
})

describe('what does not close', () => {
  it('is told at its place with the nearest fix:   of what is added', () => {
    expect(problems(lanes, `v: {add: {x: {after: d, ${st}}}}`)).toEqual([
      'd: line.x.after conflict: `d` sends cases several ways, so the next piece is not clear (put it after one of a, b)',
    ])
    expect(problems(row, `v: {add: {x: {after: aa, ${st}}}}`)).toEqual([
      'aa: line.x.after no-such-path: `aa` is not a piece of the line (did you mean `a`?)',
    ])
    expect(problems(row, `v: {add: {b: {after: a, ${st}}}}`)).toEqual([
      'b: line.b bad-name: a piece `b` exists already (choose another name, or change that piece)',
    ])
    expect(problems(row, `v: {add: {x: {${st}}}}`)).toEqual([
      'x: line.x missing-key: `after` is missing: the piece before the new one (such as `after: a`)',
    ])
    expect(problems(row, 'v: {add: {x: {after: a, type: station, tme: 4 s}}}')).toContain(
      'tme: line.x.tme unknown-key: `tme` is not a key of `line.x` (did you mean `time`?)',
    )
  })

  it('of what is taken out', () => {
    expect(problems(row, 'v: {remove: [bb]}')).toEqual([
      'bb: line.bb no-such-path: `bb` is not a piece of the line (did you mean `b`?)',
    ])
    expect(problems(row, 'v: {remove: [a, b, c]}')).toEqual([
      'c: line.c conflict: no piece of the line is left (keep at least one piece)',
    ])
    expect(problems(lanes, 'v: {remove: [a]}')).toEqual([
      'a: line.a conflict: `d` would have only one way left, but it must divide cases between ways (remove `d` too)',
    ])
    // the only way out of a loop
    expect(problems(`a: {${st}}, d: {type: divert, to: [a, exit]}`, 'v: {remove: [d]}')).toEqual([
      'd: line.d conflict: `d` sends cases several ways: without it they could go to a or exit (remove all of these ways except one, or keep `d`)',
    ])
  })

  it('of the command line: by the option', () => {
    const [found, ...more] = problems(row, '', ['v: remove=bb'])
    expect(found).toBe(': line.bb no-such-path: `bb` is not a piece of the line (did you mean `b`?)')
    expect(more).toEqual([])
  })

  it('what is wrong with the file alone is told of the file, once', () => {
    const found = problems(`${row}, d: {${st}, to: dd}`, 'v: {remove: [b]}')
    expect(found).toEqual(['dd: line.d.to no-such-path: `dd` is not a piece of the line (did you mean `d`?)'])
  })

  it('a variant must change something', () => {
    expect(problems(row, 'v: {note: nothing}')).toEqual([
      'v: variants.v missing-key: a variant must change something (add `set`, `add` or `remove`)',
    ])
  })
})
