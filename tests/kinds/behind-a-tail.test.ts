/** A case that stands behind one lying across the joint, worked by hand: it is at the end no sooner than its own drive brings it there. */
import { describe, expect, it } from 'vitest'
import { build } from '../line/arriving.js'

const micro = (value: number) => Math.round(value * 1e6) / 1e6

/** When the cases, 400 mm long, come from conveyor a, 2 m at 0.1 m/s, onto b. */
function ontoB(arrivals: number[], line: string): number[] {
  const model = build('{log: {file: x.csv, time: t, unit: s}, when-full: queue}', '{length: 120 s}', {
    cases: '{c: {length: 400 mm, width: 300 mm, height: 300 mm}}',
    line,
    rows: [['t'], ...arrivals.map((time) => [String(time)])],
  })
  const told: number[] = []
  model.observe(({ time, event, at }) => {
    if (event === 'taken' && at === 'b') told.push(micro(time))
  })
  model.simulate('hand', 1)
  return told
}

const conveyor = (keys: string) => `{type: conveyor, spacing: 0 mm, ${keys}}`
const place = 'p: {type: station, time: 30 s}'

describe('behind a tail', () => {
  it('follows at its own speed where the drive ahead is faster', () => {
    // 0.1 and 0.2 m/s. 1 is at p from 23 to 53 s, 2 stands at the end of b, 3 lies 0.2 m over the joint and 4 at 1.8 m. At 53 s all move: 3 is
    // across at 54, 4 has come 0.2 m at 55. So again at 83 s.
    const line = `{a: ${conveyor('length: 2 m, speed: 6 m/min')}, b: ${conveyor('length: 600 mm, speed: 12 m/min')}, ${place}}`
    expect(ontoB([0, 4, 8, 12, 16], line)).toEqual([20, 24, 28, 55, 85])
  })

  it('starts after its delay, whatever starts at once ahead', () => {
    // 0.1 m/s. 1 is at p from 26 to 56 s, 2 stands at the end of b, 3 lies 0.2 m over the joint and 4 at 1.8 m. 3 moves from 56 s and is across
    // at 58, 4 moves from 57 and is at the end at 59
    const line = `{a: ${conveyor('length: 2 m, speed: 6 m/min, start-delay: 1 s')}, b: ${conveyor('length: 600 mm, speed: 6 m/min')}, ${place}}`
    expect(ontoB([0, 8, 16, 24], line)).toEqual([20, 28, 36, 59])
  })

  it.each([
    // 1 stands 0.2 m over the joint from 21 s. After 5 s 2 stands behind it, at 1.8 m: 1 is across at 27 and 2 at the end at 28
    ['closes up to one that is down, and then follows', 5, 28],
    // after 0.5 s 2 has come to 1.75 m, and rides on as if nothing had been
    ['rides on where it has not come up to it', 0.5, 24],
  ])('%s', (_, repair, second) => {
    const down = `breakdowns: {after: 21 s, counted-in: calendar-time, repair: ${repair} s}`
    const line = `{a: ${conveyor('length: 2 m, speed: 6 m/min')}, b: ${conveyor(`length: 2 m, speed: 12 m/min, ${down}`)}}`
    expect(ontoB([0, 4], line)).toEqual([20, second])
  })
})
