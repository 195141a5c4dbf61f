/** What the scenario fixes is certain although it does not vary; what only happens not to vary is not. */
import { describe, expect, it } from 'vitest'
import { estimate, measureNamed, studyMeasures } from '../../src/answers/figures.js'
import { judge } from '../../src/answers/requirement.js'
import { Line } from '../../src/line/line.js'
import { loadScenario } from '../../src/scenario/load.js'

/** Three shifts of an hour of a station that takes a case every 10 s; `time` of its work, `more` pieces behind it. */
function figureOf(name: string, time: string, more = '') {
  const { scenario } = loadScenario(`title: fixed or not
cases: {box: {length: 400 mm, width: 300 mm, height: 300 mm}}
arrivals: {p: {time-between: 10 s}}
line: {desk: {type: station, time: ${time}}${more}}
shift: {length: 1 h}
`)
  const line = new Line(scenario)
  const shifts = [1, 2, 3].map((shift) => line.simulate('fixed', shift))
  const measure = measureNamed(studyMeasures(line.columns, 1), name)!
  return estimate(measure, shifts, { confidence: 0.95, exposure: 1 }, null)
}

const sealer = ', sealer: {type: sealer, jams: {chance: 0.001 per 1000 cases, clear: 60 s}}'

describe('three shifts that are alike', () => {
  it('of a line in which nothing is drawn are all that there is: 360 cases come, and the last one is still in work', () => {
    const output = figureOf('output', '4 s')
    expect(output).toMatchObject({ low: output.mean, high: output.mean, isFixed: true })
    expect(judge({ sign: '>=', value: 300 }, output)).toBe('met')
  })

  it('of a line that jams once in a million cases do not say that it never jams', () => {
    const jams = figureOf('equipment.sealer.jams', '4 s', sealer)
    expect(jams).toMatchObject({ mean: 0, low: 0, few: { events: 0, of: 'events' } })
    expect(judge({ sign: '<=', value: 0.01 }, jams)).toBe('not-shown')
    const output = figureOf('output', '4 s', sealer)
    expect(output.low).toBe(output.high)
    expect(judge({ sign: '>=', value: 300 }, output)).toBe('not-shown')
  })

  it('states that a piece cannot be in, and cases that cannot leave open, are fixed', () => {
    for (const name of ['equipment.desk.states.jam-being-cleared', 'unsealed'])
      expect(figureOf(name, '{exponential: {mean: 4 s}}', sealer), name).toMatchObject({
        mean: 0,
        isFixed: true,
      })
  })
})
