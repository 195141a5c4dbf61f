/** Planned work and handovers by hand: how often, how long. */
import { meanOf, varianceOf } from '../scenario/law.js'
import { duesPerShift } from '../scenario/planned.js'
import type { Scenario } from '../scenario/schema.js'

type Piece = Scenario['line'][string]

/** One kind of planned work of a piece. Times in s. */
export interface PlannedHand {
  /** A shift. */
  count: number
  time: number
  variance: number
  /** Whose people do it; null: nobody. */
  needs: string | null
}

export const plannedOf = ({ shift }: Scenario, { planned = [] }: Piece): PlannedHand[] =>
  planned.map((work) => ({
    count: duesPerShift(work, shift.length),
    time: meanOf(work.takes),
    variance: varianceOf(work.takes),
    needs: work.needs ?? null,
  }))

/** All planned work of a piece as one kind of stop: it runs on until somebody is there, so no walk is in it; null where there is none. */
export function plannedStop(scenario: Scenario, piece: Piece) {
  const kinds = plannedOf(scenario, piece)
  const sum = (of: (kind: PlannedHand) => number) =>
    kinds.reduce((total, kind) => total + kind.count * of(kind), 0)
  const count = sum(() => 1)
  if (count === 0) return null
  const time = sum((kind) => kind.time) / count
  const spread = Math.sqrt(sum((kind) => kind.variance + (kind.time - time) ** 2) / count)
  return { key: 'planned-work', skill: null, count, work: 0, time, spread } as const
}

/** The handovers of a place as a kind of stop, one at either end of a shift; null where there are none. */
export function handoverStop(piece: Piece) {
  const time = 'handover' in piece ? piece.handover : undefined
  if (time === undefined) return null
  return { key: 'planned-work', skill: null, count: 2, work: 0, time, spread: 0 } as const
}
