/** Axes over numbers that are read: with room at both ends, and without what lies so far off that the others would shrink. */
import { type Span, spanOf } from './axis.js'

/** An axis that holds these numbers with a little room; `bounds` are ends that it may not pass by more than a dot takes. */
export function roomySpan(
  values: readonly number[],
  mostTicks: number,
  bounds: { min?: number; max?: number } = {},
): Span {
  const known = values.filter(Number.isFinite)
  const [low, high] = [Math.min(...known), Math.max(...known)]
  // without any difference there is no scale to choose
  const room = high > low ? (high - low) * 0.06 : Math.max(1, Math.abs(high) * 0.05)
  // a point on a bound is drawn whole
  const hair = room / 3
  return spanOf(
    Math.max(low - room, (bounds.min ?? -Infinity) - hair),
    Math.min(high + room, (bounds.max ?? Infinity) + hair),
    mostTicks,
  )
}

/** Those that reach `times` as far as the next shorter one, and all that reach farther: fewer than half of all. */
export function farOff<Row>(rows: readonly Row[], reachOf: (row: Row) => number, times: number): Set<Row> {
  const ranked = rows.filter((row) => reachOf(row) > 0).sort((a, b) => reachOf(a) - reachOf(b))
  const first = ranked.findIndex(
    (row, index) => index > ranked.length / 2 && reachOf(row) > times * reachOf(ranked[index - 1]!),
  )
  return new Set(first < 0 ? [] : ranked.slice(first))
}
