/** Machines with room between them by hand: how much of the output that one loses to the stops of the other the buffer brings back. */
import { has } from '../kinds/traits.js'
import { arrivalWays, feedersOf, lineWays } from '../scenario/routes.js'
import type { Scenario } from '../scenario/schema.js'
import { bufferTime, shareOfFlowRecovered, shareRecovered, type Unreliable } from '../trade/buffer.js'
import { type BufferHand, freePlaces } from './buffers.js'
import type { LineHand, PieceHand } from './line.js'
import { calendarBreakdowns } from './pace.js'

/** A machine with stops of its own, what feeds it, and what can wait between them. Times in s. */
export interface BufferedPair {
  /** One machine, or the sources; several where cases come together. */
  first: string[]
  second: string
  between: string[]
  /** Free places between them, and how long they last at what comes. */
  places: number
  lasts: number
  /** Mean running and stopped time; null where it never stops, or where there is not one. */
  firstStops: Unreliable | null
  secondStops: Unreliable
  /** Share of the lost output that the free places bring back; null where it is not worked out. */
  share: number | null
  /** How the share comes about, or why there is none. */
  how: string
}

/** Mean time between stops while cases pass at `rate` a second, and mean time of a stop; null where there is none. */
function stopsAt(scenario: Scenario, piece: PieceHand, rate: number): Unreliable | null {
  const all = piece.stops.map(({ perCase, time }) => ({ often: perCase * rate, time }))
  const byCalendar = calendarBreakdowns(scenario, scenario.line[piece.name]!)
  if (byCalendar) all.push({ often: 1 / byCalendar.after, time: byCalendar.time })
  const often = all.reduce((sum, each) => sum + each.often, 0)
  if (!(often > 0)) return null
  return { meanUp: 1 / often, meanRepair: all.reduce((sum, each) => sum + each.often * each.time, 0) / often }
}

interface Upstream {
  first: string[]
  between: string[]
  /** Why the two are not a pair; null where they are. */
  trouble: string | null
}

/** What feeds the piece `name`, back to sources or the next piece that stops; what can wait on the way is `known`. */
function upstreamOf(
  scenario: Scenario,
  name: string,
  isStopping: (name: string) => boolean,
  known: ReadonlyMap<string, BufferHand>,
): Upstream {
  const ways = lineWays(scenario)
  // a station has its own places to wait; a conveyor takes nothing while it stands
  const between = known.has(name) && has(scenario.line[name]!, 'hasPlaces') ? [name] : []
  const seen = new Set([name])
  for (let at = name; ; ) {
    const pieces = feedersOf(ways, at)
    const first = [...pieces, ...feedersOf(arrivalWays(scenario), at)]
    const [feeder] = pieces
    if (feeder === undefined) return { first, between, trouble: null }
    const isStop = isStopping(feeder)
    const isBoth = isStop && known.has(feeder) && has(scenario.line[feeder]!, 'conveys')
    // else it is the machine before, or only room to wait
    const troubles = [
      [first.length > 1 || seen.has(feeder), `cases come together at ${at}`],
      [ways.get(feeder)!.length > 1, `${feeder} sends cases more than one way`],
      [isBoth, `${feeder} stops and holds cases too`],
    ] as const
    const trouble = troubles.find(([is]) => is)?.[1] ?? null
    if (trouble !== null || isStop) return { first, between, trouble }
    if (known.has(feeder)) between.unshift(feeder)
    seen.add(feeder)
    at = feeder
  }
}

/** Every piece with stops of its own and what feeds it, in the order of the file. */
export function bufferedPairs(
  scenario: Scenario,
  line: LineHand,
  buffers: readonly BufferHand[],
): BufferedPair[] {
  const known = new Map(buffers.map((each) => [each.name, each]))
  const pieces = new Map(line.pieces.map((each) => [each.name, each]))
  const isStopping = (name: string) => stopsAt(scenario, pieces.get(name)!, 1) !== null
  return line.pieces.flatMap((second): BufferedPair[] => {
    if (!(second.flow > 0) || !isStopping(second.name)) return []
    const { first, between, trouble } = upstreamOf(scenario, second.name, isStopping, known)
    const places = freePlaces(between, known)
    const machine = trouble === null ? pieces.get(first[0]!) : undefined
    const rate = Math.min(second.flow, second.rate, machine?.rate ?? Infinity)
    const pair = {
      first,
      second: second.name,
      between,
      places,
      lasts: bufferTime(places, second.flow),
      firstStops: machine ? stopsAt(scenario, machine, rate) : null,
      secondStops: stopsAt(scenario, second, rate)!,
    }
    const judged =
      trouble === null
        ? machine
          ? betweenTwo(bufferTime(places, rate), pair.firstStops!, pair.secondStops)
          : afterSources(scenario, line, first, second, places)
        : { share: null, how: `not calculated: ${trouble}` }
    return [{ ...pair, ...judged }]
  })
}

type Judged = Pick<BufferedPair, 'share' | 'how'>

const noRoom: Judged = { share: 0, how: 'nothing can wait between them' }

/** `room`: how long the places between two machines last. */
const betweenTwo = (room: number, first: Unreliable, second: Unreliable): Judged =>
  room <= 0 ? noRoom : { share: shareRecovered(room, first, second), how: 'two machines of one speed' }

/** Sources never stop: a flow that waits or goes elsewhere while there is no room. */
function afterSources(
  scenario: Scenario,
  line: LineHand,
  names: readonly string[],
  second: PieceHand,
  places: number,
): Judged {
  const sources = line.sources.filter(({ name }) => names.includes(name))
  const queues = sources.filter(({ whenFull }) => whenFull === 'queue').length
  if (second.rateAfterStops <= second.flow)
    return { share: null, how: `not calculated: ${second.name} does not keep up with the arrivals` }
  if (queues === sources.length)
    return { share: null, how: 'nothing is lost: cases without room wait on the floor' }
  if (queues > 0)
    return { share: null, how: 'not calculated: some of the cases without room wait on the floor' }
  if (places <= 0) return noRoom
  const stops = stopsAt(scenario, second, second.rate)!
  return {
    share: shareOfFlowRecovered(bufferTime(places, second.flow), stops, second.rate / second.flow),
    how: `a steady flow into ${second.name}`,
  }
}
