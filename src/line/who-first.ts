/** Who goes first: at a merge, and of what is due at one instant. */
import type { Equipment } from './equipment.js'
import type { Exit } from './exit.js'
import type { Outlet } from './handshake.js'
import type { Source } from './source.js'

/** Of those that feed a piece the one that is called `first` goes before the others. */
export function giveRightOfWay(
  piece: Equipment,
  first: string | undefined,
  equipment: readonly Equipment[],
  sources: readonly Source[],
): void {
  const feeders = [
    ...equipment.filter((each) => each.ways.includes(piece)),
    ...sources.filter((each) => each.next === piece),
  ]
  piece.rightOfWay = feeders.find((each) => each.name === first) ?? null
}

/** Simultaneous events: furthest downstream first, so that room is made before it is asked for; then the order of the file. */
export function downstreamFirst(equipment: readonly Equipment[], exit: Exit): Equipment[] {
  // fewest steps, for ways may part, join and lead back: from the exit outward, each piece when it is first met
  const order: Equipment[] = []
  let met: readonly Outlet[] = [exit]
  while (met.length > 0) {
    const before = met
    const next = equipment.filter(
      (piece) => !order.includes(piece) && piece.ways.some((way) => before.includes(way)),
    )
    order.push(...next)
    met = next
  }
  return order
}
