/** What holds at an instant, of what is known from instant to instant. */

/** How many of the first of `count` are those of which `isBefore` is true, where it is true of no later one. */
export function countBefore(count: number, isBefore: (place: number) => boolean): number {
  let [low, high] = [0, count]
  while (low < high) {
    const middle = (low + high) >> 1
    if (isBefore(middle)) low = middle + 1
    else high = middle
  }
  return low
}

/** What holds at `time` of steps, each from its time on; undefined before the first. */
export const holdingAt = <Value>(
  steps: readonly (readonly [number, Value])[],
  time: number,
): Value | undefined => steps[countBefore(steps.length, (place) => steps[place]![0] <= time) - 1]?.[1]

/** Those of `times`, which are in order, that lie in (from, until). */
export const within = (times: readonly number[], from: number, until: number): number[] =>
  times.slice(
    countBefore(times.length, (place) => times[place]! <= from),
    countBefore(times.length, (place) => times[place]! < until),
  )
