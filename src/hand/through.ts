/** What gets through a series in a shift: of packers who wait, and of cases that wait on the floor. */
import type { Scenario } from '../scenario/schema.js'
import { entryOf, varianceOfArrivals } from './arriving.js'
import { type LineHand, sum } from './line.js'
import { type FeltStop, pacedBy } from './paced.js'
import type { Stage } from './series.js'

/** What stands for the arrivals, but for its rate. */
const nothing: Stage = {
  name: '',
  rate: Infinity,
  stops: [],
  takesIn: 0,
  holds: 0,
  isRigid: false,
  handsOn: 0,
  stay: 0,
  clears: 0,
}

/** What gets in over the working time, cases/s, and what keeps the rest out; `held` and `floor` in cases at the end of the shift. */
export interface Through {
  rate: number
  pace: string | null
  slower: number
  entry: number
  stops: FeltStop[]
  held: number
  floor: number
}

/** Packers who wait: in each hour the pace is that of the packers or of the slowest piece. */
export function fromPackers(
  scenario: Scenario,
  stages: readonly Stage[],
  hours: readonly { rate: number; share: number }[],
): Through {
  const parts = hours
    .filter(({ rate }) => rate > 0)
    .map(({ rate, share }) => {
      const paced = entryOf(scenario, rate, stages[0]!.clears)
      // the next case of a packer is ready half an interval after the last place is taken, the later the less even they are
      const ready = (1 + varianceOfArrivals(scenario)) / 2
      const packers: Stage = { ...nothing, rate: paced, holds: ready }
      const all = [packers, ...stages]
      const slowest = all.reduce((least, each, index) => (each.rate < all[least]!.rate ? index : least), 0)
      return { share, rate, paced, at: pacedBy(all, slowest) }
    })
  const over = (of: (part: (typeof parts)[number]) => number) =>
    sum(parts.map((part) => part.share * of(part)))
  const first = parts.reduce((most, each) => (each.share * each.rate > most.share * most.rate ? each : most))
  return {
    rate: over(({ at }) => at.rate),
    pace: first.at.pace,
    slower: over(({ paced, at }) => Math.max(0, paced - at.unhindered)),
    entry: over(({ rate, paced }) => rate - paced),
    stops: together(parts.map(({ share, at }) => ({ share, stops: at.stops }))),
    held: parts.at(-1)!.at.held,
    floor: 0,
  }
}

/** Cases that wait on the floor: nothing is lost, but what the line does not get through in time is left over. */
export function fromFloor(
  line: LineHand,
  stages: readonly Stage[],
  hours: readonly { rate: number; share: number }[],
): Through {
  const slowest = stages.reduce((least, each, index) => (each.rate < stages[least]!.rate ? index : least), 0)
  const most = pacedBy([{ ...nothing, rate: Infinity }, ...stages], slowest + 1)
  let floor = 0
  for (const { rate, share } of hours) floor = Math.max(0, floor + (rate - most.rate) * share * line.working)
  const rate = line.arriving - floor / line.working
  const isShort = floor > 0
  const last = hours.at(-1)!
  const calm =
    last.rate > 0 && last.rate < most.rate
      ? pacedBy([{ ...nothing, rate: last.rate, holds: Infinity }, ...stages], 0)
      : null
  // what the queue has grown to by the end where it has not come to its mean: a reflected walk from empty
  const grown = Math.sqrt((2 / Math.PI) * line.working * last.rate * walkOf(stages, last.rate))
  const scale = isShort
    ? (line.arriving - rate) / Math.max(line.arriving - rate, most.unhindered - most.rate)
    : 0
  return {
    rate,
    pace: isShort ? most.pace : null,
    slower: isShort ? Math.max(0, line.arriving - rate - (most.unhindered - most.rate)) : 0,
    entry: 0,
    stops: isShort ? most.stops.map((each) => ({ ...each, lost: each.lost * scale })) : [],
    held: isShort || !calm ? most.held : 0,
    floor: calm && !isShort ? Math.min(calm.held, grown) : 0,
  }
}

/** Variance of the cases that stops keep back, for each case that comes at `rate`. */
const walkOf = (stages: readonly Stage[], rate: number): number =>
  sum(
    stages.flatMap(({ stops }) =>
      stops.map(({ perCase, mean, cv }) => perCase * (mean * rate) ** 2 * (1 + cv * cv)),
    ),
  )

/** The same stops in several hours, each for its share of the time. */
function together(parts: readonly { share: number; stops: readonly FeltStop[] }[]): FeltStop[] {
  const all = new Map<string, FeltStop>()
  for (const { share, stops } of parts)
    for (const each of stops) {
      const key = JSON.stringify([each.stop.piece, each.stop.key, each.stop.jam, each.effect])
      const lost = each.lost * share
      const known = all.get(key)
      // how many outlast the room, and by how much, is told of the hour in which they cost most
      all.set(key, { ...(known && known.lost > lost ? known : each), lost: lost + (known?.lost ?? 0) })
    }
  return [...all.values()]
}
