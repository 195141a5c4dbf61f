/** What sensors see of the cases on an accumulating conveyor: the passing of their edges, by the relation of the bed. */
import { never } from '../../engine/clock.js'
import { unset } from '../../engine/unset.js'
import type { Sensor } from '../../line/sensor.js'
import { hair } from '../travel.js'
import { Bed } from './bed.js'

/** A lower part of `AccumulatingConveyor`, as `Bed` is. */
export abstract class SensedBed extends Bed {
  /** What `findPassing` finds: when, s. */
  private hasPassed = false
  private passesAt = unset

  override shareTaken(): number {
    return this.reserved / this.length
  }

  override see(sensor: Sensor): void {
    const place = Math.max(0, this.length - sensor.fromEnd)
    const end = this.firstOn + this.aboard
    sensor.isCovered = false
    sensor.changesAt = never
    // of those that have left only the last may still lie across the end
    sensor.next = Math.max(sensor.next, this.firstOn - 1, 0)
    for (; sensor.next < end; sensor.next++) {
      this.findPassing(sensor.next, place + this.lengthOf(sensor.next))
      if (this.hasPassed) continue
      sensor.changesAt = this.passesAt
      this.findPassing(sensor.next, place)
      sensor.isCovered = this.hasPassed
      if (!this.hasPassed) sensor.changesAt = this.passesAt
      return
    }
  }

  /** Of a case here, or of the one that left last, m; nothing of one that was taken out. */
  private lengthOf(number: number): number {
    return number < this.firstOn ? this.leftLength : this.floor.cases.length[this.items[number & this.mask]!]!
  }

  /** Finds whether the leading edge of such a case has passed `place`, m from the entrance, and else when it will. */
  private findPassing(number: number, place: number): void {
    const { unit, tail } = this
    let { now } = this.floor.clock
    if (number >= this.firstOn) {
      this.asked = number
      this.target = place
      this.findReach()
      this.passesAt = this.reach < place - hair ? never : this.reachAt
      now = this.now
    } else if (place <= this.length || this.isBeforePlace || this.leftLength === 0) this.passesAt = 0
    else {
      tail.distance = place - this.length
      unit.next.follow(tail, unit)
      this.passesAt = tail.reach < tail.distance - hair ? never : tail.reachAt
    }
    this.hasPassed = this.passesAt <= now
    // while the bed stands nothing on it passes
    if (!this.hasPassed && unit.frozen && number >= this.firstOn) this.passesAt = never
  }
}
