/** Rules of sensors that stop and start pieces, of speeds by level, and of slow starts: each breach at its place, with its rule and the nearest mend. */
import { describe, expect, it } from 'vitest'
import { loadScenario } from '../../src/scenario/load.js'
import { type Problem, ScenarioError } from '../../src/scenario/problems.js'

function problems(yaml: string): readonly Problem[] {
  try {
    loadScenario(yaml)
  } catch (error) {
    if (error instanceof ScenarioError) return error.problems
    throw error
  }
  return []
}

/** A sealer between two conveyors and two stations, with keys more for each. */
const text = (more: Partial<Record<'s' | 'infeed' | 'm' | 'outfeed' | 'p', string>>) => `
cases: {a: {length: 400 mm, width: 300 mm, height: 300 mm}, b: {length: 600 mm, width: 300 mm, height: 300 mm}}
arrivals: {p: {time-between: 10 s}}
line:
  s: {type: station, time: 1 s, ${more.s ?? ''}}
  infeed: {type: conveyor, length: 6 m, ${more.infeed ?? ''}}
  m: {type: sealer, ${more.m ?? ''}}
  outfeed: {type: conveyor, length: 5 m, ${more.outfeed ?? ''}}
  p: {type: station, time: 1 s, ${more.p ?? ''}}
crew: {men: {does: [jams, roll-change]}}
shift: {length: 8 h}`

const told = (more: Parameters<typeof text>[0]) =>
  problems(text(more)).map(({ code, path }) => `${code} ${path}`)

describe('sensors', () => {
  it.each([
    ['stops-when: {full: outfeed, for: 3 s}', []],
    [
      'stops-when: {full: outfeed, at: 4.4 m, for: 3 s}, starts-when: {clear: outfeed, for: 2 s}, restart: 1.5 s',
      [],
    ],
    // 5 m less the longest case, which the belts hold
    ['stops-when: {full: outfeed, at: 4.41 m, for: 3 s}', ['conflict line.m.stops-when.at']],
    [
      'stops-when: {full: outfeed, at: 5.1 m, for: 3 s}',
      ['out-of-range line.m.stops-when.at', 'conflict line.m.stops-when.at'],
    ],
    ['stops-when: {full: outfeed}', ['missing-key line.m.stops-when.for']],
    ['stops-when: {for: 3 s}', ['one-of line.m.stops-when']],
    ['stops-when: {full: outfeed, clear: infeed, for: 3 s}', ['one-of line.m.stops-when']],
    ['starts-when: {clear: outfeed, for: 3 s}', ['missing-key line.m.starts-when']],
    ['restart: 3 s', ['missing-key line.m.restart']],
    ['stops-when: {full: outfed, for: 3 s}', ['no-such-path line.m.stops-when.full']],
    ['stops-when: {full: p, for: 3 s}', ['no-such-path line.m.stops-when.full']],
    // what it waits for would have to come through itself
    ['stops-when: {full: infeed, for: 3 s}', ['conflict line.m.stops-when']],
    ['stops-when: {clear: outfeed, for: 3 s}', ['conflict line.m.stops-when']],
    [
      'stops-when: {full: outfeed, for: 3 s}, starts-when: {clear: infeed, for: 3 s}',
      ['conflict line.m.starts-when'],
    ],
    ['stops-when: {clear: infeed, for: 3 s}, starts-when: {full: infeed, at: 2 m, for: 3 s}', []],
  ])('sealer {%s}: %j', (keys, expected) => {
    expect(told({ m: keys })).toEqual(expected)
  })

  it('stop no gravity conveyor, none by itself, and look at one conveyor', () => {
    const full = 'stops-when: {full: outfeed, for: 3 s}'
    expect(told({ infeed: full })).toEqual([])
    expect(told({ infeed: `carries: gravity, ${full}` })).toEqual(['conflict line.infeed.stops-when'])
    expect(told({ outfeed: full })).toEqual(['no-such-path line.outfeed.stops-when.full'])
    expect(told({ m: full, outfeed: 'side-by-side: 2' })).toEqual(['conflict line.m.stops-when.full'])
  })

  it('let no two pieces wait for each other, where the places do not see to it', () => {
    // s stands while the queue on infeed is long; m waits until one is there
    const pair = (stop: string, start: string) =>
      told({
        s: `stops-when: {full: infeed, at: ${stop}, for: 3 s}`,
        m: `stops-when: {clear: infeed, at: 1 m, for: 3 s}, starts-when: {full: infeed, at: ${start}, for: 3 s}`,
      })
    expect(pair('4 m', '2 m')).toEqual([])
    expect(pair('2 m', '4 m')).toEqual(['conflict line.s.stops-when'])
    const [problem] = problems(
      text({
        s: 'stops-when: {full: infeed, at: 2 m, for: 3 s}',
        m: 'stops-when: {clear: infeed, at: 1 m, for: 3 s}, starts-when: {full: infeed, at: 4 m, for: 3 s}',
      }),
    )
    expect(problem).toMatchObject({
      rule: '`s` and `m` could wait for each other for ever: each is stopped until the other has moved cases on `infeed`',
      fix: 'remove `starts-when` of `m`, or start one of them by a sensor that the other cannot block',
    })
  })
})

describe('speeds by level', () => {
  it.each([
    ['{of: infeed, above: 60 %, at: 24 m/min}', []],
    ['{of: infeed, above: 60 %, at: 24 m/min, back-below: 60 %}', []],
    ['{of: infeed, above: 60 %, at: 24 m/min, back-below: 61 %}', ['conflict line.m.speeds.0.back-below']],
    // heads are rated for 24.4 m/min
    ['{of: infeed, above: 60 %, at: 24.5 m/min}', ['conflict line.m.speeds.0.at']],
    ['{of: p, above: 60 %, at: 24 m/min}', ['no-such-path line.m.speeds.0.of']],
    ['{of: infeed, above: 130 %, at: 24 m/min}', ['out-of-range line.m.speeds.0.above']],
    ['{of: infeed, at: 24 m/min}', ['missing-key line.m.speeds.0.above']],
  ])('sealer [%s]: %j', (step, expected) => {
    expect(told({ m: `speeds: [${step}]` })).toEqual(expected)
  })

  it('are of sealers and conveyors with a drive, and of one conveyor', () => {
    const steps = 'speeds: [{of: infeed, above: 60 %, at: 24 m/min}]'
    expect(told({ outfeed: `carries: belt, ${steps}` })).toEqual([])
    expect(told({ outfeed: steps })).toEqual([])
    expect(told({ outfeed: `carries: gravity, ${steps}` })).toEqual(['conflict line.outfeed.speeds'])
    expect(told({ outfeed: 'carries: gravity, acceleration: 0.5 m/s2' })).toEqual([
      'conflict line.outfeed.acceleration',
    ])
    expect(told({ m: steps, infeed: 'side-by-side: 2' })).toEqual(['conflict line.m.speeds.0.of'])
    expect(told({ s: steps })).toEqual(['unknown-key line.s.speeds'])
  })
})

describe('slow starts', () => {
  it.each([
    ['after: 10 min, at: 60 %, for: 3 min', []],
    ['after: 10 min, at: 100 %, for: 3 min', ['conflict line.m.slow-start.at']],
    ['after: 10 min, at: 120 %, for: 3 min', ['out-of-range line.m.slow-start.at']],
    ['after: 10 min, at: 60 %, for: 8 h', ['conflict line.m.slow-start.for']],
    ['after: 8 h, at: 60 %, for: 3 min', ['conflict line.m.slow-start.after']],
    ['after: 8 h, at: 60 %, for: 3 min, at-shift-start: true', []],
    ['at: 60 %, for: 3 min', ['missing-key line.m.slow-start.after']],
  ])('sealer {%s}: %j', (keys, expected) => {
    expect(told({ m: `slow-start: {${keys}}` })).toEqual(expected)
  })

  it('are of sealers and stations', () => {
    const keys = 'slow-start: {after: 10 min, at: 60 %, for: 3 min}'
    expect(told({ s: keys })).toEqual([])
    expect(told({ outfeed: keys })).toEqual(['unknown-key line.outfeed.slow-start'])
  })
})
