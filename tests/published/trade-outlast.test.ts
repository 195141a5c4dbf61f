/** Stops that outlast the room before a machine, against closed forms: exponential stops, no room, endless room, and rare or even stops by hand. */
import { describe, expect, it } from 'vitest'
import { shareKeptOut } from '../../src/trade/buffer.js'
import { stationary, steps } from '../../src/trade/chain.js'
import { outlasting, type StopKind } from '../../src/trade/outlast.js'
import { excess, excessSquared, longer, shapesOf } from '../../src/trade/stop-times.js'

const kind = (every: number, mean: number, cv: number, isEven = false): StopKind => ({
  often: 1 / every,
  mean,
  cv,
  isEven,
})

describe('exponential stops by chance', () => {
  // the differential equation of the level, solved in closed form in `shareKeptOut` (continuous material; Gershwin, Manufacturing
  // Systems Engineering, 1994); the grid of 31 levels is off by up to 0.3 % of it where the machine is hardly faster than the flow
  it.each([
    [60, 600, 60, 2],
    [80, 600, 60, 4 / 3],
    [20, 600, 60, 1.5],
    [200, 600, 60, 1.2],
    [300, 600, 60, 1.09],
    [10, 600, 60, 3],
  ])('room of %d s, %d s between stops of %d s, %d times the flow', (buffer, up, repair, speed) => {
    const exact = shareKeptOut(buffer, { meanUp: up, meanRepair: repair }, speed)
    // a machine that runs at `speed` passes so many seconds of the flow between its stops
    const every = up * speed
    const { share, mean } = outlasting([kind(every, repair, 1)], buffer, speed).stops[0]!
    const lost = (share * mean) / every
    expect(Math.abs(lost / (1 + lost) / exact - 1)).toBeLessThan(0.003)
    // what is left of an exponential time is an exponential time
    expect(mean).toBeCloseTo(repair, 6)
  })
})

describe('worked by hand', () => {
  it('without room, or no faster than the flow, every stop is felt whole', () => {
    const stops = [kind(600, 60, 0.5), kind(900, 20, 0)]
    const whole = [
      { share: 1, mean: 60, cv: 0.5 },
      { share: 1, mean: 20, cv: 0 },
    ]
    expect(outlasting(stops, 0, 2)).toEqual({ stops: whole, level: 0 })
    expect(outlasting(stops, 100, 1)).toEqual({ stops: whole, level: 100 })
  })

  it('a constant stop once in a very long time: all beyond the room, or nothing', () => {
    const [long, short] = outlasting([kind(1e9, 100, 0), kind(1e9, 30, 0)], 40, 1.5).stops
    expect(long!.share).toBeCloseTo(1, 6)
    expect(long!.mean).toBeCloseTo(60, 3)
    expect(long!.cv).toBeCloseTo(0, 2)
    expect(short!.share).toBeLessThan(1e-6)
  })

  // every 120 s of the flow a stop of 60 s; at 1.5 times the flow 120 s of it take 80 s, in which 40 s are caught up. A room of 100 s
  // is full after the first stops; 40 s are free when the next begins, so that 20 s are felt
  it('even stops of which part is caught up: what is not', () => {
    const { stops, level } = outlasting([kind(120, 60, 0, true)], 100, 1.5)
    expect(stops[0]!.share).toBeCloseTo(1, 9)
    expect(stops[0]!.mean).toBeCloseTo(20, 6)
    expect(level).toBeCloseTo(60, 6)
  })

  // at 1.01 times the flow hardly more than 1 s is caught up: all the rest is felt, for the room is as good as full
  it('even stops of which next to nothing is caught up', () => {
    const { stops, level } = outlasting([kind(120, 60, 0, true)], 100, 1.01)
    expect(stops[0]!.mean).toBeCloseTo(60 - 120 * (0.01 / 1.01), 6)
    expect(level).toBeCloseTo(100 - 120 * (0.01 / 1.01), 6)
  })

  // the same every 1200 s: 400 s could be caught up, and the room is empty whenever the next begins
  it('even stops that are caught up in full find all of the room', () => {
    const { stops, level } = outlasting([kind(1200, 60, 0, true)], 40, 1.5)
    expect(stops[0]!.mean).toBeCloseTo(20, 6)
    expect(level).toBeCloseTo(0, 6)
  })

  it('more room, and a faster machine, never make more of a stop felt', () => {
    const felt = (buffer: number, speed: number) => {
      const { share, mean } = outlasting([kind(300, 45, 0.8), kind(200, 45, 0, true)], buffer, speed)
        .stops[0]!
      return share * mean
    }
    for (const values of [
      [10, 30, 60, 120].map((buffer) => felt(buffer, 1.6)),
      [1.1, 1.4, 2, 5].map((speed) => felt(60, speed)),
    ])
      expect(values).toEqual([...values].sort((a, b) => b - a))
  })
})

describe('room without limit', () => {
  // Pollaczek-Khinchine: mean wait = rate x mean square / (2 (1 - load)); Gross & Harris, Fundamentals of Queueing Theory. At twice the
  // flow the level falls 1 s for each 2 s of the flow: a stop every 600 s of the flow is one every 300 s of the fall
  it.each([
    [1, (60 * 60 * 2) / 300 / (2 * 0.8)],
    [0, (60 * 60) / 300 / (2 * 0.8)],
  ])('nothing is felt, and with a variation of %d the mean level is %d s', (cv, level) => {
    const dam = outlasting([kind(600, 60, cv)], Infinity, 2)
    expect(dam.stops[0]!.share).toBe(0)
    expect(dam.level).toBeCloseTo(level, 9)
    // a room that is never full in practice has the same level, found on the grid
    expect(outlasting([kind(600, 60, cv)], 600, 2).level / level).toBeCloseTo(1, 1)
  })

  it('stops that are not caught up fill it without end', () => {
    expect(outlasting([kind(100, 60, 1)], Infinity, 1.5).level).toBe(Infinity)
  })
})

describe('times by mean and spread', () => {
  it.each([0, 0.3, 1, 1.7])('a variation of %d is kept', (cv) => {
    const shapes = shapesOf(60, cv)
    expect(excess(0, shapes)).toBeCloseTo(60, 9)
    expect(excessSquared(0, shapes)).toBeCloseTo(60 * 60 * (1 + cv * cv), 6)
    expect(longer(1e9, shapes)).toBe(0)
  })

  it('exponential: longer than its mean with chance 1 / e', () => {
    expect(longer(60, shapesOf(60, 1))).toBeCloseTo(Math.exp(-1), 12)
  })
})

describe('chains', () => {
  // two states with chances a and b to change: b / (a + b) and a / (a + b)
  const chain = [Float64Array.of(0.9, 0.1), Float64Array.of(0.3, 0.7)]

  it('in the long run', () => {
    expect([...stationary(chain)].map((each) => Number(each.toFixed(12)))).toEqual([0.75, 0.25])
    expect(steps(chain, 200)[1]![0]).toBeCloseTo(0.75, 12)
  })

  it('that never come down again stay out of the states below', () => {
    const climbing = [
      Float64Array.of(0.5, 0.5, 0),
      Float64Array.of(0, 0.5, 0.5),
      Float64Array.of(0, 0.25, 0.75),
    ]
    expect([...stationary(climbing)].map((each) => Number(each.toFixed(12)))).toEqual([
      0, 0.333333333333, 0.666666666667,
    ])
  })

  it('no step stays, and five are five', () => {
    expect(steps(chain, 0).map((row) => [...row])).toEqual([
      [1, 0],
      [0, 1],
    ])
    // the part of the start that is left after n steps is (1 - a - b)^n
    expect(steps(chain, 5)[0]![0]).toBeCloseTo(0.75 + 0.25 * 0.6 ** 5, 12)
  })
})
