/** A scenario with other values at some of its places: what lies along their paths is copied, all else is shared. */
import type { Scenario } from '../scenario/schema.js'

type Branch = Record<string | number, unknown>

export class Copy {
  readonly made: Scenario
  /** What was copied already, and may be written to. */
  private readonly own = new Set<unknown>()

  constructor(scenario: Scenario) {
    this.made = { ...scenario }
    this.own.add(this.made)
  }

  set(at: readonly (string | number)[], value: unknown): void {
    let place = this.made as unknown as Branch
    for (const step of at.slice(0, -1)) {
      let below = place[step]
      if (!this.own.has(below)) {
        below = Array.isArray(below) ? [...below] : { ...(below as Branch) }
        this.own.add(below)
        place[step] = below
      }
      place = below as Branch
    }
    place[at.at(-1)!] = value
  }
}
