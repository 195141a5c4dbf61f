/** Inspection: looks at each case, and rejects some by chance and those that it finds unsealed. */
import type { Stream } from '../../engine/stream.js'
import type { CaseIndex } from '../../line/cases.js'
import type { Floor } from '../../line/floor.js'
import { type Measure, pieceMeasures } from '../../line/measure.js'
import { OnePlace } from '../one-place.js'
import type { InspectKeys } from './keys.js'

// places among the unit's ways
const good = 0
const bad = 1

export class Inspect extends OnePlace {
  private readonly chance: number
  private readonly finds: number
  private readonly chanceDraws: Stream
  private readonly findDraws: Stream
  private isRejected = false
  private isUnsealed = false
  private inspected = 0
  private rejected = 0
  private found = 0
  private missed = 0

  constructor(floor: Floor, name: string, keys: InspectKeys) {
    super(floor, name, keys)
    this.chance = keys.chance
    this.finds = keys['finds-unsealed']
    this.chanceDraws = floor.stream(this.label, 'reject', keys.chance > 0)
    this.findDraws = floor.stream(this.label, 'find unsealed')
  }

  override countAnew(): void {
    this.inspected = 0
    this.rejected = 0
    this.found = 0
    this.missed = 0
  }

  /** Both numbers are drawn for every case, so that another chance changes no other case. */
  protected override begin(item: CaseIndex): void {
    const isChosen = this.chanceDraws.next() < this.chance
    const isFound = this.findDraws.next() < this.finds
    this.isUnsealed = this.floor.cases.unsealed[item] === 1
    this.isRejected = isChosen || (this.isUnsealed && isFound)
    if (this.isRejected) this.floor.observer?.rejects(this.name, item)
  }

  protected override passOn(item: CaseIndex): boolean {
    const { cases } = this.floor
    // what it says last is what counts: a case that comes again and passes is no longer rejected
    cases.rejected[item] = this.isRejected ? 1 : 0
    if (!this.unit.ways[this.isRejected ? bad : good]!.offer(item, this.unit)) return false
    this.inspected++
    if (this.isRejected) this.rejected++
    if (this.isUnsealed && this.isRejected) this.found++
    else if (this.isUnsealed) this.missed++
    return true
  }

  override mayReject(): boolean {
    return true
  }

  override measures(): Measure[] {
    const measure = pieceMeasures(this.name)
    return [
      measure('inspected', () => this.inspected),
      measure('rejected', () => this.rejected),
      measure('unsealed-found', () => this.found),
      measure('unsealed-missed', () => this.missed),
    ]
  }
}
