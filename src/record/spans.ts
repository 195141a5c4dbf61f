/** Arithmetic of spans of time, each with its beginning and without its end. */
import { firstWhere } from '../statistics/search.js'
import type { Span } from './record.js'

export const lengthOf = ({ begins, ends }: Span): number => ends - begins

/** Sum of the lengths, s. */
export const total = (spans: readonly Span[]): number => spans.reduce((sum, span) => sum + lengthOf(span), 0)

/** What of `span` lies in `bounds`; null where nothing does. */
export function within(span: Span, bounds: Span): Span | null {
  const begins = Math.max(span.begins, bounds.begins)
  const ends = Math.min(span.ends, bounds.ends)
  return begins < ends ? { begins, ends } : null
}

/** All that `spans` cover, in order and apart from one another; what is empty covers nothing. */
export function union(spans: readonly Span[]): Span[] {
  const sorted = spans.filter((span) => lengthOf(span) > 0).sort((a, b) => a.begins - b.begins)
  const joined: Span[] = []
  for (const { begins, ends } of sorted) {
    const last = joined.at(-1)
    if (last && begins <= last.ends) last.ends = Math.max(last.ends, ends)
    else joined.push({ begins, ends })
  }
  return joined
}

/** What `holes` leave of `span`, in order; `holes` are in order and apart from one another. */
export function without(span: Span, holes: readonly Span[]): Span[] {
  const left: Span[] = []
  let begins = span.begins
  for (const hole of holes) {
    if (hole.ends <= begins) continue
    if (hole.begins >= span.ends) break
    if (hole.begins > begins) left.push({ begins, ends: hole.begins })
    begins = hole.ends
  }
  if (begins < span.ends) left.push({ begins, ends: span.ends })
  return left
}

/** Place of the last of `sorted` that begins at `time` or before; -1: none does. */
export const lastFrom = (sorted: readonly { begins: number }[], time: number): number =>
  firstWhere(0, sorted.length, (place) => sorted[place]!.begins > time) - 1
