/** The clock: order of events, simultaneous ones, the end, and events without time passing. */
import { describe, expect, it } from 'vitest'
import { type Actor, Clock, never, StuckClock } from '../../src/engine/clock.js'

/** An actor that logs its turns and moves on to the next of its times. */
function actor(clock: Clock, label: string, times: number[], log: [number, string][]): void {
  const pending = [...times]
  const self: Actor & { slot: number } = {
    label,
    slot: -1,
    act() {
      log.push([clock.now, label])
      clock.set(self.slot, pending.shift() ?? never)
    },
  }
  self.slot = clock.add(self)
  starts.push(() => clock.set(self.slot, pending.shift() ?? never))
}
let starts: (() => void)[] = []

function run(plan: Record<string, number[]>, end: number): { log: [number, string][]; clock: Clock } {
  starts = []
  const clock = new Clock()
  const log: [number, string][] = []
  for (const [label, times] of Object.entries(plan)) actor(clock, label, times, log)
  for (const start of starts) start()
  clock.run(end)
  return { log, clock }
}

describe('clock', () => {
  it('takes the earliest first', () => {
    expect(run({ a: [3, 5], b: [1, 4] }, 10).log).toEqual([
      [1, 'b'],
      [3, 'a'],
      [4, 'b'],
      [5, 'a'],
    ])
  })

  it('of simultaneous events takes the actor that was added first', () => {
    expect(run({ a: [2, 2], b: [2], c: [1, 2] }, 10).log).toEqual([
      [1, 'c'],
      [2, 'a'],
      [2, 'a'],
      [2, 'b'],
      [2, 'c'],
    ])
  })

  it('takes for simultaneous what is the same number: of sums that rounding keeps apart the smaller is first', () => {
    // 0.1 + 0.2 is 4e-17 more than 0.3
    const apart = { a: [0.1 + 0.2], b: [0.3] }
    expect(run(apart, 1).log.map(([, label]) => label)).toEqual(['b', 'a'])
    // wherever a run is cut: between the two as well
    starts = []
    const clock = new Clock()
    const log: [number, string][] = []
    for (const [label, times] of Object.entries(apart)) actor(clock, label, times, log)
    for (const start of starts) start()
    clock.run(0.3)
    expect(log).toEqual([[0.3, 'b']])
    clock.run(1)
    expect(log).toEqual(run(apart, 1).log)
  })

  it('lets events at the end happen, later ones not, and stands at the end', () => {
    const { log, clock } = run({ a: [10, 10.5] }, 10)
    expect(log).toEqual([[10, 'a']])
    expect(clock.now).toBe(10)
    expect(clock.events).toBe(1)
  })

  it('says who acts again and again without time passing', () => {
    const clock = new Clock()
    const loop: Actor = { label: 'line.loop', act: () => {} }
    const slot = clock.add(loop)
    clock.set(slot, 7)
    expect(() => clock.run(10)).toThrow(StuckClock)
    expect(() => clock.run(10)).toThrow(/time stands still at 7 s: line\.loop/)
  })
})
