/** Whether shifts show what may happen: by hand, and the stops of a line by name. */
import { describe, expect, it } from 'vitest'
import { chanceStops } from '../../src/answers/condition.js'
import { measureName, type StudyMeasure, studyMeasures } from '../../src/answers/figures.js'
import { Line } from '../../src/line/line.js'
import { loadScenario } from '../../src/scenario/load.js'
import { StopsSeen, tooRareToMatter } from '../../src/statistics/seen.js'

describe('too rare to matter', () => {
  it('never in so many shifts: (1 - p)^n is at most the risk', () => {
    // 1 of 10 would matter: 0.9^28 = 0.052, 0.9^29 = 0.047
    expect(tooRareToMatter(0, 28, 10, 1, 0.05)).toBe(false)
    expect(tooRareToMatter(0, 29, 10, 1, 0.05)).toBe(true)
    // of a cost that is told as less is better the same
    expect(tooRareToMatter(0, 29, -10, 1, 0.05)).toBe(true)
  })

  it('once: (1 - p)^n + n p (1 - p)^(n - 1) is', () => {
    // n = 46: 0.00786 + 0.04015 = 0.0480; n = 45: 0.00873 + 0.04364 = 0.0524
    expect(tooRareToMatter(1, 45, 10, 1, 0.05)).toBe(false)
    expect(tooRareToMatter(1, 46, 10, 1, 0.05)).toBe(true)
  })

  it('where all of the figure does not matter, nothing does', () => {
    expect(tooRareToMatter(0, 1, 1, 1, 0.05)).toBe(true)
    expect(tooRareToMatter(3, 10, 0, 1, 0.05)).toBe(true)
  })

  it('without a figure nothing is known', () => {
    expect(tooRareToMatter(0, 10_000, Number.NaN, 1, 0.05)).toBe(false)
  })
})

const stop = (key: string, index: number): StudyMeasure => ({
  path: ['equipment', 'sealer', 'measures', key],
  label: key,
  unit: 'count',
  index,
  kind: 'count',
})

describe('stops seen', () => {
  const stops = [stop('jams', 0), stop('breakdowns', 1)]

  it('counts shifts, not stops, until each kind came in five', () => {
    const seen = new StopsSeen(stops)
    for (let shift = 1; shift <= 8; shift++) seen.add([3, shift > 4 ? 2 : 0])
    expect(seen.unseen(100, 1, 0.05)).toEqual({ stop: stops[1], happened: 4 })
    seen.add([0, 1])
    expect(seen.unseen(100, 1, 0.05)).toBeNull()
  })

  it('names the rarest', () => {
    const seen = new StopsSeen(stops)
    seen.add([1, 0])
    seen.add([0, 0])
    expect(seen.unseen(100, 1, 0.05)).toEqual({ stop: stops[1], happened: 0 })
  })

  it('is content with what is too rare to matter: never in 299 shifts, where 1 % would', () => {
    // 0.99^298 = 0.0500 x 1.0006, 0.99^299 = 0.0495
    const seen = new StopsSeen([stops[1]!])
    for (let shift = 1; shift <= 298; shift++) seen.add([0, 0])
    expect(seen.unseen(100, 1, 0.05)).not.toBeNull()
    seen.add([0, 0])
    expect(seen.unseen(100, 1, 0.05)).toBeNull()
  })

  it('a line without such stops is seen at once', () => {
    expect(new StopsSeen([]).unseen(100, 1, 0.05)).toBeNull()
  })
})

it('of a line jams, tape breaks and breakdowns that its scenario names, not what comes with the cases', () => {
  const { scenario } = loadScenario(`title: named stops
cases: {box: {length: 400 mm, width: 300 mm, height: 300 mm}}
arrivals: {packing: {time-between: 6 s}}
line:
  sealer:
    type: sealer
    jams: {chance: 1 per 1000 cases, clear: 60 s}
    tape-breaks: {chance: 1 per 1000, fix: 60 s}
    roll-change: {time: 90 s}
  palletiser: {type: station, time: 3 s, every: {cases: 40, stop: 45 s}, breakdowns: {after: 20 h, repair: 5 min}}
crew: {operator: {people: 1, does: [jams, roll-change, breakdowns]}}
shift: {length: 1 h}
`)
  const stops = chanceStops(studyMeasures(new Line(scenario).columns, 1))
  expect(stops.map(measureName).sort()).toEqual([
    'equipment.palletiser.breakdowns',
    'equipment.sealer.jams',
    'equipment.sealer.tape-breaks',
  ])
})
