/** Breaks in which nobody is there who does a task: a stop that falls into one lasts until it is over. */
import { type Call, callsOf } from './calls.js'
import type { Scenario } from './schema.js'

type Breaks = readonly { at: number; for: number }[]

/**
 * Whether machines may stop while all who may be called for it are on a break: their breaks have an instant in common, and
 * machines run on in breaks.
 */
export function canAllBeAway({ shift, crew }: Scenario, call: Call): boolean {
  if (shift['breaks-stop'] === 'everything') return false
  const able = Object.entries(crew).flatMap(([name, each]) =>
    callsOf(name, each.does).includes(call) ? [each] : [],
  )
  if (able.length === 0) return false
  const [first, ...others] = able.map(({ breaks }): Breaks => breaks ?? shift.breaks)
  return others.reduce(inCommon, first!).length > 0
}

/** The time that lies in a break of both lists. */
const inCommon = (one: Breaks, other: Breaks): Breaks =>
  one.flatMap((a) =>
    other.flatMap((b) => {
      const at = Math.max(a.at, b.at)
      const end = Math.min(a.at + a.for, b.at + b.for)
      return end > at ? [{ at, for: end - at }] : []
    }),
  )
