/** Inspections worked by hand: rejects that leave, that are repaired, and what is found of unsealed cases. */
import { describe, expect, it } from 'vitest'
import { into, tell } from '../line/story.js'

const head = (
  length: number,
  between = '10 s',
) => `cases: {a: {length: 400 mm, width: 300 mm, height: 300 mm}}
arrivals: {p: {time-between: ${between}}}
shift: {length: ${length} s}`

describe('an inspection', () => {
  it('passes every case on after its time, when the chance is 0', () => {
    const story = tell(`${head(35)}\nline: {look: {type: inspect, time: 2 s}}`)
    expect(into(story, 'out')).toEqual([
      [12, 1],
      [22, 2],
      [32, 3],
    ])
    expect(story.read('equipment.look.measures.inspected')).toBe(3)
    expect(story.read('equipment.look.measures.rejected')).toBe(0)
  })

  it('rejects every case when the chance is 1: out of the line, and none of them good', () => {
    const story = tell(`${head(35)}\nline: {look: {type: inspect, time: 2 s, chance: 100 %}}`)
    expect(into(story, 'out')).toHaveLength(3)
    expect(story.read('measures.output')).toBe(0)
    expect(story.read('measures.rejected')).toBe(3)
  })

  it('sends rejects to the piece that takes them; they are still rejected when they leave from there', () => {
    const story = tell(`${head(35)}
line:
  look: {type: inspect, chance: 100 %, rejects-to: lane}
  good: {type: station, time: 1 s, to: exit}
  lane: {type: conveyor, length: 6 m, speed: 1 m/s}`)
    expect(into(story, 'out')).toEqual([
      [16, 1],
      [26, 2],
    ])
    expect(story.read('measures.output')).toBe(0)
    expect(story.read('measures.rejected')).toBe(2)
  })

  it('repairs make a case good again', () => {
    const story = tell(`${head(35)}
line:
  look: {type: inspect, chance: 100 %, rejects-to: bench}
  good: {type: station, time: 1 s, to: exit}
  bench: {type: station, time: 3 s, repairs: true}`)
    expect(into(story, 'out')).toEqual([
      [13, 1],
      [23, 2],
      [33, 3],
    ])
    expect(story.read('measures.output')).toBe(3)
    expect(story.read('measures.rejected')).toBe(0)
  })

  it('draws one number a case, whatever its chance: what 10 % reject, 50 % reject too', () => {
    const rejectedOf = (chance: string) => {
      const text = `${head(2000)}
line:
  look: {type: inspect, chance: ${chance}, rejects-to: lane}
  good: {type: station, time: 0 s, to: exit}
  lane: {type: station, time: 0 s}`
      return into(tell(text), 'lane').map(([, item]) => item)
    }
    const few = rejectedOf('10 %')
    const many = rejectedOf('50 %')
    expect(few.length).toBeGreaterThan(5)
    expect(many.length).toBeGreaterThan(few.length)
    expect(many).toEqual(expect.arrayContaining(few))
  })

  it('a case that comes back and passes is no longer rejected', () => {
    const story = tell(`${head(100_000)}
line:
  desk: {type: station, time: 1 s, waiting-room: unlimited}
  look: {type: inspect, time: 1 s, chance: 50 %, rejects-to: bench}
  pack: {type: station, time: 1 s, to: exit}
  bench: {type: station, time: 5 s, waiting-room: unlimited, to: desk}`)
    const out = story.read('measures.output')
    const again = story.read('equipment.look.measures.rejected')
    expect(story.read('measures.rejected')).toBe(0)
    expect(out).toBeGreaterThan(9900)
    // each visit is rejected with chance 1/2: as many rejects as cases out, in the mean; 10 000 cases, sd 141
    expect(Math.abs(again - out)).toBeLessThan(4 * 145)
    expect(story.read('equipment.look.measures.inspected')).toBeGreaterThanOrEqual(out + again)
  })

  it('stops at breaks when people do it', () => {
    const story = tell(`cases: {a: {length: 400 mm, width: 300 mm, height: 300 mm}}
arrivals: {p: {time-between: 10 s}}
line: {look: {type: inspect, time: 6 s, run-by: people}}
shift: {length: 60 s, breaks: [{at: 12 s, for: 20 s}]}`)
    // 2 s done at 12; 4 s are left at 32
    expect(into(story, 'out')[0]).toEqual([36, 1])
  })
})

describe('unsealed cases', () => {
  // a roll of 4 m with no warning and 0.54 m a case: seven cases, then all go unsealed, for nobody notices
  const sealer = `type: sealer, heads: {top: {position: 1 m}}, roll-change: {low-tape-warning: none, noticed-after: 100000}`
  const text = (inspect: string) => `cases: {a: {length: 400 mm, width: 300 mm, height: 300 mm}}
arrivals: {p: {time-between: 10 s}}
tape: {roll: 4 m, leg: 70 mm, lost-per-roll: 0 m}
line:
  sealer: {${sealer}}
  look: {type: inspect, ${inspect}}
shift: {length: 205 s}`

  it('are all found by an inspection that finds 100 %: 7 good, 12 rejected', () => {
    const story = tell(text('time: 1 s'))
    expect(story.read('measures.output')).toBe(7)
    expect(story.read('measures.rejected')).toBe(story.read('equipment.look.measures.unsealed-found'))
    expect(story.read('measures.rejected')).toBe(12)
    expect(story.read('equipment.look.measures.unsealed-missed')).toBe(0)
  })

  it('escape where it finds none', () => {
    const story = tell(text('time: 1 s, finds-unsealed: 0 %'))
    expect(story.read('measures.output')).toBe(7)
    expect(story.read('measures.rejected')).toBe(0)
    expect(story.read('equipment.look.measures.unsealed-missed')).toBe(12)
  })

  it('are closed at a repair station', () => {
    const story = tell(
      text('time: 1 s, rejects-to: bench').replace(
        'shift:',
        '  pack: {type: station, time: 1 s, to: exit}\n  bench: {type: station, time: 1 s, repairs: true}\nshift:',
      ),
    )
    expect(story.read('measures.output')).toBe(19)
    expect(story.read('measures.rejected')).toBe(0)
  })
})
