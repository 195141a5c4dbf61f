/** How long a stop waits for people who are busy elsewhere, by hand. */
import { power } from '../engine/powers.js'
import type { Call } from '../scenario/calls.js'
import { meanOf, varianceOf } from '../scenario/law.js'
import { otherWorkOf } from '../scenario/other-work.js'
import type { Scenario } from '../scenario/schema.js'
import type { LineHand } from './line.js'
import { firstWith } from './pace.js'
import { plannedOf } from './planned.js'
import { stopsPerShift } from './stop-counts.js'

/** Work that comes again and again: how often a shift, its mean time and variance, s. */
interface Work {
  count: number
  time: number
  variance: number
}

type Called = NonNullable<ReturnType<typeof firstWith>>

/** What keeps a crew at a piece: stops for which it is called first, and planned work. */
function worksAt(
  scenario: Scenario,
  line: LineHand,
  piece: LineHand['pieces'][number],
  { name, walk, walkVariance }: Called,
): Work[] {
  const stops = stopsPerShift(scenario, line, piece).filter(
    ({ skill }) => skill !== null && firstWith(scenario, skill)?.name === name,
  )
  const planned = plannedOf(scenario, scenario.line[piece.name]!).filter(({ needs }) => needs === name)
  return [
    ...stops.map(({ count, time, spread }) => ({ count, time, variance: spread ** 2 })),
    ...planned.map(({ count, time, variance }) => ({
      count,
      time: time + walk,
      variance: variance + walkVariance,
    })),
  ]
}

/** Other work that a crew cannot leave for a stop. */
const otherWorks = (keys: Scenario['crew'][string], span: number): Work[] =>
  otherWorkOf(keys)
    .filter(({ canBeLeft }) => !canBeLeft)
    .map(({ every, takes }) => ({
      count: span / meanOf(every),
      time: meanOf(takes),
      variance: varianceOf(takes),
    }))

/**
 * Mean time, s, that a stop of `place` waits until somebody of the crew that is called first is free: the chance that all of them are
 * at other pieces, or at other work that they cannot leave, times what is left of a task over the people. What is left: mean square over
 * twice the mean. Of crews that stand in for each other, and of breaks, nothing is counted. Derived, as for a queue with one server
 * (residual service).
 */
export function waitForBusy(scenario: Scenario, line: LineHand, skill: Call, place: string): number {
  const crew = firstWith(scenario, skill)
  if (!crew) return 0
  const keys = scenario.crew[crew.name]!
  const { people } = keys
  const elsewhere = line.pieces.filter(({ name }) => name !== place)
  const works = [
    ...elsewhere.flatMap((piece) => worksAt(scenario, line, piece, crew)),
    ...otherWorks(keys, line.span),
  ]
  const time = works.reduce((sum, each) => sum + each.count * each.time, 0)
  const square = works.reduce((sum, each) => sum + each.count * (each.time ** 2 + each.variance), 0)
  if (time === 0) return 0
  return power(Math.min(1, time / line.span / people), people) * (square / (2 * time) / people)
}
