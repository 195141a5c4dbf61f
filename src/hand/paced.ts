/** A series at the pace of one of its stages: which stops that one feels, and what they leave of it. */
import { type Dam, outlasting, type StopKind } from '../trade/outlast.js'
import { sum } from './line.js'
import type { Stage, StageStop } from './series.js'

/** A stop as the piece that sets the pace feels it. */
export interface FeltStop {
  stop: StageStop
  /** It is its own, holds it up, or leaves it without cases. */
  effect: 'own' | 'blocks' | 'starves'
  /** Good cases a second that it costs. */
  lost: number
  /** Share of the stops that outlast the room, and by how much these do, s. */
  share: number
  rest: number
}

/** A kind of stop on its way to the stage that sets the pace. */
interface Passed extends StopKind {
  stop: StageStop
  share: number
}

/** A stop of which more than this share is felt comes about as evenly as before. */
const stillEven = 0.5

/** The stops of a stage at a pace, cases/s. */
const stopsAt = ({ stops }: Stage, pace: number): Passed[] =>
  stops.map((stop) => ({
    stop,
    often: stop.perCase * pace,
    mean: stop.mean,
    cv: stop.cv,
    isEven: stop.key === 'planned-stops' || stop.key === 'planned-work',
    share: 1,
  }))

/** What is left of stops past a room. */
const felt = (stops: readonly Passed[], { stops: left }: Dam): Passed[] =>
  stops
    .map((each, kind): Passed => {
      const { share, mean, cv } = left[kind]!
      const isEven = each.isEven && share > stillEven
      return { ...each, often: each.often * share, mean, cv, isEven, share: each.share * share }
    })
    .filter(({ often }) => often > 0)

/** Time that stops take for each second of the pace, s. */
const loadOf = (stops: readonly StopKind[]): number => sum(stops.map(({ often, mean }) => often * mean))

/** All stages at the pace of one; the first one stands for the arrivals. Rates in cases/s; `held` in cases. */
export function pacedBy(all: readonly Stage[], pacing: number) {
  const pace = all[pacing]!.rate
  const own = stopsAt(all[pacing]!, pace)
  // while it stands for its own stops, what is held up is caught up, and what was used up comes again
  const relief = 1 + loadOf(own)
  const { blocks, held } = blockedBy(all, pacing, relief)
  const stops = [
    ...own.map((each) => ({ ...each, effect: 'own' as const })),
    ...blocks.map((each) => ({ ...each, effect: 'blocks' as const })),
    ...starvedBy(all, pacing, relief).map((each) => ({ ...each, effect: 'starves' as const })),
  ]
  const rate = pace / (1 + loadOf(stops))
  // no line puts out more than one of its pieces would alone
  const alone = all.map((stage) => stage.rate / (1 + loadOf(stopsAt(stage, stage.rate))))
  const least = Math.min(rate, ...alone)
  const lost = rate < pace ? (pace - least) / (pace - rate) : 0
  return {
    pace: pacing === 0 ? null : all[pacing]!.name,
    unhindered: rate < pace ? pace : least,
    rate: least,
    held,
    stops: stops.map(
      ({ stop, effect, often, mean, share }): FeltStop => ({
        stop,
        effect,
        lost: rate * often * mean * lost,
        share,
        rest: mean,
      }),
    ),
  }
}

/** What the stops of all that follow come to, from the last stage up; `held` are the cases that they hold up. */
function blockedBy(all: readonly Stage[], pacing: number, relief: number) {
  const pace = all[pacing]!.rate
  let blocks: Passed[] = []
  let [held, speed] = [0, Infinity]
  for (let at = all.length - 1; at > pacing; at--) {
    const [stage, before] = [all[at]!, all[at - 1]!]
    // what is held up is let go no faster than everything behind it goes
    speed = Math.min(speed, stage.rate / pace)
    const stops = [...stopsAt(stage, pace), ...blocks]
    const holds = before.isRigid && at - 1 === pacing ? 0 : before.holds
    const dam = outlasting(stops, (stage.takesIn + holds) / pace, speed * relief)
    held += dam.level * pace
    blocks = felt(stops, dam)
  }
  return { blocks, held }
}

/** The same of all that comes before. */
function starvedBy(all: readonly Stage[], pacing: number, relief: number): Passed[] {
  const pace = all[pacing]!.rate
  let starves: Passed[] = []
  let speed = all[0]!.rate / pace
  for (let at = 1; at < pacing; at++) {
    speed = Math.min(speed, all[at]!.rate / pace)
    const stops = [...stopsAt(all[at]!, pace), ...starves]
    starves = felt(stops, outlasting(stops, all[at + 1]!.handsOn / pace, speed * relief))
  }
  return starves
}
