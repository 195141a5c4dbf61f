/** ISO 22400-2 by hand on a shift whose every second is known. */
import { describe, expect, it } from 'vitest'
import { elements } from '../../src/line/effectiveness.js'
import { Line } from '../../src/line/line.js'
import { State } from '../../src/line/states.js'
import { loadScenario } from '../../src/scenario/load.js'

/** Value over denominator of each effectiveness measure. */
function figures(text: string): Record<string, number> {
  const line = new Line(loadScenario(text).scenario)
  const { values } = line.simulate('iso', 1)
  return Object.fromEntries(
    line.columns.flatMap(({ measure, part }, index) =>
      measure.path[2] === 'effectiveness' && part === 'value'
        ? [[measure.path[3]!, measure.over ? values[index]! / values[index + 1]! : values[index]!]]
        : [],
    ),
  )
}

const line = (more: string, shift: string) => `cases: {a: {length: 400 mm, width: 300 mm, height: 300 mm}}
arrivals: {p: {time-between: 10 s}}
line: {s: {type: sealer, belt-speed: 24 m/min, minimum-gap: 300 mm${more}}}
shift: ${shift}`

describe('effectiveness of a sealer', () => {
  it('has a time element for each state, planned downtime outside the planned busy time included', () => {
    const mapped: number[] = Object.values(elements).flat()
    expect(mapped.sort((a, b) => a - b)).toEqual(Object.values(State))
  })

  it('ten cases, nine of them out, in 100 s: APT 10 x 1.75 s less what the end cuts off', () => {
    // cases enter at 10 … 100 s; the one at 100 has no time: APT 9 x 1.75; out 14.75 … 94.75: nine
    const found = figures(line('', '{length: 100 s}'))
    expect(found).toMatchObject({ PBT: 100, AUST: 0 })
    expect(found.APT).toBeCloseTo(15.75, 9)
    expect(found.ADET).toBeCloseTo(84.25, 9)
    expect(found.availability).toBeCloseTo(0.1575, 9)
    expect(found.effectiveness).toBeCloseTo(1, 9)
    expect(found.quality).toBe(1)
    expect(found.oee).toBeCloseTo(0.1575, 9)
    expect(found['technical-availability']).toBe(1)
  })

  it('folding counts as production but not as planned run time: effectiveness 1.75 / 2.75', () => {
    const found = figures(line(', flaps: {time: 1 s}', '{length: 99 s}'))
    expect(found.effectiveness).toBeCloseTo(1.75 / 2.75, 9)
  })

  it('a break lies outside the planned busy time, a jam within it and against the machine alone', () => {
    const jams = ', jams: {chance: 100 %, clear: 5 s}'
    const found = figures(
      line(jams, '{length: 99 s, breaks-stop: everything, breaks: [{at: 51 s, for: 20 s}]}'),
    )
    expect(found.PBT).toBeCloseTo(79, 9)
    // jams at 12.25, 22.25 … 52.25 + 20 (the case that came at 50 stands in the machine over the break), 82.25, 92.25
    expect(found['technical-availability']).toBeCloseTo((79 - 7 * 5) / 79, 9)
  })

  it('what others do to it lowers availability and not technical availability', () => {
    const blocked = `${line('', '{length: 300 s}').replace('}}\nshift', '}, w: {type: station, time: 30 s}}\nshift')}`
    const found = figures(blocked)
    expect(found['technical-availability']).toBe(1)
    expect(found.availability).toBeLessThan(0.2)
  })
})
