/** Standing under a head: whether a case that was there when the belts stopped needs taping again. */

import type { Stream } from '../../engine/stream.js'
import { unset } from '../../engine/unset.js'
import type { CaseIndex } from '../../line/cases.js'
import type { Floor } from '../../line/floor.js'
import { hair } from '../travel.js'

export class Dwell {
  private readonly draws: Stream
  /** Belt travel at which the belts last stood, m. */
  private stoodAt = unset

  constructor(
    private readonly floor: Floor,
    owner: string,
    private readonly share: number,
    private readonly wipeTravel: number,
  ) {
    this.draws = floor.stream(owner, 'dwell under the head')
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

  /** Whether a case that has gone `past` metres since it met a head is under it, until its trailing leg is wiped down, and spoilt there. */
  spoils(item: CaseIndex, past: number): boolean {
    const span = this.floor.cases.length[item]! + this.wipeTravel
    return past > 0 && past < span && this.draws.next() < this.share
  }
}
