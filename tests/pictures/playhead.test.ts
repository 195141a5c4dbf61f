/** The instant that a replay shows: by hand, on frames that are given. */
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { Playhead } from '../../src/page/playhead.js'
import type { Stretch } from '../../src/shifts/stretch.js'

type States = [number, string][]

/** A stretch of one piece from 100 to 200 s; `states` of it. */
const stretch = (states: States, from = 100, to = 200) =>
  ({ from, to, states: [states], pieces: [{}] }) as unknown as Stretch

const jamsAt = (...times: number[]): States =>
  times.flatMap(
    (time): States => [
      [time, 'jam-being-cleared'],
      [time + 5, 'working'],
    ],
  )

describe('the instant of a replay', () => {
  let waits: ((now: number) => void)[] = []
  let now = 0
  beforeEach(() => {
    waits = []
    now = 1000
    vi.stubGlobal('performance', { now: () => now })
    vi.stubGlobal('requestAnimationFrame', (step: (now: number) => void) => waits.push(step))
    vi.stubGlobal('cancelAnimationFrame', (handle: number) => {
      waits[handle - 1] = () => {}
    })
  })
  afterEach(() => vi.unstubAllGlobals())

  /** The next picture comes after so long, ms. */
  function frame(after: number): void {
    now += after
    for (const step of waits.splice(0)) step(now)
  }

  function shown(states: States = []) {
    const [draw, tell] = [vi.fn(), vi.fn()]
    const ended = vi.fn(() => playhead.pause())
    const box = { isConnected: true }
    const playhead = new Playhead({ box: box as unknown as Node, draw, tell, ended })
    playhead.take(stretch(states), 100)
    return { playhead, draw, tell, ended, box }
  }

  it('runs on 16 times as fast, a quarter of a second a picture at most, while its box is in the page', () => {
    const { playhead, draw, box } = shown()
    playhead.play()
    frame(100)
    expect(playhead.time).toBeCloseTo(101.6, 9)
    frame(2000)
    expect(playhead.time).toBeCloseTo(105.6, 9)
    box.isConnected = false
    frame(100)
    expect([playhead.time, draw.mock.calls.length]).toEqual([expect.closeTo(105.6, 9), 2])
    expect(waits).toEqual([])
  })

  it('says in words what it shows no more often than can be read', () => {
    const { playhead, draw, tell } = shown()
    playhead.goTo(100)
    playhead.play()
    for (let each = 0; each < 4; each++) frame(50)
    // as it was sent, and 150 ms later
    expect([tell.mock.calls.length, draw.mock.calls.length]).toEqual([2, 5])
  })

  it('paused and played between two pictures draws once at the next', () => {
    const { playhead, draw } = shown()
    playhead.play()
    playhead.pause()
    playhead.play()
    frame(50)
    expect(draw).toHaveBeenCalledTimes(1)
  })

  it('is paused at its end or goes on where it is sent; played there it begins anew', () => {
    const { playhead, ended, draw } = shown()
    playhead.goTo(199)
    playhead.play()
    frame(100)
    expect([playhead.time, playhead.isPlaying, ended.mock.calls.length]).toEqual([200, false, 1])
    playhead.play()
    expect(playhead.time).toBe(100)
    ended.mockImplementation(() => playhead.goTo(150))
    playhead.goTo(199)
    draw.mockClear()
    frame(100)
    expect([playhead.time, playhead.isPlaying]).toEqual([150, true])
  })

  it('goes from stop to stop, and after the last to the first; planned ones only where there are no others', () => {
    const planned: States = [
      [110, 'planned-stop'],
      [120, 'working'],
    ]
    const { playhead } = shown([...planned, ...jamsAt(130, 170)])
    const met = [1, 2, 3].map(() => {
      playhead.toNextStop()
      return playhead.time
    })
    expect(met).toEqual([130, 170, 130])
    playhead.take(stretch(planned), 100)
    expect(playhead.stops).toEqual([110])
  })

  it('stays where it is in another stretch that has that time, and else begins where it is told', () => {
    const { playhead } = shown()
    playhead.goTo(150)
    playhead.take(stretch([], 120, 300), 165)
    expect(playhead.time).toBe(150)
    playhead.take(stretch([], 200, 300), 225)
    expect(playhead.time).toBe(225)
    playhead.goTo(1000)
    expect(playhead.time).toBe(300)
  })
})
