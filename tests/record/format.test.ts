/** The record file: every key, and every finding with its place, rule and nearest mend. */
import { describe, expect, it } from 'vitest'
import { readRecordFile } from '../../src/record/read-format.js'
import { starterRecord } from '../../src/record/starter.js'
import { type Problem, ScenarioError } from '../../src/scenario/problems.js'

const small = `record:
  title: Line 2
  times: dd.MM.yyyy HH:mm
  shifts: {file: shifts.csv, begins: Beginn, ends: Ende, good: Gutmenge}
  stops: {file: stops.csv, begins: Von, ends: Bis, piece: Anlage, reason: Grund}
  means:
    Stau: line.sealer.jams
    Pause: break
`

function problems(text: string): readonly Problem[] {
  try {
    readRecordFile(text, 'plant.yaml')
  } catch (error) {
    if (error instanceof ScenarioError) return error.problems
    throw error
  }
  return []
}

/** What is found when `from` of the small record is written as `to`. */
function found(from: string, to: string): Problem {
  expect(small).toContain(from)
  const all = problems(small.replace(from, to))
  expect(all.map(({ rule }) => rule)).toHaveLength(1)
  return all[0]!
}

describe('a record file', () => {
  it('is read', () => {
    const file = readRecordFile(small)
    expect(file.title).toBe('Line 2')
    expect(file['seen-from']).toBeUndefined()
    expect(file.means).toEqual({ Stau: 'line.sealer.jams', Pause: 'break' })
  })

  it('the starter is one, with what it has in comments too', () => {
    expect(problems(starterRecord)).toEqual([])
    const all = starterRecord.replace(/^( *)# (?=(?:rounded-to|decimal|notes|cases|same| {2}\w+):)/gm, '$1')
    expect(all).not.toMatch(/^ *# {0,3}(?:cases|file|same)/m)
    expect(problems(all)).toEqual([])
    const file = readRecordFile(all)
    expect(file.cases?.kinds).toEqual({ 4711: 'small', 4712: 'large' })
    expect(file['rounded-to']).toBe(60)
    expect(file.same).toEqual({ 'Kleber alt': 'Kleber' })
    expect(file.shifts.breaks).toEqual([
      { at: '09:00', for: 900 },
      { at: '12:00', for: 1800 },
    ])
  })

  it.each([
    ['line.sealer.jams', 'line.sealer.jam', 'jams'],
    ['line.sealer.jams', 'line.sealer.breakdown', 'breakdowns'],
    ['line.sealer.jams', 'line.sealer.jams.clear', 'line.sealer.jams'],
    ['line.sealer.jams', 'line.sealer', 'line.sealer.jams'],
    ['line.sealer.jams', 'sealer.jams', 'line.sealer.jams'],
    ['line.sealer.jams', 'line.1.jams', 'line.sealer.jams'],
    ['Pause: break', 'Pause: breaks', 'break'],
    ['dd.MM.yyyy HH:mm', 'DD.MM.YYYY HH:mm', 'dd.MM.yyyy HH:mm'],
    ['times: dd', 'zone: Europe/Berln\n  times: dd', 'Europe/Berlin'],
    ['good: Gutmenge', 'god: Gutmenge', 'good'],
    ['ends: Bis', 'ends: Bis, lasts: Dauer', 'keep one of'],
    ['ends: Bis', 'lasts: Dauer', 'unit: min'],
    ['ends: Bis', 'lasts: Dauer, unit: hours', 'h'],
    ['times: dd', 'seen-from: 30\n  times: dd', '30 s'],
    ['times: dd', 'rounded-to: 1 m\n  times: dd', '90 s'],
    ['good: Gutmenge', 'breaks: [{at: 9 am, for: 15 min}]', '"09:00"'],
    ['good: Gutmenge', 'breaks: [{at: "25:00", for: 15 min}]', '"09:00"'],
    ['times: dd', 'decimal: dot\n  times: dd', 'point'],
  ])('with %s as %s is told the nearest fix:   %s', (from, to, mend) => {
    const { fix, line, column, rule, source } = found(from, to)
    expect(fix).toContain(mend)
    expect(rule).not.toBe('')
    expect(source).toBe('plant.yaml')
    expect(line).toBeGreaterThan(1)
    expect(column).toBeGreaterThan(1)
  })

  it('tells all that is wrong at once, each at its place', () => {
    const all = problems(
      small.replace('line.sealer.jams', 'line.sealer.jam').replace('Pause: break', 'Pause: brake'),
    )
    expect(all.map(({ line, column, path }) => [line, column, path])).toEqual([
      [7, 11, 'record.means.Stau'],
      [8, 12, 'record.means.Pause'],
    ])
  })

  it('a reason may mean something else at one piece, and what is wrong there is told there', () => {
    const there = `${small}    Palettierer:\n      Motor: line.palletiser.breakdowns\n`
    expect(readRecordFile(there).means.Palettierer).toEqual({ Motor: 'line.palletiser.breakdowns' })
    const [problem] = problems(there.replace('breakdowns', 'brakedowns'))
    expect(problem!.path).toBe('record.means.Palettierer.Motor')
    expect(problem!.fix).toContain('breakdowns')
  })

  it.each([
    ['', 'a record must be a YAML map with the key record'],
    ['[]', 'a record must be a YAML map with the key record'],
    ['record: {}', '`title` is missing and must be given'],
    ['recrd: {}', '`recrd` is not a key of a record file'],
    ['line: {}', 'this is a scenario, not a record of a plant'],
    ['record: {}\nline: {}', '`line` is not a key of a record file'],
    ['record: {title: a', 'not YAML 1.2'],
    ['record: {__proto__: a}', '`__proto__` is not a valid name'],
    ['record: {}\n---\nc: d', 'not YAML 1.2: a record must be one document'],
    ['a: b\n---\nc: d', 'not YAML 1.2: its lines are not shown'],
    ['x'.repeat(1_000_001), 'a record must have at most a million characters'],
    ['record: 5', 'must be a map of keys'],
  ])('%.40s is none', (text, rule) => {
    expect(problems(text).some((each) => each.rule.startsWith(rule))).toBe(true)
  })
})
