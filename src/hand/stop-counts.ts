/** Stops of a shift by hand: how many of each kind a piece has, breakdowns by the calendar and planned work included. */
import type { CountedStop } from '../kinds/by-hand.js'
import { byHandOf } from '../kinds/hand.js'
import type { KeysOf } from '../kinds/keys.js'
import { has } from '../kinds/traits.js'
import type { Scenario } from '../scenario/schema.js'
import type { LineHand, PieceHand } from './line.js'
import { calendarBreakdowns } from './pace.js'
import { plannedStop } from './planned.js'

/**
 * Share of the shift in which the piece works: what running-time breakdowns are counted in. A conveyor works as long as a case rides on it: for cases that
 * come evenly, cases x ride; where they come in bunches it works less.
 */
export function workingShare(line: LineHand, piece: PieceHand, keys: KeysOf): number {
  if (has(keys, 'conveys')) return Math.min(1, (piece.perShift * byHandOf(keys).stay(keys)) / line.span)
  const headways = has(piece, 'tapes') ? piece.headway : piece.cycle
  // the next flaps are folded while a headway is cleared; only where the belts are free does folding take time of its own
  const beside = Math.min(1, (piece.perShift * headways) / line.span)
  return Math.min(1, (piece.perShift * (headways + piece.folding * (1 - beside))) / line.span)
}

/** Every kind of stop of the piece, a shift. */
export function stopsPerShift(scenario: Scenario, line: LineHand, piece: PieceHand): CountedStop[] {
  const keys = scenario.line[piece.name]!
  const given = {
    scenario,
    perShift: piece.perShift,
    working: workingShare(line, piece, keys),
    span: line.span,
  }
  const stops = piece.stops.map((stop) => byHandOf(keys).counted(keys, stop, given))
  const byCalendar = calendarBreakdowns(scenario, keys)
  if (byCalendar) {
    const { after, ...stop } = byCalendar
    stops.push({ ...stop, count: line.span / (after + stop.time) })
  }
  const planned = plannedStop(scenario, keys)
  return planned === null ? stops : [...stops, planned]
}
