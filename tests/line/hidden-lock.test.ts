/** A shift that is locked is told to be, though a piece of the lock is down as it ends: found where it is, and nowhere else. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { Line } from '../../src/line/line.js'
import { DeadlockError } from '../../src/line/standstill.js'
import { loadScenario } from '../../src/scenario/load.js'
import { lines } from './topology.js'

const head = `cases: {a: {length: 400 mm, width: 300 mm, height: 300 mm}}
arrivals: {p: {time-between: 4 s}}
shift: {length: 100 s}
`
const down = (after: number) => `breakdowns: {after: ${after} s, counted-in: calendar-time, repair: 1 h}`

function lockOf(text: string, shift = 1): DeadlockError | null {
  try {
    new Line(loadScenario(text).scenario).simulate('test', shift)
    return null
  } catch (error) {
    if (error instanceof DeadlockError) return error
    throw error
  }
}

/** Desk and look hold one case each; every case is rejected back to the desk. */
const loop = (desk = '', look = '') => `${head}line:
  desk: {type: station, time: 3 s${desk}}
  look: {type: inspect, time: 1 s, chance: 100 %, rejects-to: desk${look}}
`

describe('a lock one of whose pieces is down as the shift ends', () => {
  // by hand, as in `standstill`: look finds the desk full at 12, and the desk is done at 14 and finds the look full
  it('is found where the piece goes down after the line has locked', () => {
    const lock = lockOf(loop(`, ${down(20)}`))!
    expect(lock.circle).toEqual(['desk', 'look'])
    // all that is known of a piece that is down is that it stood before that
    expect(lock.since).toBe(20)
  })

  it('is found where the line locks only when the piece is down already', () => {
    // the look stands blocked from 12 and goes down at 13; the desk is done at 14
    expect(lockOf(loop('', `, ${down(13)}`))!.since).toBe(14)
  })

  it('is found where all its pieces are down, and where one stands for planned work', () => {
    expect(lockOf(loop(`, ${down(20)}`, `, ${down(13)}`))!.since).toBe(20)
    expect(lockOf(loop(', planned: [{does: clean, at: 60 s, takes: 1 h}]'))!.since).toBe(60)
  })

  it('is none where the piece went down at work: it may yet reject otherwise, for all that is known', () => {
    // the look takes the first case at 7 and goes down at 8 with 1 s of work left; the desk waits for it until the end
    const slow = loop('', ', breakdowns: {after: 1 s, repair: 1 h}').replace('time: 1 s', 'time: 2 s')
    expect(lockOf(slow)).toBeNull()
  })

  it('is none where what is down has room, and says no only because it stands', () => {
    const lane = `lane: {type: conveyor, length: 4 m, speed: 20 m/min, to: look, ${down(5)}}`
    expect(lockOf(loop(', to: lane').replace('  look:', `  ${lane}\n  look:`))).toBeNull()
  })

  it('is found where a conveyor of it is down that is full', () => {
    // 1 m holds two cases of 400 mm; without an end to it the desk fills the lane and the look
    const lane = (keys: string) =>
      loop(', to: lane').replace(
        '  look:',
        `  lane: {type: conveyor, length: 1 m, speed: 20 m/min, to: look${keys}}\n  look:`,
      )
    const sound = lockOf(lane(''))!
    expect(sound.since).toBeLessThan(60)
    const lock = lockOf(lane(`, ${down(60)}`))!
    expect(lock.circle).toEqual(sound.circle)
    expect(lock.since).toBe(60)
  })
})

/** What cases do at the pieces of a lock after it, in three hours in which no new ones come. */
function movesAfter(text: string, shift: number, { circle, since }: DeadlockError): number {
  const line = new Line(loadScenario(text.replace('run-out: 1 min', 'run-out: 3 h')).scenario)
  let moves = 0
  line.observe(({ time, event, at, from }) => {
    if (time <= since || !['taken', 'leaves', 'spoilt'].includes(event)) return
    if (circle.includes(at) || circle.includes(from ?? '')) moves++
  })
  try {
    line.simulate('test', shift)
  } catch (error) {
    if (!(error instanceof DeadlockError)) throw error
  }
  return moves
}

describe('lines of random shape with a repair loop', () => {
  it('that lock never move there again, whatever is mended', () => {
    let locked = 0
    fc.assert(
      fc.property(lines, fc.integer({ min: 1, max: 1000 }), (text, shift) => {
        fc.pre(text.includes('-bench: '))
        const lock = lockOf(text, shift)
        if (lock === null) return
        locked++
        expect(movesAfter(text, shift, lock)).toBe(0)
      }),
      { numRuns: 50, seed: 20261129 },
    )
    expect(locked).toBeGreaterThan(5)
  })
})
