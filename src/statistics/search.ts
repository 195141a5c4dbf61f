/** A search among whole numbers by halving. */

/** The first whole number from `low` on for which `holds`, which once true stays so; `high` where there is none below it. */
export function firstWhere(low: number, high: number, holds: (value: number) => boolean): number {
  let [from, to] = [low, high]
  while (from < to) {
    const middle = Math.floor((from + to) / 2)
    if (holds(middle)) to = middle
    else from = middle + 1
  }
  return from
}
