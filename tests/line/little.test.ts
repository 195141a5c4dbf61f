/**
 * Little's law, L = lambda W (Little, Operations Research 9 (1961) 383-387), on every place of every demo: cases held, which
 * the pieces tally as they change, against rate times residence, taken from the events of the shift one by one.
 */
import { describe, expect, it } from 'vitest'
import { Line } from '../../src/line/line.js'
import { demos, loadDemo } from '../demo.js'

/** Cases that came to each place and the time that they spent there up to `end`, s. */
function residence(
  line: Line,
  seed: string,
  end: number,
): { places: Map<string, { cases: number; time: number }>; simulated: ReturnType<Line['simulate']> } {
  const places = new Map<string, { cases: number; time: number }>()
  const where = new Map<number, { place: string; since: number }>()
  const go = (number: number, now: number, to: string | null) => {
    const before = where.get(number)
    if (before) places.get(before.place)!.time += now - before.since
    where.delete(number)
    if (to === null) return
    where.set(number, { place: to, since: now })
    const place = places.get(to) ?? { cases: 0, time: 0 }
    place.cases++
    places.set(to, place)
  }
  line.observe((event) => {
    if (event.case === undefined) return
    if (event.event === 'arrives' || event.event === 'taken') go(event.case, event.time, event.at)
    if (['leaves', 'spoilt', 'turned-away'].includes(event.event)) go(event.case, event.time, null)
  })
  const simulated = line.simulate(seed, 1)
  for (const number of [...where.keys()]) go(number, end, null)
  return { places, simulated }
}

describe.each(demos)('%s', (name) => {
  it('holds on average what comes times how long it stays, in every place', async () => {
    const scenario = await loadDemo(name)
    const line = new Line(scenario)
    const { campaign } = scenario.shift
    const end = (scenario.shift.length + scenario.shift['run-out']) * campaign
    const { places, simulated } = residence(line, 'little', end)
    let checked = 0
    for (const [index, { measure }] of line.columns.entries()) {
      const isHeld = measure.path.at(-1) === 'held'
      if (!isHeld) continue
      const at = measure.path[1]!
      // pieces side by side are one place together
      const parts = scenario.alike?.line[at]?.pieces ?? [at]
      const sum = (of: 'cases' | 'time') =>
        parts.reduce((total, part) => total + (places.get(part)?.[of] ?? 0), 0)
      const place = { cases: sum('cases'), time: sum('time') }
      const rate = place.cases / end
      const stay = place.cases > 0 ? place.time / place.cases : 0
      expect([at, simulated.values[index]]).toEqual([at, expect.closeTo(rate * stay, 9)])
      checked++
    }
    expect(checked).toBeGreaterThanOrEqual(Object.keys(scenario.line).length - 2)
  })
})
