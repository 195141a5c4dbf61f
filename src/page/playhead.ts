/// <reference lib="dom" />
/** The instant of a recorded stretch that is shown: it runs on by itself, so many times as fast as it happened, or goes where it is sent. */
import { stopsOf } from '../pictures/stops.js'
import type { Stretch } from '../shifts/stretch.js'

export const speeds = [1, 4, 16, 60]
export const usualSpeed = 16

/** What is read is written anew after so long, ms: faster nobody reads. */
const wordsEvery = 120
/** Longest step between two pictures, s: after a pause of the browser it goes on where it was. */
const longestStep = 0.25

/** What shows the instant. */
export interface Shows {
  /** It runs on as long as this is in the page. */
  readonly box: Node
  /** Draws it, many times a second. */
  draw(): void
  /** Says in words what is drawn. */
  tell(): void
  /** It has come to the end of the stretch: is paused, or sent elsewhere. */
  ended(): void
}

export class Playhead {
  /** Since the start of the shift, s. */
  time = 0
  speed = usualSpeed
  isPlaying = false
  /** When machines stop, s, in order. */
  stops: readonly number[] = []
  private from = 0
  private to = 0
  private frame = 0
  private before = 0
  private toldAt = 0

  constructor(private readonly shows: Shows) {}

  /** Takes a stretch, and stays at its time where that lies in it; else it is at `begin`, s. */
  take(stretch: Stretch, begin: number): void {
    const isThere = this.to > this.from && this.time >= stretch.from && this.time < stretch.to
    this.from = stretch.from
    this.to = stretch.to
    this.stops = stopTimes(stretch)
    if (!isThere) this.time = begin
  }

  /** Runs on; from the end of the stretch it begins anew. */
  play(): void {
    if (this.isPlaying || !(this.to > this.from)) return
    if (this.time >= this.to) this.time = this.from
    this.isPlaying = true
    this.before = performance.now()
    this.frame = requestAnimationFrame(this.step)
  }

  pause(): void {
    this.isPlaying = false
    cancelAnimationFrame(this.frame)
  }

  /** To `time`, s, or as near to that as the stretch goes. */
  goTo(time: number): void {
    this.time = Math.min(Math.max(time, this.from), this.to)
    this.show()
  }

  /** After the last stop the first one comes again. */
  toNextStop(): void {
    const next = this.stops.find((time) => time > this.time + 1e-6) ?? this.stops[0]
    if (next !== undefined) this.goTo(next)
  }

  show(): void {
    this.shows.draw()
    this.tell(performance.now())
  }

  private tell(now: number): void {
    this.toldAt = now
    this.shows.tell()
  }

  private readonly step = (now: number): void => {
    const { shows } = this
    if (!this.isPlaying || !shows.box.isConnected) return
    this.time += Math.min(longestStep, Math.max(0, now - this.before) / 1000) * this.speed
    this.before = now
    if (this.time >= this.to) {
      this.time = this.to
      shows.ended()
      if (!this.isPlaying) return
    }
    shows.draw()
    if (now - this.toldAt >= wordsEvery) this.tell(now)
    this.frame = requestAnimationFrame(this.step)
  }
}

/** Planned ones come often and surprise nobody: they are told where there are no others. */
function stopTimes(stretch: Stretch): number[] {
  const all = stopsOf(stretch)
  const unplanned = all.filter(({ kind }) => kind !== 'planned')
  const told = unplanned.length > 0 ? unplanned : all
  return [...new Set(told.map(({ from }) => from))].sort((a, b) => a - b)
}
