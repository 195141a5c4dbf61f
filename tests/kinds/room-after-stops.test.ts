/** Conveyors that are full when a break or a breakdown ends: nobody comes in for whom there is no room. Worked by hand. */
import { describe, expect, it } from 'vitest'
import { into, tell } from '../line/story.js'

// 600 mm cases 20 mm apart: three lie on 2 m, 1.84 m from the first edge to the last; a fourth would need 2.46 m
const full = (keys: string, shift: string) => `cases: {a: {length: 600 mm, width: 300 mm, height: 300 mm}}
arrivals: {p: {time-between: 3 s}}
line:
  bed: {type: conveyor, length: 2 m, speed: 30 m/min, spacing: 20 mm${keys}}
  table: {type: station, time: 20 min}
shift: {length: ${shift}}`
const pause = 'breaks-stop: everything, breaks: [{at: 3 min, for: 1 min}]'
const fails = ', breakdowns: {after: 3 min, counted-in: calendar-time, repair: 1 min}'

describe('a full accumulating conveyor', () => {
  // cases come at 3, 6, 9 and 12 s; the first goes to the table at 7 s, the second stands at the end from 10 s on
  it.each([
    ['a break', '', `10 min, ${pause}`],
    ['its own breakdown', fails, '6 min'],
  ])('holds three after %s, as before', (_, keys, shift) => {
    const story = tell(full(keys, shift))
    expect(into(story, 'bed').map(([time]) => time)).toEqual([3, 6, 9, 12])
    expect(story.read('equipment.bed.measures.held-largest')).toBe(3)
  })

  it('takes the next when the table takes one, and not before', () => {
    const story = tell(full('', `30 min, ${pause}`))
    // 20 min of work and 1 min of break after 7 s
    expect(into(story, 'table').map(([time]) => time)).toEqual([7, 1267])
    // the last stands with its tail 0.16 m in, more than its spacing: the entrance is clear
    expect(into(story, 'bed').at(-1)).toEqual([1267, 5])
  })
})

describe('a belt that stands for its exit', () => {
  // cases come at 2, 4 and 6 s; the first is at the table at 6 s. The second is at the end at 8 s, where the belt stops just
  // as the fourth comes: the entrance has been clear since 7.24 s, but a belt that stands takes nobody
  it.each([
    ['a break', '', `10 min, ${pause}`],
    ['its own breakdown', fails, '6 min'],
  ])('takes nobody onto it after %s', (_, keys, shift) => {
    const text = full(`, carries: belt${keys}`, shift).replace('time-between: 3 s', 'time-between: 2 s')
    const story = tell(text)
    expect(into(story, 'table')).toEqual([[6, 1]])
    expect(into(story, 'bed').map(([time]) => time)).toEqual([2, 4, 6])
    expect(story.read('equipment.bed.measures.held-largest')).toBe(2)
  })
})
