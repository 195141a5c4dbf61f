/** Designs that are kept by name. */
import { pinName, pinned, unpinned } from '../../pins.js'
import type { Pin } from '../../study/messages.js'
import type { Desk } from './desk.js'

/** Designs that are kept at once: each is simulated when they are compared. */
export const mostKept = 20

/** Keeps the line as it is now; says what was done. */
export function keep(desk: Desk, wanted: string): string {
  const pins = desk.pins.value
  const { text } = desk
  if (desk.known.problems.value.length > 0) return 'This cannot be simulated as it is, so it is not kept.'
  const same = pins.find((each) => each.text === text.value)
  if (same) return `This design is kept already, as ${same.name}.`
  if (pins.length >= mostKept) return `At most ${mostKept} designs are kept: drop one first.`
  desk.pins.value = pinned(pins, wanted, text.value)
  return `Kept as ${desk.pins.value.at(-1)!.name}.`
}

/** Gives a design another name; the name that it then has comes back. */
export function renamed(desk: Desk, pin: Pin, wanted: string): string {
  const name = pinName(unpinned(desk.pins.value, pin.name), wanted)
  desk.pins.value = desk.pins.value.map((each) => (each === pin ? { ...pin, name } : each))
  return name
}

export function dropped(desk: Desk, pin: Pin): void {
  desk.pins.value = unpinned(desk.pins.value, pin.name)
}
