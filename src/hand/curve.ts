/** Rate over belt speed: why faster belts bring ever less. */

import { weighed } from '../kinds/by-hand.js'
import { cutsOf, headsOf } from '../kinds/sealer/heads.js'
import { has } from '../kinds/traits.js'
import { lengthsOf } from '../scenario/outside.js'
import type { Scenario } from '../scenario/schema.js'
import { type RatePoint, rateCeiling, rateCurve, speedOfLittleGain } from '../trade/headway.js'
import type { LineHand } from './line.js'

/** Steady rates of one sealer with its mean case. Speeds m/s, gaps m, rates cases/s. */
export interface Curve {
  machine: string
  meanLength: number
  /** Speed that the scenario has. */
  speed: number
  /** Slowest of the ratings of its heads. */
  rated: number
  points: RatePoint[]
  /** No belt exceeds it; infinite where no arm needs time. */
  ceiling: number
  /** From here on another m/min brings less than a quarter of a case/min. */
  littleGain: number
}

/** What another metre of belt is to bring, cases: a quarter. Project rule. */
const worth = 0.25

/** Parts of the rated speed that the table shows. */
const parts = [0.25, 0.5, 0.75, 1, 1.25]
/** A part this near to the speed of the scenario would only say it twice. */
const near = 0.02

/** The curve of every sealer, in the order of the file. */
export function curvesOf(scenario: Scenario, line: LineHand): Curve[] {
  return line.pieces.flatMap((piece) => {
    const keys = scenario.line[piece.name]!
    if (!has(keys, 'tapes')) return []
    const rated = Math.min(...headsOf(keys).map(([, head]) => head['rated-speed']))
    const meanLength = weighed(lengthsOf(scenario), piece.mix)
    const own = keys['belt-speed']
    const others = parts.map((part) => part * rated).filter((speed) => Math.abs(speed / own - 1) > near)
    const speeds = [...others, own].sort((a, b) => a - b)
    const cuts = cutsOf(keys)
    return [
      {
        machine: piece.name,
        meanLength,
        speed: own,
        rated,
        points: rateCurve(speeds, meanLength, keys['minimum-gap'], cuts),
        ceiling: rateCeiling(cuts),
        littleGain: speedOfLittleGain(worth, meanLength, keys['minimum-gap'], cuts),
      },
    ]
  })
}
