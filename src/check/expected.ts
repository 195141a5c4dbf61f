/** Expected output by hand: what stops, and the room between machines, leave of the arrivals. */
import type { Scenario } from '../scenario/schema.js'
import { type Dam, outlasting, type StopKind } from '../trade/outlast.js'
import { entryOf, profileOf, varianceOfArrivals } from './arriving.js'
import type { BufferHand } from './buffers.js'
import type { LineHand } from './line.js'
import { type Stage, type StageStop, seriesOf } from './series.js'

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

/** Where the arrivals go, in good cases a second. Arrivals less all of it is `throughput`. */
export interface ExpectedOutput {
  /** Good cases out over the working time, cases/s. */
  throughput: number
  /** The piece that sets the pace; null where the arrivals do. */
  pace: string | null
  /** Spoilt in jams, rejected or left open. */
  spoilt: number
  /** The piece that sets the pace is slower than what comes. */
  slower: number
  /** Packers wait until the place where cases enter is clear. */
  entry: number
  /** The most costly first. */
  stops: FeltStop[]
  /** Still in the line, or on the floor, at the end of the shift. */
  left: number
  /** The pieces in the order in which cases pass them. */
  order: string[]
}

/** Room that is not there: places more before the piece `before`. */
export interface MoreRoom {
  before: string
  places: number
}

/** Worked out, or in words why not. */
export type Expected = { output: ExpectedOutput; trouble: null } | { output: null; trouble: string }

const sum = (values: readonly number[]): number => values.reduce((total, each) => total + each, 0)

/**
 * Works a line in series out. The slowest while it runs sets the pace, the arrivals among them. Stops of what follows hold it up as far as they
 * outlast the room between (`trade/outlast`), passed on from machine to machine; stops of what comes before leave it without cases likewise. Only
 * what runs fails, so that stops do not overlap (Buzacott 1967). Derived; its error is measured, see `usual-error`.
 */
export function expectedOutput(
  scenario: Scenario,
  line: LineHand,
  buffers: readonly BufferHand[],
  more?: MoreRoom,
): Expected {
  const series = seriesOf(scenario, line, buffers)
  if (series.trouble !== null) return { output: null, trouble: series.trouble }
  const stages = more ? roomier(series.stages, more) : series.stages
  const hours = profileOf(scenario, line)
  const isQueue = line.sources.every(({ whenFull }) => whenFull === 'queue')
  const through = isQueue ? fromFloor(line, stages, hours) : fromPackers(scenario, stages, hours)
  const left = leftInLine(scenario, line, stages, through)
  const good = line.goodShare
  return {
    trouble: null,
    output: {
      throughput: (through.rate - left) * good,
      pace: through.pace,
      spoilt: line.arriving * (1 - good),
      slower: through.slower * good,
      entry: through.entry * good,
      stops: through.stops
        .map((each) => ({ ...each, lost: each.lost * good }))
        .sort((one, other) => other.lost - one.lost),
      left: left * good,
      order: stages.map(({ name }) => name),
    },
  }
}

const roomier = (stages: readonly Stage[], { before, places }: MoreRoom): Stage[] =>
  stages.map((stage, index) => {
    if (stages[index + 1]?.name === before)
      return { ...stage, holds: stage.holds + places, handsOn: stage.handsOn + places }
    return index === 0 && stage.name === before ? { ...stage, takesIn: stage.takesIn + places } : stage
  })

/** What gets in over the working time, cases/s, and what keeps the rest out; `held` and `floor` in cases at the end of the shift. */
interface Through {
  rate: number
  pace: string | null
  slower: number
  entry: number
  stops: FeltStop[]
  held: number
  floor: number
}

/** Packers who wait: in each hour the pace is that of the packers or of the slowest piece. */
function fromPackers(
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
function fromFloor(
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
    isEven: stop.key === 'planned-stops',
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
function pacedBy(all: readonly Stage[], pacing: number) {
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

/** The same stops in several hours, each for its share of the time. */
function together(parts: readonly { share: number; stops: readonly FeltStop[] }[]): FeltStop[] {
  const all = new Map<string, FeltStop>()
  for (const { share, stops } of parts)
    for (const each of stops) {
      const key = [each.stop.piece, each.stop.key, each.effect].join(' ')
      const lost = each.lost * share
      const known = all.get(key)
      // how many outlast the room, and by how much, is told of the hour in which they cost most
      all.set(key, { ...(known && known.lost > lost ? known : each), lost: lost + (known?.lost ?? 0) })
    }
  return [...all.values()]
}

/** Cases still in the line or on the floor when a shift that started empty ends, over the working time, cases/s. */
function leftInLine(
  { shift }: Scenario,
  { working }: LineHand,
  stages: readonly Stage[],
  { rate, held, floor }: Through,
): number {
  if (shift.start !== 'empty') return 0
  const riding = rate * sum(stages.map(({ stay }) => stay))
  const slowest = Math.min(...stages.map((stage) => stage.rate))
  return Math.min(rate * working, Math.max(0, riding + held + floor - shift['run-out'] * slowest)) / working
}
