/** How a case is drawn that is moved by nothing that is simulated: into a place, or up in a queue. */
import { add, type Polyline } from './polyline.js'

/** When it came and goes, and up to when it is drawn, s; how fast it is drawn, m/s. */
interface Glide {
  in: number
  out: number
  end: number
  speed: number
}

/** Goes to each target from its time on, to the last one in time for its leaving. */
export function gliding(
  targets: readonly [time: number, place: number][],
  { in: came, out, end, speed }: Glide,
): Polyline {
  const made: Polyline = { times: [came], places: [0] }
  for (const [index, [from, target]] of targets.entries()) {
    const isLast = index === targets.length - 1
    const until = Math.min(end, targets[index + 1]?.[0] ?? end)
    if (until < from) break
    const place = made.places.at(-1)!
    add(made, from, place)
    const needed = (target - place) / speed
    const taken = isLast && out <= end ? Math.min(needed, until - from) : needed
    if (from + taken <= until) {
      add(made, from + taken, target)
      add(made, until, target)
    } else add(made, until, place + speed * (until - from))
  }
  if (made.times.at(-1)! < end) add(made, end, made.places.at(-1)!)
  return made
}
