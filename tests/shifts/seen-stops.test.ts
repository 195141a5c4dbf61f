/** Stops of simulated shifts as a log has them: worked by hand, and against what the line counts itself. */
import { describe, expect, it } from 'vitest'
import { Line } from '../../src/line/line.js'
import type { ShiftEvent } from '../../src/line/shift-event.js'
import { loadScenario } from '../../src/scenario/load.js'
import { SeenStops, stopSumsOf } from '../../src/shifts/seen-stops.js'
import { Simulator } from '../../src/shifts/work.js'
import { differences } from '../line/engines.js'

const { scenario } = loadScenario(`title: Two pieces
cases: {a: {length: 400 mm, width: 300 mm, height: 250 mm}}
arrivals: {p: {time-between: {exponential: {mean: 8 s}}}}
line:
  sealer: {type: sealer, jams: {chance: 1 %, clear: {exponential: {mean: 60 s}}}}
  palletiser: {type: station, time: 3 s, every: {cases: 40, stop: 45 s}}
shift: {length: 2 h, breaks: [{at: 1 h, for: 10 min}]}
`)

const event = (time: number, what: ShiftEvent['event'], at: string, more: Partial<ShiftEvent> = {}) => ({
  ...{ time, event: what, at },
  ...more,
})

/** Sums of the piece and cause: stops, and s. */
function sums(seen: Float64Array, piece: string, cause: string): [number, number] {
  const place = stopSumsOf(scenario).findIndex((each) => each.piece === piece && each.cause === cause)
  return [seen[2 * place]!, seen[2 * place + 1]!]
}

describe('stops as a log shows them', () => {
  it('each from stop to restart, by piece and cause', () => {
    const seen = new SeenStops(scenario, { seenFrom: 0, grain: 0 })
    seen.take(event(100, 'stops', 'sealer', { cause: 'jams' }))
    seen.take(event(130, 'work-begins', 'sealer'))
    seen.take(event(160, 'work-done', 'sealer'))
    seen.take(event(200, 'stops', 'sealer', { cause: 'jams' }))
    seen.take(event(210, 'planned-stop', 'palletiser'))
    seen.take(event(220, 'work-done', 'sealer'))
    seen.take(event(211, 'state', 'palletiser', { state: 'planned-stop' }))
    seen.take(event(255, 'state', 'palletiser', { state: 'working' }))
    const found = seen.close(7200)
    expect(sums(found, 'sealer', 'jams')).toEqual([2, 80])
    expect(sums(found, 'palletiser', 'planned-stops')).toEqual([1, 45])
    expect(sums(found, 'sealer', 'breakdowns')).toEqual([0, 0])
  })

  it('planned work as a planned stop, beside a stop as that one', () => {
    const seen = new SeenStops(scenario, { seenFrom: 0, grain: 0 })
    seen.take(event(100, 'planned-work', 'sealer', { task: 'cleaning', lasts: 60 }))
    seen.take(event(100, 'state', 'sealer', { state: 'planned-stop' }))
    seen.take(event(160, 'planned-work-done', 'sealer'))
    seen.take(event(160, 'state', 'sealer', { state: 'waiting' }))
    seen.take(event(200, 'stops', 'sealer', { cause: 'jams' }))
    seen.take(event(210, 'planned-work', 'sealer', { task: 'cleaning', lasts: 60 }))
    seen.take(event(230, 'work-done', 'sealer'))
    const found = seen.close(7200)
    expect(sums(found, 'sealer', 'planned-stops')).toEqual([1, 60])
    expect(sums(found, 'sealer', 'jams')).toEqual([1, 30])
  })

  it('none that is too short for it, and lengths by its clock', () => {
    const seen = new SeenStops(scenario, { seenFrom: 30, grain: 60 })
    seen.take(event(100, 'stops', 'sealer', { cause: 'jams' }))
    seen.take(event(129, 'work-done', 'sealer'))
    // 30 s, but from one minute into the next
    seen.take(event(170, 'stops', 'sealer', { cause: 'jams' }))
    seen.take(event(200, 'work-done', 'sealer'))
    // 58 s within one minute
    seen.take(event(240, 'stops', 'sealer', { cause: 'jams' }))
    seen.take(event(298, 'work-done', 'sealer'))
    expect(sums(seen.close(7200), 'sealer', 'jams')).toEqual([2, 60])
  })

  it('cut off at the break and at the end of the shift; none that begins in a break', () => {
    const seen = new SeenStops(scenario, { seenFrom: 0, grain: 0 })
    seen.take(event(3540, 'stops', 'sealer', { cause: 'breakdowns' }))
    seen.take(event(4300, 'work-done', 'sealer'))
    seen.take(event(3700, 'stops', 'palletiser', { cause: 'breakdowns' }))
    seen.take(event(4300, 'work-done', 'palletiser'))
    seen.take(event(7100, 'stops', 'sealer', { cause: 'breakdowns' }))
    const found = seen.close(7200)
    expect(sums(found, 'sealer', 'breakdowns')).toEqual([2, 160])
    expect(sums(found, 'palletiser', 'breakdowns')).toEqual([0, 0])
  })

  it('all of them are those that the line counts, and asking changes no shift', () => {
    const task = { what: 'shifts', seed: 'a', design: 0, scenario, from: 1, to: 5, countFrom: 0 } as const
    const plain = new Simulator().do(task) as ReturnType<Line['simulate']>[]
    const asked = new Simulator().do({ ...task, eyes: { seenFrom: 0, grain: 0 } }) as typeof plain
    const line = new Line(scenario)
    const { columns } = line
    const counted = (key: string) =>
      columns.findIndex(({ measure: { path }, part }) => part === 'value' && path.join('.') === key)
    let jams = 0
    for (const [index, { stops, ...shift }] of asked.entries()) {
      // who looks on is told by events, and this line is a row: the same to a rounding
      expect(differences(line, shift, plain[index]!)).toEqual([])
      const found = sums(stops!, 'sealer', 'jams')[0]
      const planned = sums(stops!, 'palletiser', 'planned-stops')[0]
      expect(found).toBe(shift.values[counted('equipment.sealer.measures.jams')])
      // one may begin in the break, while cases in hand are finished
      expect(
        Math.abs(planned - shift.values[counted('equipment.palletiser.measures.planned-stops')]!),
      ).toBeLessThanOrEqual(1)
      jams += found
    }
    expect(jams).toBeGreaterThan(10)
  })
})
