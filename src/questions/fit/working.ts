/** In how much of the time that a log calls running a piece worked: the clock of its breakdowns goes only then. */
import { lineByHand } from '../../hand/line.js'
import { workingShare } from '../../hand/stop-counts.js'
import type { CleanRecord } from '../../record/record.js'
import type { Scenario } from '../../scenario/schema.js'

/** Time that each piece of the line works, s, by hand: its share for the cases of a shift, times the good cases of the fitted shifts over these. */
export function workOf(scenario: Scenario, { shifts }: CleanRecord): ReadonlyMap<string, number> {
  const counted = shifts.filter(({ isHeldOut }) => !isHeldOut)
  if (counted.some(({ good }) => good === null)) return new Map()
  const cases = counted.reduce((sum, { good }) => sum + (good ?? 0), 0)
  const line = lineByHand(scenario)
  return new Map(
    line.pieces
      .filter(({ perShift }) => perShift > 0)
      .map((piece) => {
        const share = workingShare(line, piece, scenario.line[piece.name]!)
        return [piece.name, (cases * share * line.span) / piece.perShift]
      }),
  )
}
