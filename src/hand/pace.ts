/** The rate of each piece by hand: what it can do, what its stops leave, and what comes to it. */

import { causes } from '../catalogue/causes.js'
import type { Change, Coming, Cycle, PieceStop, StopKind } from '../kinds/by-hand.js'
import { weighed } from '../kinds/by-hand.js'
import { byHandOf } from '../kinds/hand.js'
import type { Kind } from '../kinds/keys.js'
import { has } from '../kinds/traits.js'
import { type Call, callsOf, jamsBy } from '../scenario/calls.js'
import { meanOf, varianceOf } from '../scenario/law.js'
import type { Scenario } from '../scenario/schema.js'
import { availability, breakdownsPerCase, effectiveRate } from '../trade/stops.js'
import { mixOf } from './demand.js'
import { withoutPlanned } from './planned.js'

/** What a piece can do with its mix of cases. Rates in cases/s. */
export interface PiecePace extends Cycle {
  name: string
  type: Kind
  /** Share of each kind of what comes to it. */
  mix: number[]
  stops: PieceStop[]
  /** One over the cycle, never stopping. */
  rate: number
  /** The same with its own stops. */
  rateAfterStops: number
}

/** Does anything on the line tape? */
export const hasSealer = ({ line }: Scenario): boolean =>
  Object.values(line).some((piece) => has(piece, 'tapes'))

/** The crew that is called first, and its mean walk, s; null where there is nobody to call. */
export function firstWith(
  scenario: Scenario,
  call: Call,
): { name: string; walk: number; walkVariance: number } | null {
  const found = Object.entries(scenario.crew).find(([each, { does }]) => callsOf(each, does).includes(call))
  if (!found) return null
  const [name, { walk }] = found
  return { name, walk: meanOf(walk), walkVariance: varianceOf(walk) }
}

/** Pace of the piece `name`, to which kinds come as `flow` says; where nothing comes it is that of the whole mix. */
export function paceOf(
  scenario: Scenario,
  name: string,
  flow: readonly number[],
  following: readonly Change[] | null,
): PiecePace {
  const total = flow.reduce((sum, each) => sum + each, 0)
  const mix = total > 0 ? flow.map((each) => each / total) : mixOf(scenario)
  const piece = scenario.line[name]!
  // where kinds are drawn: the chance that a case is of another kind than the one before
  const changes = following ? following.reduce((sum, each) => sum + each.perCase, 0) : 1 - weighed(mix, mix)
  const coming = { scenario, mix, changes, following }
  const base = byHandOf(piece).cycle(piece, coming)
  const stops = stopsOf(piece, coming, base)
  const byCalendar = calendarBreakdowns(scenario, piece)
  const upByCalendar = byCalendar ? availability(byCalendar.after, byCalendar.time) : 1
  return {
    name,
    type: piece.type,
    mix,
    ...base,
    stops,
    rate: 1 / base.cycle,
    rateAfterStops: effectiveRate(base.cycle, stops) * upByCalendar * withoutPlanned(scenario, piece),
  }
}

/** A kind of stop with the walk of whoever is called first for it. */
function withWalk(scenario: Scenario, { key, jam, by, perCase, work, added, more = 0 }: StopKind): PieceStop {
  const usual = key === 'planned-stops' || key === 'planned-work' ? null : causes[key].skill
  const skill = by === undefined ? usual : jamsBy(by)
  const crew = skill === null ? null : firstWith(scenario, skill)
  const time = meanOf(work) + (added?.mean ?? 0)
  return {
    key,
    ...(jam === undefined ? {} : { jam }),
    skill,
    perCase,
    work: skill === null ? 0 : time,
    time: time + (crew?.walk ?? 0) + more,
    spread: Math.sqrt(varianceOf(work) + (added?.variance ?? 0) + (crew?.walkVariance ?? 0)),
  }
}

/** Breakdowns that the calendar counts: mean time to the next, of work on it, and with the walk, s; null where there are none. */
export function calendarBreakdowns(
  scenario: Scenario,
  { breakdowns }: Scenario['line'][string],
): (Omit<PieceStop, 'perCase'> & { after: number }) | null {
  if (breakdowns?.['counted-in'] !== 'calendar-time') return null
  const { perCase, ...stop } = withWalk(scenario, { key: 'breakdowns', perCase: 0, work: breakdowns.repair })
  return { ...stop, after: meanOf(breakdowns.after) }
}

function stopsOf(piece: Scenario['line'][string], coming: Coming, cycle: Cycle): PieceStop[] {
  const { breakdowns } = piece
  const stops = byHandOf(piece).stops(piece, coming, cycle)
  if (breakdowns?.['counted-in'] === 'running-time')
    stops.push({
      key: 'breakdowns',
      perCase: breakdownsPerCase(cycle.cycle, meanOf(breakdowns.after)),
      work: breakdowns.repair,
    })
  return stops.map((stop) => withWalk(coming.scenario, stop))
}
