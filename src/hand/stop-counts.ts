/** Stops of a shift by hand: how many of each kind a piece has, breakdowns by the calendar included. */

import { causes } from '../catalogue/causes.js'
import { headsOf } from '../kinds/sealer/heads.js'
import { meanOf } from '../scenario/law.js'
import type { Scenario } from '../scenario/schema.js'
import type { LineHand, PieceHand } from './line.js'
import { calendarBreakdowns, type PieceStop } from './pace.js'
import { changesPerShift, startsFull } from './rolls.js'

/** A kind of stop with how many of it a shift has. */
interface CountedStop extends Omit<PieceStop, 'perCase'> {
  count: number
}

/** Time in which the piece works, s a shift: what running-time breakdowns are counted in. */
export function workingShare(line: LineHand, piece: PieceHand): number {
  const headways = piece.type === 'sealer' ? piece.headway : piece.cycle
  // the next flaps are folded while a headway is cleared; only where the belts are free does folding take time of its own
  const beside = Math.min(1, (piece.perShift * headways) / line.span)
  return Math.min(1, (piece.perShift * (headways + piece.folding * (1 - beside))) / line.span)
}

/** Every kind of stop of the piece, a shift. */
export function stopsPerShift(scenario: Scenario, line: LineHand, piece: PieceHand): CountedStop[] {
  const keys = scenario.line[piece.name]!
  const stops = piece.stops.map(({ perCase, ...stop }): CountedStop => {
    const count = perCase * piece.perShift
    if (keys.type !== 'sealer') return { ...stop, count }
    const heads = headsOf(keys).length
    if (stop.key === 'roll-changes') {
      const each = changesPerShift(scenario, piece.perShift, heads / perCase)
      // heads that began together warn together, and are seen to in one stop while the machine is idle
      if (startsFull(scenario) && keys['roll-change'].change === 'at-warning-when-idle')
        return { ...stop, count: each, work: stop.work * heads, time: stop.time + stop.work * (heads - 1) }
      return { ...stop, count: heads * each }
    }
    if (stop.key === 'blade-services') {
      // a shift that starts empty, and the first of a campaign, starts with fresh blades
      const { campaign } = scenario.shift
      return { ...stop, count: (heads * Math.floor((count * campaign) / heads)) / campaign }
    }
    if (stop.key === 'breakdowns')
      return { ...stop, count: (workingShare(line, piece) * line.span) / meanOf(keys.breakdowns!.after) }
    return { ...stop, count }
  })
  const byCalendar = calendarBreakdowns(scenario, keys)
  if (byCalendar) {
    const { after, work, time, spread } = byCalendar
    stops.push({
      key: 'breakdowns',
      skill: causes.breakdowns.skill,
      work,
      time,
      spread,
      count: line.span / (after + time),
    })
  }
  return stops
}
