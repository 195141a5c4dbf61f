/** Rules of other work, planned work, hours of people and handovers: each breach at its place, with its rule and the nearest mend. */
import { describe, expect, it } from 'vitest'
import { drawInputs } from '../../src/inputs/draw.js'
import { loadScenario } from '../../src/scenario/load.js'
import { type Problem, ScenarioError } from '../../src/scenario/problems.js'

const text = (
  crew: string,
  piece = '',
  shift = 'length: 8 h',
) => `cases: {a: {length: 400 mm, width: 300 mm, height: 300 mm}}
arrivals: {p: {time-between: 10 s}}
line: {s: {type: station, time: 5 s, ${piece}}}
crew: {packers: {does: [jams], ${crew}}}
shift: {${shift}}`

function problems(yaml: string): Pick<Problem, 'code' | 'path' | 'rule' | 'fix'>[] {
  try {
    loadScenario(yaml)
  } catch (error) {
    if (error instanceof ScenarioError)
      return error.problems.map(({ code, path, rule, fix }) => ({ code, path, rule, fix }))
    throw error
  }
  return []
}

const told = (yaml: string) => problems(yaml).map(({ code, path }) => `${code} ${path}`)

describe('other work', () => {
  it.each([
    ['share: 30 %, takes: 4 min', []],
    ['every: 20 min, takes: 4 min, can-be-left: true', []],
    ['share: 30 %', ['missing-key crew.packers.other-work.takes']],
    ['takes: 4 min', ['one-of crew.packers.other-work']],
    ['share: 30 %, every: 20 min, takes: 4 min', ['one-of crew.packers.other-work']],
    ['share: 100 %, takes: 4 min', ['out-of-range crew.packers.other-work.share']],
    ['share: 130 %, takes: 4 min', ['out-of-range crew.packers.other-work.share']],
    ['share: 0 %, takes: 4 min', ['out-of-range crew.packers.other-work.share']],
    ['every: 4 min, takes: 4 min', ['conflict crew.packers.other-work.every']],
    ['every: 0 min, takes: 4 min', ['out-of-range crew.packers.other-work.every']],
    ['share: 30 %, takes: 0 s', ['out-of-range crew.packers.other-work.takes']],
    ['share: 30 %, takes: 4 min, can-be-lift: true', ['unknown-key crew.packers.other-work.can-be-lift']],
  ])('{%s}: %j', (keys, expected) => {
    expect(told(text(`other-work: {${keys}}`))).toEqual(expected)
    // in a list the place has its number
    const inList = expected.map((each) => each.replace('other-work', 'other-work.1'))
    expect(told(text(`other-work: [{share: 1 %, takes: 1 min}, {${keys}}]`))).toEqual(inList)
  })

  it('says rule and mend', () => {
    expect(problems(text('other-work: {every: 4 min, takes: 6 min}'))[0]).toMatchObject({
      rule: 'one job takes 6 min on average, but for each of 1 people the next one is due after 4 min: the work is never done',
      fix: 'use more than 6 min, a shorter `takes`, or more `people`',
    })
    expect(problems(text('other-work: {share: 30 %, takes: 4 min, can-be-lift: true}'))[0]!.fix).toBe(
      'did you mean `can-be-left`?',
    )
  })

  it('is for two people what one cannot do', () => {
    expect(told(text('people: 2, other-work: {every: 4 min, takes: 6 min}'))).toEqual([])
  })

  it('of all kinds together leaves time for the line', () => {
    const two = 'other-work: [{share: 60 %, takes: 4 min}, {every: 10 min, takes: 5 min}]'
    expect(told(text(two))).toEqual(['conflict crew.packers.other-work'])
    expect(problems(text(two))[0]!.rule).toContain('takes 110 % of their time')
  })

  it('lists its default with the basis, and takes evidence', () => {
    const { assumed, evidence } = loadScenario(
      text(
        'other-work: {share: {guess: 30 %, between: [20 %, 45 %]}, takes: {exponential: {mean: 4 min, from: 30}}}',
      ),
    )
    expect(assumed).toContainEqual({
      path: 'crew.packers.other-work.can-be-left',
      value: false,
      basis: 'definition of the format',
    })
    expect(evidence.map(({ path, known }) => [path, known.form])).toEqual([
      ['crew.packers.other-work.share', 'guess'],
      ['crew.packers.other-work.takes', 'fitted'],
    ])
  })

  it('and planned work are drawn within what is believed of them', () => {
    const loaded = loadScenario(
      text(
        'other-work: {share: {guess: 30 %, between: [20 %, 45 %]}, takes: {guess: 4 min, between: [2 min, 8 min]}}',
        'planned: [{does: cleaning, at: 4 h, takes: {guess: 8 min, between: [5 min, 15 min]}}]',
      ),
    )
    const drawn = [1, 2, 3].map((number) => drawInputs(loaded, 'draws', number))
    expect(drawn.map(({ inputs }) => inputs.length)).toEqual([3, 3, 3])
    for (const { scenario, inputs } of drawn) {
      expect(inputs.every((value) => value > 0)).toBe(true)
      expect(scenario.line.s!.planned![0]!.takes).toEqual({ law: 'constant', value: expect.any(Number) })
      expect(scenario.crew.packers!['other-work']).toMatchObject({ share: expect.any(Number) })
    }
    expect(new Set(drawn.map(({ inputs }) => inputs.join())).size).toBe(3)
  })

  it('can be changed by path, in a list by its number', () => {
    const changed = loadScenario(text('other-work: [{share: 30 %, takes: 4 min}]'), {
      sets: ['crew.packers.other-work.0.can-be-left=true'],
    }).scenario.crew.packers!['other-work']
    expect(changed).toMatchObject([{ 'can-be-left': true }])
  })
})

describe('planned work', () => {
  it.each([
    ['at: 4 h, takes: 10 min, needs: packers', []],
    ['every: 2 h, takes: 10 min', []],
    ['takes: 10 min', ['one-of line.s.planned.0']],
    ['at: 4 h, every: 2 h, takes: 10 min', ['one-of line.s.planned.0']],
    ['at: 8 h, takes: 10 min', ['out-of-range line.s.planned.0.at']],
    ['every: 8 h, takes: 10 min', ['out-of-range line.s.planned.0.every']],
    ['every: 10 min, takes: 10 min', ['conflict line.s.planned.0.takes']],
    ['at: 1 h, takes: 0 s', ['out-of-range line.s.planned.0.takes']],
    ['at: 1 h, takes: 10 min, needs: packer', ['no-such-path line.s.planned.0.needs']],
  ])('{%s}: %j', (keys, expected) => {
    expect(told(text('', `planned: [{does: cleaning, ${keys}}]`))).toEqual(expected)
  })

  it('says rule and mend', () => {
    const of = (keys: string) => problems(text('', `planned: [{does: cleaning, takes: 10 min, ${keys}}]`))[0]
    expect(of('at: 1 h, needs: packer')).toMatchObject({
      rule: 'there is no crew `packer`',
      fix: 'did you mean `packers`?',
    })
    expect(of('at: 9 h')).toMatchObject({
      rule: 'is after the end of the shift',
      fix: 'use a time before 8 h, the end of the shift',
    })
  })
})

describe('hours of people', () => {
  it.each([
    ['run-by: people, by-hour: [100 %, 97 %], handover: 5 min', '', []],
    ['by-hour: [100 %, 97 %]', '', ['conflict line.s.by-hour']],
    ['by-hour: [0 %], run-by: people', '', ['out-of-range line.s.by-hour.0']],
    ['handover: 5 min', '', ['conflict line.s.handover']],
    ['run-by: people, handover: 4 h', '', ['conflict line.s.handover']],
    ['run-by: people, handover: 5 min', 'breaks: [{at: 4 min, for: 10 min}]', ['conflict line.s.handover']],
    ['run-by: people, handover: 5 min', 'breaks: [{at: 7 h, for: 57 min}]', ['conflict line.s.handover']],
    ['run-by: people, handover: 5 min', 'breaks: [{at: 7 h, for: 57 min}], run-out: 10 min', []],
  ])('{%s} in {%s}: %j', (piece, shift, expected) => {
    expect(told(text('', piece, `length: 8 h, ${shift}`))).toEqual(expected)
  })
})
