/** What every piece of a line shares: the clock, the cases, the crew, the streams and the facts of the scenario. */
import { Clock } from '../engine/clock.js'
import type { Draw } from '../engine/draw.js'
import { Stream } from '../engine/stream.js'
import { drawsOf, type Law } from '../engine/variates.js'
import type { Distribution } from '../scenario/law.js'
import type { Scenario } from '../scenario/schema.js'
import { Cases } from './cases.js'
import { Controls } from './controls.js'
import { Counted } from './counted.js'
import type { Observer } from './observer.js'
import { Sizes } from './sizes.js'
import type { Helpers } from './task.js'

/** Instants per shift at which the number of cases in a place is noted, for the picture. */
export const samplesPerShift = 96

export class Floor {
  readonly clock = new Clock()
  readonly cases: Cases
  /** Whom stops call; set once, when the crew is assembled. */
  crew!: Helpers
  /** Told what happens in a shift that is traced; null in a study. */
  observer: Observer | null = null
  /** What each kind does to the chance of a jam. */
  readonly jamFactors: Float64Array
  /** Shifts in a row that make one observation; 1 where every shift starts empty. */
  readonly campaign: number
  /** End of the run-out of the last shift, s from the start of the first. */
  readonly end: number
  /** Start of the last shift, s. */
  private readonly lastShift: number
  /** What of the campaign is counted. */
  readonly counted: Counted
  readonly controls: Controls
  /** Cases that were inside when counting began. */
  broughtIn = 0
  /** Start of what pictures show, s: the last shift, as far as it is counted. */
  pictureFrom = 0
  /** Whether anything is drawn that may come out otherwise. */
  isRandom = false
  private readonly streams: Stream[] = []

  constructor(readonly scenario: Scenario) {
    const kinds = Object.values(scenario.cases)
    const sizes = new Sizes(scenario, (owner, purpose, law) => this.draws(owner, purpose, law))
    this.cases = new Cases(this.clock, sizes)
    this.jamFactors = Float64Array.from(kinds, (kind) => kind['jam-factor'])
    const { shift } = scenario
    this.campaign = shift.campaign
    this.end = (shift.length + shift['run-out']) * this.campaign
    this.lastShift = this.end - this.end / this.campaign
    this.counted = new Counted(shift)
    this.controls = new Controls(scenario.cases, sizes.lengths)
  }

  /** The stream of one purpose of one piece; begun anew each shift. `matters`: what it draws may come out otherwise. */
  stream(owner: string, purpose: string, matters = true): Stream {
    const stream = new Stream(owner, purpose)
    if (matters) this.isRandom = true
    this.streams.push(stream)
    return stream
  }

  /** A law drawn from a stream of its own; one that has a single value draws nothing. */
  draws(owner: string, purpose: string, law: Law): Draw {
    return drawsOf(law, () => this.stream(owner, purpose))
  }

  /** As `draws`, of the times between arrivals of `cases` each: told to the controls. */
  intervals(owner: string, purpose: string, law: Distribution, cases: number): Draw {
    return this.controls.ofIntervals(this.draws(owner, purpose, law), law, cases)
  }

  /** Clears clock and cases and begins every stream of shift `shift`. */
  begin(seed: string, shift: number): void {
    this.clock.reset()
    this.cases.reset()
    this.controls.clear()
    this.broughtIn = 0
    this.pictureFrom = this.lastShift
    this.observer?.begin()
    for (const stream of this.streams) stream.begin(seed, shift)
  }

  /** Counting begins anew. */
  countAnew(): void {
    this.controls.clear()
    this.broughtIn = this.cases.inUse
    this.pictureFrom = Math.max(this.clock.now, this.lastShift)
  }
}
