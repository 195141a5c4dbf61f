/** Pieces side by side: worked by hand, the same as written out, and what is said of wrong ones. */
import { describe, expect, it } from 'vitest'
import { checkScenario } from '../../src/hand/check.js'
import { drawInputs } from '../../src/inputs/draw.js'
import { Line } from '../../src/line/line.js'
import { loadScenario } from '../../src/scenario/load.js'
import type { ScenarioError } from '../../src/scenario/problems.js'
import { simulate } from '../line/shift.js'

const head = (between: string) => `
cases: {box: {length: 400 mm, width: 300 mm, height: 300 mm}}
arrivals: {p: {time-between: ${between}, when-full: queue}}
shift: {length: 100 s}
`

/** All numbers of three shifts, by the paths of their measures; not those of pieces side by side taken together, which only a short form has. */
function figures(text: string): string[] {
  const { scenario } = loadScenario(text)
  const line = new Line(scenario)
  const shifts = [1, 2, 3].map((shift) => line.simulate('same', shift))
  const together = Object.keys(scenario.alike?.line ?? {})
  return line.columns.flatMap(({ measure: { path }, part }, index) => {
    const isOfAll = path[0] === 'equipment' && together.includes(path[1]!)
    return isOfAll ? [] : [`${path.join('.')} ${part} ${shifts.map(({ values }) => values[index]).join(' ')}`]
  })
}

const problems = (text: string): string[] => {
  try {
    loadScenario(text)
    return []
  } catch (error) {
    return (error as ScenarioError).problems.map(
      ({ code, path, line, rule, fix }) => `${line} ${path} ${code}: ${rule} (${fix})`,
    )
  }
}

describe('by hand: a case every 10 s, the first at 10 s, for 100 s', () => {
  it('two places of 18 s keep up: the case of 90 s is still in work at the end, and so is that of 100 s', () => {
    // comings 10, 20 ... 100: out at 28, 38 ... 98 (the case of 80 s), so 8
    const of = simulate(`${head('10 s')}line: {pack: {type: station, time: 18 s, side-by-side: 2}}`)
    expect(of('measures.output')).toBe(8)
    // the first to the first, the second to the other, turn by turn from then on
    expect(of('equipment.pack divert.measures.to-pack 1')).toBe(5)
    expect(of('equipment.pack divert.measures.to-pack 2')).toBe(5)
  })

  it('one place of 18 s does not: out at 28, 46, 64, 82 and 100 s', () => {
    const of = simulate(`${head('10 s')}line: {pack: {type: station, time: 18 s, side-by-side: 1}}`)
    expect(of('measures.output')).toBe(5)
    expect(() => of('equipment.pack divert.measures.to-pack 1')).toThrow('no measure')
  })

  it('by turns behind a divert of 4 s, in three places of 25 s: out 29 s after they came, so at 39 ... 99 s', () => {
    const of = simulate(
      `${head('10 s')}line: {pack: {type: station, time: 25 s, side-by-side: 3, divert: {rule: alternate, time: 4 s}}}`,
    )
    expect(of('measures.output')).toBe(7)
  })
})

describe('a piece that stands several times is the line that is written out', () => {
  const rest = `
cases: {a: {length: 400 mm, width: 300 mm, height: 250 mm}, b: {length: 500 mm, width: 350 mm, height: 300 mm}}
arrivals: {p: {time-between: {exponential: {mean: 2.2 s}}}, q: {rate: 1 cases/min, to: TO}}
shift: {length: 2 h}
tape: {price: 40 EUR/roll}
`
  const sealer = `type: sealer, flaps: {folded-by: people}, jams: {chance: 5 per 1000, clear: {lognormal: {mean: 80 s, cv: 0.8}}}, breakdowns: {after: {exponential: {mean: 1 h}}, repair: 5 min}`
  const crew = 'ops: {people: 1, walk: 10 s, does: [jams, roll-change, breakdowns]}'
  const money = 'currency: EUR, labour: 30 EUR/h, life: 8 yr, interest: 8 %, shifts: 480 per yr'
  const folder = (at: string) => `{people: 1, does: [jams], stands-at: ${at}}`

  it('to the last digit: merges, posts, prices and right of way', () => {
    const short = `${rest.replace('TO', 'sealer')}
line:
  infeed: {type: conveyor, length: 8 m, speed: 30 m/min}
  sealer: {${sealer}, side-by-side: 2, right-of-way: infeed}
  outfeed: {type: conveyor, length: 6 m, speed: 30 m/min}
  look: {type: inspect, chance: 1 %, rejects-to: exit}
crew: {${crew}, folder: ${folder('sealer')}}
money: {${money}, capital: {line.sealer: 20000 EUR, line.sealer.divert: 3000 EUR}}
`
    const long = `${rest.replace('TO', 'sealer divert')}
line:
  infeed: {type: conveyor, length: 8 m, speed: 30 m/min}
  sealer divert: {type: divert, rule: shortest, to: [sealer 1, sealer 2], right-of-way: infeed}
  sealer 1: {${sealer}, to: outfeed}
  sealer 2: {${sealer}, to: outfeed}
  outfeed: {type: conveyor, length: 6 m, speed: 30 m/min}
  look: {type: inspect, chance: 1 %, rejects-to: exit}
crew: {${crew}, folder 1: ${folder('sealer 1')}, folder 2: ${folder('sealer 2')}}
money: {${money}, capital: {line.sealer 1: 20000 EUR, line.sealer 2: 20000 EUR, line.sealer divert: 3000 EUR}}
`
    expect(figures(short)).toEqual(figures(long))
  })

  it('whatever the kind: conveyors, inspections and diverts, next to one another and last', () => {
    const short = `${rest.replace('TO', 'belts')}
line:
  belts: {type: conveyor, carries: belt, length: 4 m, speed: 20 m/min, side-by-side: 3, divert: {rule: alternate, time: 1 s}}
  look: {type: inspect, chance: 1 %, side-by-side: 2, time: 2 s, rejects-to: belts}
  parts: {type: divert, to: [a, b], side-by-side: 2}
  a: {type: station, time: 3 s, waiting-room: 2, to: exit}
  b: {type: station, time: 3 s, side-by-side: 2}
`
    const long = `${rest.replace('TO', 'belts divert')}
line:
  belts divert: {type: divert, rule: alternate, time: 1 s, to: [belts 1, belts 2, belts 3]}
  belts 1: {type: conveyor, carries: belt, length: 4 m, speed: 20 m/min, to: look divert}
  belts 2: {type: conveyor, carries: belt, length: 4 m, speed: 20 m/min, to: look divert}
  belts 3: {type: conveyor, carries: belt, length: 4 m, speed: 20 m/min, to: look divert}
  look divert: {type: divert, rule: shortest, to: [look 1, look 2]}
  look 1: {type: inspect, chance: 1 %, time: 2 s, rejects-to: belts divert, to: parts divert}
  look 2: {type: inspect, chance: 1 %, time: 2 s, rejects-to: belts divert, to: parts divert}
  parts divert: {type: divert, rule: shortest, to: [parts 1, parts 2]}
  parts 1: {type: divert, to: [a, b divert]}
  parts 2: {type: divert, to: [a, b divert]}
  a: {type: station, time: 3 s, waiting-room: 2, to: exit}
  b divert: {type: divert, rule: shortest, to: [b 1, b 2]}
  b 1: {type: station, time: 3 s, to: exit}
  b 2: {type: station, time: 3 s, to: exit}
`
    expect(figures(short)).toEqual(figures(long))
  })

  it('one that stands once is the piece itself', () => {
    const one = (keys: string) => `${rest.replace('TO', 'pack')}
line: {pack: {type: station, time: {exponential: {mean: 2 s}}, breakdowns: {after: {exponential: {mean: 1 h}}, repair: 5 min}${keys}}}
`
    expect(figures(one(', side-by-side: 1'))).toEqual(figures(one('')))
    expect(figures(one(', side-by-side: 1, divert: {rule: alternate}'))).toEqual(figures(one('')))
  })
})

describe('of pieces side by side', () => {
  const line = (keys: string, more = '') =>
    `${head('{exponential: {mean: 10 s}}')}line: {pack: {type: station, time: 5 s${keys}}${more}}`

  it('what is told of one is told of each: defaults, paths of changes, evidence', () => {
    const text = line(', side-by-side: 2, breakdowns: {after: 3 in 100 h, repair: 5 min}')
    const read = loadScenario(text, { sets: ['line.pack.time=7 s', 'line.pack.side-by-side=3'] })
    const { line: pieces } = read.scenario
    expect(Object.keys(pieces)).toEqual(['pack divert', 'pack 1', 'pack 2', 'pack 3'])
    expect(pieces['pack 3']).toMatchObject({ time: { law: 'constant', value: 7 }, to: 'exit' })
    expect(read.assumed.map(({ path }) => path)).toContain('line.pack.divert.rule')
    expect(read.evidence.map(({ path }) => path)).toEqual(['line.pack.breakdowns.after'])
    expect(read.placeOf(['line', 'pack 2', 'type'])).toMatchObject({ line: 5 })
    const drawn = drawInputs(read, 'seed', 1).scenario.line
    const after = ['pack 1', 'pack 2', 'pack 3'].map((name) => drawn[name]!.breakdowns!.after)
    expect(after[0]).not.toEqual(pieces['pack 1']!.breakdowns!.after)
    expect(after[1]).toEqual(after[0])
    expect(after[2]).toEqual(after[0])
  })

  it('a check tells what is so of all of them once, by the path in the file', () => {
    const text = `${head('{exponential: {mean: 10 s}}')}line: {in: {type: conveyor, length: 6 m, speed: 30 m/min}, seal: {type: sealer, belt-speed: 20 m/min, side-by-side: 3, jams: {chance: 1 %, clear: 10 s}}}`
    const { findings } = checkScenario(loadScenario(text))
    const ofSealers = findings.filter(({ path }) => path.startsWith('line.seal'))
    expect(ofSealers.map(({ code, path }) => `${code} ${path}`)).toEqual([
      ...new Set(ofSealers.map(({ code, path }) => `${code} ${path}`)),
    ])
    expect(ofSealers.length).toBeGreaterThan(0)
    for (const { place, message } of ofSealers) {
      expect(place).toMatchObject({ line: 5 })
      expect(message).toMatch(/The same applies to `seal 2`\. The same applies to `seal 3`\.$/)
    }
  })

  it('a number that is none is told with its place, rule and mend', () => {
    const at = '5 line.pack.side-by-side'
    expect(problems(line(', side-by-side: 0'))).toEqual([
      `${at} out-of-range: must be at least 1 (use a value of at least 1)`,
    ])
    expect(problems(line(', side-by-side: 21'))).toEqual([
      `${at} out-of-range: must be at most 20 (use a value of at most 20)`,
    ])
    expect(problems(line(', side-by-side: 1.5'))).toEqual([
      `${at} wrong-type: must be a whole number (write a whole number here)`,
    ])
    expect(problems(line(', side-by-side: two'))).toEqual([
      `${at} wrong-type: must be a number (write a number here)`,
    ])
  })

  it('names that are taken, a divert for one, and right of way for several are told', () => {
    expect(problems(line(', side-by-side: 2', ', pack 2: {type: station, time: 3 s}'))).toEqual([
      '5 line.pack 2 bad-name: `pack 2` is already the name of one of the pieces of `pack` side by side (choose another name)',
    ])
    expect(problems(line(', divert: {rule: shortest}'))).toEqual([
      '5 line.pack.divert conflict: `divert` is only for several pieces side by side (add `side-by-side: 2`, or remove it)',
    ])
    expect(
      problems(line(', side-by-side: 2', ', seal: {type: station, time: 3 s, right-of-way: pack}')),
    ).toEqual([
      '5 line.seal.right-of-way conflict: right of way must be given to one piece, but there are 2 of `pack` side by side (put a piece after them in which they merge, such as a conveyor, and name that piece)',
    ])
  })
})
