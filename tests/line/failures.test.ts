/**
 * MTBF, MTTF and MTTR by hand on shifts whose every second is known. ISO 22400-2 (formulas from memory): sums of the times
 * over failures + 1.
 */
import { describe, expect, it } from 'vitest'
import { estimate, studyMeasures } from '../../src/answers/figures.js'
import { Line } from '../../src/line/line.js'
import { loadScenario } from '../../src/scenario/load.js'

/** The estimates of a piece from the first `shifts` of a scenario. */
function figures(text: string, shifts = 1) {
  const line = new Line(loadScenario(text).scenario)
  const results = Array.from({ length: shifts }, (_, index) => line.simulate('failures', index + 1))
  return Object.fromEntries(
    studyMeasures(line.columns, 1)
      .filter(({ path }) => path[2] === 'effectiveness')
      .map((measure) => [
        measure.path[3]!,
        estimate(measure, results, { confidence: 0.95, exposure: 1 }, null),
      ]),
  )
}

const text = (piece: string, more = '') => `cases: {a: {length: 400 mm, width: 300 mm, height: 300 mm}}
arrivals: {p: {time-between: 10 s}}
line: {it: ${piece}}
shift: {length: 100 s}${more}`

// at work 10–15, 20–25, 30–32; down to 35; 35–38, 40–45, 50–54; down to 57; 57–58, 60–65, 70–75, 80–81; down to 84; 84–88, 90–95
const station = '{type: station, time: 5 s, breakdowns: {after: 12 s, counted-in: running-time, repair: 3 s}}'

describe('mean times of failures', () => {
  it('of a station: three failures after 12 s at work each, 9 s at work after the last repair', () => {
    const found = figures(text(station))
    expect(Object.keys(found)).toEqual(['MTBF', 'MTTF', 'MTTR'])
    expect(found.MTTF!.mean).toBeCloseTo((3 * 12 + 9) / 4, 9)
    expect(found.MTTR!.mean).toBeCloseTo((3 * 3) / 4, 9)
    expect(found.MTBF!.mean).toBeCloseTo((3 * 12 + 9 + 3 * 3) / 4, 9)
  })

  it('of a sealer without a failure: all its operating time, and no repair', () => {
    const found = figures(
      text(
        '{type: sealer, belt-speed: 24 m/min, minimum-gap: 300 mm, breakdowns: {after: 9 h, repair: 3 s}}',
      ),
    )
    // nine cases of 1.75 s each, as in the other figures of that standard
    expect(found.MTTF!.mean).toBeCloseTo(15.75, 9)
    expect(found.MTBF!.mean).toBeCloseTo(15.75, 9)
    expect(found.MTTR!.mean).toBe(0)
  })

  it('the way of the fitter is part of the repair, the repair that the end cuts off counts as far as it came', () => {
    // down 32–42, 7 s of them the way; 42–45; the case of 40 had to wait: 45–50, the next one 10 s later: 55–59; down to 69; 69–70, 70–75, 80–85, 90–91; down
    const found = figures(text(station, '\ncrew: {fitter: {people: 1, walk: 7 s, does: [breakdowns]}}'))
    expect(found.MTTR!.mean).toBeCloseTo((10 + 10 + 9) / 4, 9)
    expect(found.MTTF!.mean).toBeCloseTo((3 * 12) / 4, 9)
  })

  it('of several shifts: one more in the whole study, not in each', () => {
    const found = figures(text(station), 5)
    expect(found.MTTF!.mean).toBeCloseTo((5 * 45) / (5 * 3 + 1), 9)
    expect(found.MTTR!.mean).toBeCloseTo((5 * 9) / (5 * 3 + 1), 9)
    expect(found.MTBF!.mean).toBeCloseTo(found.MTTF!.mean + found.MTTR!.mean, 9)
  })

  it('of few failures: their number in place of plus-minus, none included', () => {
    const some = text(station.replace('after: 12 s', 'after: {exponential: {mean: 200 s}}'))
    const line = new Line(loadScenario(some).scenario)
    const shifts = Array.from({ length: 20 }, (_, index) => line.simulate('failures', index + 1))
    const count = line.columns.findIndex(({ measure }) => measure.path.at(-1) === 'breakdowns')
    const failures = shifts.reduce((sum, { values }) => sum + values[count]!, 0)
    expect(failures).toBeLessThan(30)
    const found = figures(some, 20)
    for (const key of ['MTBF', 'MTTF', 'MTTR'])
      expect(found[key]).toMatchObject({ low: Number.NaN, few: { events: failures, of: 'events' } })
    const none = figures(text(station.replace('after: 12 s', 'after: {uniform: {low: 1 h, high: 2 h}}')), 3)
    // the cases of 10 to 90, the one of 100 has no time
    expect(none.MTTF).toMatchObject({ mean: expect.closeTo(3 * 9 * 5, 9), few: { events: 0 } })
  })

  it('of many failures: near the mean of the distribution, with plus-minus', () => {
    const many = text(station.replace('after: 12 s', 'after: {exponential: {mean: 12 s}}'))
    const { MTTF } = figures(many, 400)
    const standardError = (MTTF!.high - MTTF!.low) / 2 / 1.96
    expect(standardError).toBeLessThan(0.5)
    // a time per event is less well known upwards
    expect(MTTF!.high - MTTF!.mean).toBeGreaterThan(MTTF!.mean - MTTF!.low)
    // four standard errors, as of a published value
    expect(Math.abs(MTTF!.mean - 12)).toBeLessThan(4 * standardError)
  })

  it('is not told of what cannot break down', () => {
    expect(figures(text('{type: station, time: 5 s}'))).toEqual({})
  })
})
