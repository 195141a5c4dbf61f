/** Standing under a head: whether a case that was there when the belts stopped needs taping again. */

import type { Stream } from '../../engine/stream.js'
import { unset } from '../../engine/unset.js'
import type { Floor } from '../../line/floor.js'
import { hair } from '../travel.js'

export class Dwell {
  private readonly draws: Stream
  /** Belt travel from a case's coming to a head until its trailing leg is wiped down, m, by kind. */
  private readonly spans: Float64Array
  /** Belt travel at which the belts last stood, m. */
  private stoodAt = unset

  constructor(
    floor: Floor,
    owner: string,
    private readonly share: number,
    wipeTravel: number,
  ) {
    this.draws = floor.stream(owner, 'dwell under the head')
    this.spans = floor.lengths.map((length) => length + wipeTravel)
  }

  reset(): void {
    this.stoodAt = 0
  }

  /** The belts stand at travel `at`: true once a standstill, however many causes follow each other before they move. */
  isNewStandstill(at: number): boolean {
    const isNew = at > this.stoodAt + hair
    this.stoodAt = at
    return isNew
  }

  /** Whether a case that has gone `past` metres since it met a head is under it and spoilt there. */
  spoils(kind: number, past: number): boolean {
    return past > 0 && past < this.spans[kind]! && this.draws.next() < this.share
  }
}
