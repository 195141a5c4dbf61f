/** Draws that may be taken back: what was drawn ahead for something that then did not come is the next that is drawn. */
import { Draw } from './draw.js'

export class KeptDraw extends Draw {
  /** The oldest first. */
  private readonly kept: number[] = []

  constructor(private readonly draws: Draw) {
    super()
  }

  override next(): void {
    if (this.kept.length > 0) {
      this.value = this.kept.shift()!
      return
    }
    this.draws.next()
    this.value = this.draws.value
  }

  /** Takes back a value that was drawn, in the order in which they were. */
  keep(value: number): void {
    this.kept.push(value)
  }

  /** Nothing has been drawn ahead. */
  forget(): void {
    this.kept.length = 0
  }
}
