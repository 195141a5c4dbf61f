/** What was drawn ahead for something that then did not come: it is what is drawn next. */
import type { Draw } from './draw.js'
import { unset } from './unset.js'

export class Kept {
  /** What came last. */
  value = unset
  /** The next one last. */
  private readonly values: number[] = []

  /** Finds the next value of `draws`: the oldest that was kept, or a new one. */
  nextOf(draws: Draw): void {
    if (this.values.length > 0) {
      this.value = this.values.pop()!
      return
    }
    draws.next()
    this.value = draws.value
  }

  /** Takes back a value, before all that are kept: of several the one that was drawn last first. */
  putBack(value: number): void {
    this.values.push(value)
  }

  /** Nothing has been drawn ahead. */
  forget(): void {
    this.values.length = 0
  }
}
