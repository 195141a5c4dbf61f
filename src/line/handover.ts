/** The handover of shifts at a place that people work: nobody works there at the start and at the end of each. */
import type { Actor } from '../engine/clock.js'
import { unset } from '../engine/unset.js'
import type { Floor } from './floor.js'

/** The place. */
interface Place {
  readonly name: string
  halt(isHalted: boolean): void
}

/** Begins with the shift; the one at its end passes into the one at the start of the next. No break touches it: rule of the format. */
export class Handover implements Actor {
  readonly label: string
  private readonly slot: number
  /** Shift and run-out, s. */
  private readonly span: number
  private isOn = false
  /** When it begins or ends next, s. */
  private at = unset

  /** `lasts`: s, less than half of the shift. */
  constructor(
    private readonly floor: Floor,
    private readonly place: Place,
    private readonly lasts: number,
  ) {
    const { shift } = floor.scenario
    this.label = `line.${place.name}`
    this.span = shift.length + shift['run-out']
    this.slot = floor.clock.add(this)
  }

  reset(): void {
    this.isOn = false
    this.at = 0
    this.turn()
  }

  act(): void {
    this.turn()
  }

  private turn(): void {
    this.isOn = !this.isOn
    this.at +=
      this.isOn && this.at === 0 ? this.lasts : this.isOn ? 2 * this.lasts : this.span - 2 * this.lasts
    this.floor.clock.set(this.slot, this.at)
    this.floor.observer?.handover(this.place.name, this.isOn)
    this.place.halt(this.isOn)
  }
}

/** Of the pieces that have any. */
export const handovers = (floor: Floor, pieces: readonly Place[]): Handover[] =>
  pieces.flatMap((piece) => {
    const keys = floor.scenario.line[piece.name]!
    return 'handover' in keys && keys.handover !== undefined
      ? [new Handover(floor, piece, keys.handover)]
      : []
  })
