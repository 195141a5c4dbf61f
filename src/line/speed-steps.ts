/** Steps of the speed of a drive by how full conveyors are. */
import { type Actor, never } from '../engine/clock.js'
import { backBelow, type SpeedStep } from '../scenario/speeds.js'
import type { Floor } from './floor.js'
import type { Watcher } from './sensing.js'

/** Rounding of a sum of lengths over a length. */
const hair = 1e-9

/** The piece whose drive it is. */
interface Place {
  readonly name: string
  runsAt(speed: number): void
}

/** The conveyor whose level counts. */
interface Watched {
  readonly name: string
  readonly watchers: Watcher[]
  readonly mechanism: { shareTaken(): number }
}

/**
 * A step holds from when the level is above its bound until it is below the other one; no speed changes in between. It looks after all
 * else that is due at an instant, as sensors do. Speeds change at once.
 */
export class SpeedSteps implements Actor, Watcher {
  readonly label: string
  readonly bringsNone = false
  private readonly slot: number
  private readonly watched: readonly Watched[]
  private readonly back: readonly number[]
  private readonly holds: Uint8Array
  private now = -1

  constructor(
    private readonly floor: Floor,
    private readonly place: Place,
    private readonly steps: readonly SpeedStep[],
    private readonly usual: number,
    conveyor: (name: string) => Watched,
  ) {
    this.label = `line.${place.name}`
    this.watched = steps.map(({ of }) => conveyor(of))
    this.back = steps.map(backBelow)
    this.holds = new Uint8Array(steps.length)
    for (const watched of new Set(this.watched)) watched.watchers.push(this)
    this.slot = floor.clock.add(this)
  }

  /** At the start of a shift, where mechanisms run at their usual speed. */
  reset(): void {
    this.holds.fill(0)
    this.now = -1
    this.look()
  }

  look(): void {
    const { clock } = this.floor
    clock.times[this.slot] = clock.now
    clock.changed(this.slot)
  }

  act(): void {
    const { clock } = this.floor
    clock.times[this.slot] = never
    clock.changed(this.slot)
    let now = -1
    for (let step = 0; step < this.steps.length; step++) {
      const level = this.watched[step]!.mechanism.shareTaken()
      if (level > this.steps[step]!.above + hair) this.holds[step] = 1
      else if (level < this.back[step]! - hair) this.holds[step] = 0
      if (this.holds[step] === 1) now = step
    }
    if (now === this.now) return
    this.now = now
    const speed = now < 0 ? this.usual : this.steps[now]!.at
    this.floor.observer?.runsAt(this.place.name, speed)
    this.place.runsAt(speed)
  }
}

/** What sets the speeds of pieces by levels. To be made after all else that acts. */
export const speedSteps = (floor: Floor, pieces: readonly (Place & Watched)[]): SpeedSteps[] =>
  pieces.flatMap((piece) => {
    const keys = floor.scenario.line[piece.name]!
    if (!('speeds' in keys) || keys.speeds === undefined) return []
    const usual = keys.type === 'sealer' ? keys['belt-speed'] : keys.speed
    const conveyor = (name: string) => pieces.find((each) => each.name === name)!
    return [new SpeedSteps(floor, piece, keys.speeds, usual, conveyor)]
  })
