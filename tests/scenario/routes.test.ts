/** The ways of a line: names, loops that no case can leave, pieces that no case reaches, right of way. */
import { describe, expect, it } from 'vitest'
import { loadScenario } from '../../src/scenario/load.js'
import type { ScenarioError } from '../../src/scenario/problems.js'

function load(line: string, arrivals = '{p: {rate: 5 cases/min}}') {
  const box = '{length: 400 mm, width: 300 mm, height: 300 mm}'
  return loadScenario(
    `cases: {bars: ${box}, flakes: ${box}}\narrivals: ${arrivals}\nline: ${line}\nshift: {length: 1 h}`,
  )
}

function findings(line: string, arrivals?: string): string[] {
  try {
    load(line, arrivals)
    return []
  } catch (error) {
    return (error as ScenarioError).problems.map(
      ({ code, path, rule, fix }) => `${path} ${code}: ${rule} (${fix})`,
    )
  }
}

const station = 'type: station, time: 1 s'

describe('ways', () => {
  it('may part, join, lead back and lead out', () => {
    expect(
      findings(`{
        split: {type: divert, rule: by-case, to: {bars: a, flakes: b}},
        a: {${station}, to: look}, b: {${station}},
        look: {type: inspect, rejects-to: repair}, last: {${station}, to: exit},
        repair: {${station}, to: split}}`),
    ).toEqual([])
  })

  it('lead to what there is: in a list, in a map, of rejects', () => {
    expect(
      findings(`{
        split: {type: divert, to: [aa, bb]}, aa: {${station}},
        cut: {type: divert, rule: by-case, to: {bars: las, flakes: exit}},
        look: {type: inspect, rejects-to: repare}, last: {${station}}, repair: {${station}}}`),
    ).toEqual([
      'line.split.to.1 no-such-path: `bb` is not a piece of the line (did you mean `aa`?)',
      'line.cut.to.bars no-such-path: `las` is not a piece of the line (did you mean `last`?)',
      'line.look.rejects-to no-such-path: `repare` is not a piece of the line (did you mean `repair`?)',
    ])
  })

  it('of a divert by case are a map with every case; else a list of two or more', () => {
    expect(
      findings(`{d: {type: divert, rule: by-case, to: [a, b]}, a: {${station}}, b: {${station}}}`),
    ).toEqual(['line.d.to conflict: `rule: by-case` needs a map from cases to names (`{bars: NAME, …}`)'])
    expect(findings(`{d: {type: divert, rule: shortest, to: {bars: a}}, a: {${station}}}`)).toEqual([
      'line.d.to conflict: `rule: shortest` needs a list of names (write `[NAME, NAME]`)',
    ])
    expect(findings(`{d: {type: divert, rule: by-case, to: {bars: a, flake: a}}, a: {${station}}}`)).toEqual([
      'line.d.to.flake no-such-path: `flake` is not a case (did you mean `flakes`?)',
      'line.d.to missing-key: the case `flakes` has no way (add `flakes: NAME`)',
    ])
    expect(findings(`{d: {type: divert, to: [a]}, a: {${station}}}`)).toEqual([
      'line.d.to out-of-range: at least 2 and at most 100 ways (name another one)',
    ])
    expect(findings(`{d: {type: divert, to: a}, a: {${station}}}`)).toEqual([
      'line.d.to wrong-type: must be a list (write a list here)',
    ])
    expect(findings(`{d: {type: divert}, a: {${station}}}`)).toHaveLength(1)
  })

  it('may not run in a loop that no case can leave', () => {
    expect(findings(`{a: {${station}}, b: {${station}, to: a}}`)).toEqual([
      'line.b.to conflict: the case `bars` never leaves this loop: `a` to `b` to `a` (send it to a later piece, or put a divert or an inspection with a way out into the loop)',
    ])
    expect(findings(`{a: {${station}, to: a}}`)).toHaveLength(1)
    // flakes alone go round: bars leave
    expect(
      findings(`{a: {${station}}, d: {type: divert, rule: by-case, to: {bars: exit, flakes: a}}}`),
    ).toEqual([
      'line.d.to.flakes conflict: the case `flakes` never leaves this loop: `a` to `d` to `a` (send it to a later piece, or put a divert or an inspection with a way out into the loop)',
    ])
  })

  it('come to every piece', () => {
    expect(findings(`{a: {${station}, to: exit}, b: {${station}}, c: {${station}}}`)).toEqual([
      'line.b conflict: no case reaches this piece (name it in the `to` of another piece, or remove it)',
      'line.c conflict: no case reaches this piece (name it in the `to` of another piece, or remove it)',
    ])
    expect(
      findings(
        `{a: {${station}, to: exit}, b: {${station}}}`,
        '{p: {rate: 5 cases/min}, q: {rate: 1 cases/min, to: b}}',
      ),
    ).toEqual([])
  })

  it('no piece is called exit', () => {
    expect(findings(`{exit: {${station}}}`)).toEqual([
      'line.exit bad-name: `exit` means out of the line (choose another name)',
    ])
  })

  it('right of way is for one that passes cases on to here, a piece or a source', () => {
    expect(findings(`{a: {${station}}, b: {${station}, right-of-way: a}}`)).toEqual([])
    expect(findings(`{a: {${station}, right-of-way: p}, b: {${station}}}`)).toEqual([])
    expect(findings(`{a: {${station}}, c: {${station}}, b: {${station}, right-of-way: a}}`)).toEqual([
      'line.b.right-of-way no-such-path: `a` passes no cases on to `b` (did you mean `c`?)',
    ])
  })

  it('the kinds of equipment that a message names are those of the schema', () => {
    expect(findings('{a: {type: divertt}}')).toEqual([
      'line.a.type not-allowed: one of conveyor, sealer, station, divert, inspect (did you mean `divert`?)',
    ])
  })
})
