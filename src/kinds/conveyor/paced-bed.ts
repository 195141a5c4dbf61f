/** The speed of the drive under cases that close up: it changes while they ride and stand, and it runs up after a stop. */
import { unset } from '../../engine/unset.js'
import type { Floor } from '../../line/floor.js'
import { runUpOf } from '../run-up.js'
import type { ConveyorKeys } from './keys.js'
import { SensedBed } from './sensed-bed.js'

/**
 * The relation of the bed is one of travels of its drive: each time in it is a travel over the speed. So where the speed changes from u to v
 * at the instant t, every time s in it becomes
 *
 *   s' = t - (t - s) u / v
 *
 * and each case is, before and after, where the drive has brought it. The start delay is a travel too: what the usual speed makes in it.
 * After a stop the drive runs up for v / 2a, at the acceleration a: what its full speed loses against it; nothing moves until then.
 *
 * A lower part of `AccumulatingConveyor`, as `Bed` is.
 */
export abstract class PacedBed extends SensedBed {
  /** Time over the whole length in free flow, s. */
  crossing = unset
  /** What a start from rest costs, s. */
  protected runUp = unset

  constructor(floor: Floor, name: string, keys: ConveyorKeys) {
    super(floor, name, keys)
    this.followSpeed(keys.speed)
  }

  override empty(): void {
    this.followSpeed(this.keys.speed)
    super.empty()
  }

  /** All that follows from the speed. */
  private followSpeed(speed: number): void {
    this.speed = speed
    this.crossing = this.length / speed
    this.delay =
      speed === this.keys.speed
        ? this.keys['start-delay']
        : (this.keys['start-delay'] * this.keys.speed) / speed
    this.runUp = runUpOf(this.keys, speed)
  }

  /** The drive runs at this speed from now, another one than before, m/s. */
  protected changeSpeed(speed: number): void {
    this.findNow()
    this.noteStart()
    const { now, mask } = this
    const ratio = this.speed / speed
    const end = this.firstOn + this.aboard
    for (let number = Math.max(0, end - this.items.length); number < end; number++) {
      const place = number & mask
      this.entered[place] = now - (now - this.entered[place]!) * ratio
      this.left[place] = now - (now - this.left[place]!) * ratio
      this.pitchTimes[place] = this.pitches[place]! / speed
    }
    this.followSpeed(speed)
  }
}
