/** Values written into the text of a scenario: what changes, and that nothing else does. */
import { describe, expect, it } from 'vitest'
import { parse } from 'yaml'
import { withChanges } from '../../src/scenario/with-changes.js'

const change = (path: string, text: string) => ({ path, text, comment: 'from the record' })

const scenario = `# a line
title: Line 2   # its name
line:
  sealer:
    type: sealer
    jams: {chance: 0.9 per 1000 cases, clear: {lognormal: {mean: 85 s, cv: 0.8}}, case-lost: 20 %}   # a guess
    breakdowns:
      after: 45 h      # by the fitter

      repair:
        lognormal:
          mean: 16 min
          cv: 0.7
  # the way out
  outfeed: {type: conveyor}

study: {shifts: 20}
`

describe('a value in a scenario', () => {
  it('takes the place of the one before, in a map of one line', () => {
    const changed = withChanges(scenario, [change('line.sealer.jams.chance', '36 in 40000 cases')])
    expect(changed).toBe(
      scenario.replace(
        '    jams: {chance: 0.9 per 1000 cases,',
        '    # from the record; before: 0.9 per 1000 cases\n    jams: {chance: 36 in 40000 cases,',
      ),
    )
  })

  it('keeps the comment behind it and what follows', () => {
    const changed = withChanges(scenario, [change('line.sealer.breakdowns.after', '18 in 640 h')])
    expect(changed).toBe(
      scenario.replace(
        '      after: 45 h      # by the fitter',
        '      # from the record; before: 45 h\n      after: 18 in 640 h      # by the fitter',
      ),
    )
  })

  it('takes the place of a map of several lines', () => {
    const changed = withChanges(scenario, [
      change('line.sealer.breakdowns.repair', '{exponential: {mean: 15 min, from: 18}}'),
    ])
    expect(changed).toContain(
      '      # from the record; before: lognormal: mean: 16 min cv: 0.7\n      repair:\n',
    )
    expect(changed).toContain('\n  # the way out\n  outfeed:')
    expect(parse(changed).line.sealer.breakdowns.repair).toEqual({
      exponential: { mean: '15 min', from: 18 },
    })
  })

  it('is added where its keys do not stand yet: to a map of lines, and to one of one line', () => {
    const changed = withChanges(scenario, [
      change('line.sealer.roll-change.time', '90 s'),
      change('line.outfeed.breakdowns.after', '2 in 640 h'),
      change('line.outfeed.breakdowns.repair', '10 min'),
      change('study.seed', 'a'),
    ])
    const { line, study } = parse(changed)
    expect(line.sealer['roll-change']).toEqual({ time: '90 s' })
    expect(line.outfeed).toEqual({ type: 'conveyor', breakdowns: { after: '2 in 640 h', repair: '10 min' } })
    expect(study).toEqual({ shifts: 20, seed: 'a' })
    expect(changed.startsWith('# a line\ntitle: Line 2   # its name\n')).toBe(true)
  })

  it('is added at the end of a text without a last line break, and where nothing stands behind a key', () => {
    expect(withChanges('a:\n  b: 1', [change('a.c', '2')])).toBe('a:\n  b: 1\n  # from the record\n  c: 2\n')
    expect(parse(withChanges('a:\n  b:\n  d: 1\n', [change('a.b.c', '2')]))).toEqual({
      a: { b: { c: 2 }, d: 1 },
    })
    expect(parse(withChanges('a: {}\n', [change('a.b', '2')]))).toEqual({ a: { b: 2 } })
  })

  it('is refused where another place reads the same value', () => {
    const shared = 'a: &x {b: 1}\nc: *x\n'
    expect(() => withChanges(shared, [change('a.b', '2')])).toThrow(/all references by `\*name`/)
  })
})
