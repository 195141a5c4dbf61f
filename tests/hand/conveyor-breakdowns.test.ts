/** Breakdowns of a conveyor by hand: its clock goes as long as a case rides on it, not only for its own length and spacing. */
import { expect, it } from 'vitest'
import { check, loadScenario, run } from '../../src/index.js'

const text = (between: number) => `cases: {a: {length: 400 mm, width: 300 mm, height: 250 mm}}
arrivals: {p: {time-between: ${between} s}}
line:
  belt: {type: conveyor, carries: belt, length: 6 m, speed: 24 m/min, breakdowns: {after: {exponential: {mean: 30 min}}, counted-in: running-time, repair: 1 s}}
shift: {length: 8 h}
crew: {fitter: {walk: 0 s, does: [breakdowns]}}
study: {shifts: 100, seed: belt}
`

it.each([
  // a ride takes 15 s: one case every 60 s is on the belt for a quarter of the 8 h, 2 h, of which 30 min bring one breakdown: 4
  [60, 4],
  // half of the 8 h
  [30, 8],
  // with one every 10 s there is always one: 16
  [10, 16],
])('cases every %d s bring %d breakdowns a shift', async (between, breakdowns) => {
  const loaded = loadScenario(text(between))
  const row = check(loaded).hand!.rows.find(
    ({ measure }) => measure === 'equipment.belt.measures.breakdowns',
  )!
  expect(row.value).toBeCloseTo(breakdowns, 1)
  const { document } = await run(loaded, { held: false, moment: false })
  const seen = document.equipment.belt!.measures.breakdowns!.mean!
  // a Poisson count over 100 shifts; the run-out and the first arrival move it by less than 0.1
  expect(Math.abs(seen - breakdowns)).toBeLessThan(4 * Math.sqrt(breakdowns / 100) + 0.1)
})
