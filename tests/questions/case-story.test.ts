/** The story of one case, worked by hand: where it was, how long it stood there, and what for. */
import { describe, expect, it } from 'vitest'
import type { Line } from '../../src/line/line.js'
import { spell } from '../../src/questions/trace/events.js'
import { CaseStory } from '../../src/questions/trace/story.js'
import { loadScenario } from '../../src/scenario/load.js'
import { build } from '../line/arriving.js'

/** Cases of 400 mm at these times, to a conveyor of 2 m at 0.2 m/s and a table of so many seconds a case. */
function storyOf(arrivals: number[], table: string, number: number): string[] {
  const line =
    '{a: {type: conveyor, length: 2 m, speed: 12 m/min, spacing: 0 mm}, b: {type: station, time: ' +
    table +
    '}}'
  const cases = '{box: {length: 400 mm, width: 300 mm, height: 300 mm}}'
  const built: Line = build(
    '{log: {file: x.csv, time: t, unit: s}, when-full: wait}',
    '{length: 100 s, run-out: 100 s}',
    {
      cases,
      line,
      rows: [['t'], ...arrivals.map((time) => [String(time)])],
    },
  )
  const { scenario } = loadScenario(
    `cases: ${cases}\narrivals: {p: {time-between: 9 s}}\nline: ${line}\nshift: {length: 100 s}`,
  )
  const story = new CaseStory(number, scenario)
  built.observe((event) => story.take(event))
  built.simulate('hand', 1)
  built.observe(null)
  return story.words(200).trim().split('\n')
}

describe('the story of a case', () => {
  it('says no standing where there is none', () => {
    // 10 s on the conveyor, 3 s at the table
    expect(storyOf([0], '3 s', 1)).toEqual([
      'Case 1 (box) left the line, 13 s after it arrived:',
      '  a  10 s',
      '  b  3 s',
    ])
  })

  it('says how long it stood behind others', () => {
    // case 1 is at the table from 10 to 30; case 2 comes at 2, is at the end at 12 and stands until 30
    expect(storyOf([0, 2], '20 s', 2)).toEqual([
      'Case 2 (box) left the line, 48 s after it arrived:',
      '  a  28 s, 18 s of that standing: behind others, b was busy',
      '  b  20 s',
    ])
  })

  it('says what it waited for before the line', () => {
    // case 1 is at the table from 10 to 50; cases 2 to 6 fill the 2 m of the conveyor from 10 on, and 2 stands at its end from 12. When
    // it goes, at 50, case 6 is 400 mm from the entrance: 7 comes onto it then
    const [first, before] = storyOf([0, 2, 4, 6, 8, 10, 11], '40 s', 7)
    expect(first).toMatch(/^Case 7 \(box\) left the line|^Case 7 \(box\) is still in the line/)
    expect(before).toMatch(/before the line \(p\) +39 s, waiting for room: a blocked 38 s/)
  })

  it('says times as people do', () => {
    expect([0.04, 9.96, 59.94, 59.96, 125, 3600, 3700].map(spell)).toEqual([
      '0 s',
      '10 s',
      '59.9 s',
      '1 min',
      '2 min 5 s',
      '1 h',
      '1 h 1 min',
    ])
  })
})
