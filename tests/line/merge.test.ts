/** Merges worked by hand: first come first served, right of way, and stations whose cases wait for room together. */
import { describe, expect, it } from 'vitest'
import { into, tell } from './story.js'

const box = 'length: 400 mm, width: 300 mm, height: 300 mm'

/** Two lanes of one place each into a station of 10 s; a: a case at 1, 12, 23 …, b: one at 2, 12, 22 … */
const text = (more: string, length: number) => `cases: {a: {${box}}}
arrivals: {p: {time-between: 1 s, to: a}, q: {time-between: 2 s, to: b}}
line:
  a: {type: station, time: 0 s, to: join}
  b: {type: station, time: 0 s, to: join}
  join: {type: station, time: 10 s${more}}
shift: {length: ${length} s}`

/** The lane of each case that the join takes. */
function lanes(story: ReturnType<typeof tell>): string[] {
  const fromA = new Set(into(story, 'a').map(([, item]) => item))
  return into(story, 'join').map(([, item]) => (fromA.has(item) ? 'a' : 'b'))
}

describe('a merge', () => {
  it('is first come first served: turns, where both lanes always wait', () => {
    // a is taken at 1; then a stands from 2 s and b from 2 s on; at 2 s a is asked first, for its events come first
    const story = tell(text('', 65))
    expect(into(story, 'join').map(([time]) => time)).toEqual([1, 11, 21, 31, 41, 51, 61])
    expect(lanes(story)).toEqual(['a', 'a', 'b', 'a', 'b', 'a', 'b'])
  })

  it.each([
    ['a', ['a', 'a', 'a', 'a', 'a', 'a', 'a']],
    ['b', ['a', 'b', 'b', 'b', 'b', 'b', 'b']],
  ])('invites %s first where it has right of way', (first, order) => {
    expect(lanes(tell(text(`, right-of-way: ${first}`, 65)))).toEqual(order)
  })

  it('lets the other go while the one with right of way has nothing', () => {
    // b brings a case each 25 s: at 25 and 50; it is asked before a, which always waits
    const story = tell(text(', right-of-way: b', 65).replace('time-between: 2 s', 'time-between: 25 s'))
    expect(lanes(story)).toEqual(['a', 'a', 'a', 'b', 'a', 'b', 'a'])
  })

  it('a source may have right of way', () => {
    const story = tell(`cases: {a: {${box}}}
arrivals: {p: {time-between: 1 s}, q: {time-between: 2 s, when-full: queue}}
line: {join: {type: station, time: 10 s, right-of-way: q}}
shift: {length: 45 s}`)
    // p brings 1 at 1 s; its next waits from 2 s; q brings 3, 4 … from 2 s, and goes first at 11, 21, 31, 41
    expect(into(story, 'join').map(([time]) => time)).toEqual([1, 11, 21, 31, 41])
    expect(story.read('arrivals.p.blocked')).toBeCloseTo(43 / 45, 12)
  })
})

describe('cases that queue on the floor before one piece', () => {
  /** Two sources, each with a case a second, or three at once. */
  const two = (keys: string, join: string) => `cases: {a: {${box}}}
arrivals: {p: {time-between: 1 s, when-full: queue}, q: {${keys}, when-full: queue}}
line: {join: ${join}}
shift: {length: 45 s}`
  const sources = (story: ReturnType<typeof tell>): [time: number, source: string][] =>
    into(story, 'join').map(([time, item]) => [time, story.sources.get(item)!])

  it('go in turns: a source that has put one on the line is behind those that waited', () => {
    // both bring at 1 s; p is asked first, q at 11 s, p, whose second offer was refused at 11 s too, after it
    expect(sources(tell(two('time-between: 1 s', '{type: station, time: 10 s}')))).toEqual([
      [1, 'p'],
      [11, 'q'],
      [21, 'p'],
      [31, 'q'],
      [41, 'p'],
    ])
  })

  it('go in turns where one brings three at a time', () => {
    // p at 1 and 11 s: its second waits from 2 s on, those of q from 3 s
    expect(sources(tell(two('time-between: 3 s, batch: 3', '{type: station, time: 10 s}')))).toEqual([
      [1, 'p'],
      [11, 'p'],
      [21, 'q'],
      [31, 'p'],
      [41, 'q'],
    ])
  })

  it('go in turns onto a conveyor that is full', () => {
    // room for one: the first is at the end at 9 s, and cannot leave the conveyor before the one at work has gone, at 19, 29 …
    const line = `{type: conveyor, carries: belt, length: 400 mm, speed: 0.5 m/s, spacing: 0 mm}, after: {type: station, time: 10 s}`
    const order = sources(tell(two('time-between: 1 s', line))).map(([, source]) => source)
    expect(order.length).toBeGreaterThan(4)
    expect(order).toEqual(order.map((_, index) => (index % 2 === 0 ? 'p' : 'q')))
  })
})

describe('servers side by side whose cases wait for room', () => {
  it('all go on when one call says that there is room for them', () => {
    // both are done at 11 s and wait; the one after takes 5 s a case, in a room of its own with 3 places, shut to 30 s
    const story = tell(`cases: {a: {${box}}}
arrivals: {p: {time-between: 1 h, batch: 2}}
line:
  two: {type: station, time: 5 s, servers: 2}
  slow: {type: station, time: 10 s}
  last: {type: station, time: 1 s}
shift: {length: 4000 s}`)
    // both done at 3605; slow takes one at 3605 and the other at 3615, though it calls but once
    expect(into(story, 'slow')).toEqual([
      [3605, 1],
      [3615, 2],
    ])
    expect(into(story, 'out')).toEqual([
      [3616, 1],
      [3626, 2],
    ])
  })

  it('are not forgotten when the piece ahead has room for one and then for another', () => {
    // three done at 3605: slow takes one, two stand; at 3615 one goes, the other offers, is told no and waits again
    const story = tell(`cases: {a: {${box}}}
arrivals: {p: {time-between: 1 h, batch: 3}}
line:
  three: {type: station, time: 5 s, servers: 3}
  slow: {type: station, time: 10 s}
shift: {length: 4000 s}`)
    expect(into(story, 'slow').map(([time]) => time)).toEqual([3605, 3615, 3625])
  })
})

describe('right of way', () => {
  it('goes by who feeds the piece, where a source and a piece have one name', () => {
    // the source `a` feeds the join; the piece `a` stands after it
    const story = tell(`cases: {a: {${box}}}
arrivals: {p: {time-between: 1 s}, a: {time-between: 2 s, when-full: queue}}
line: {join: {type: station, time: 10 s, right-of-way: a}, a: {type: station, time: 1 s}}
shift: {length: 45 s}`)
    expect(story.read('arrivals.p.blocked')).toBeCloseTo(43 / 45, 12)
  })

  it('keeps a loop from locking: the cases that come round go before those that come in', () => {
    // the packers always have one waiting. Without right of way they fill the lane, and the lane and the look lock
    const text = (more: string) => `cases: {a: {${box}}}
arrivals: {p: {time-between: 1 s}}
line:
  lane: {type: station, time: 3 s, waiting-room: 1${more}}
  look: {type: inspect, time: 1 s, chance: 40 %, rejects-to: bench, to: exit}
  bench: {type: station, time: 1 s, repairs: true, to: lane}
shift: {length: 30 min}`
    const story = tell(text(', right-of-way: bench'))
    expect(story.read('measures.output')).toBeGreaterThan(200)
    expect(() => tell(text(''))).toThrow('the line is locked')
  })
})
