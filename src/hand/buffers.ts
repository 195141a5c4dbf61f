/** Buffers by hand: what each stretch of conveyor holds, how long it lasts, and how soon it is empty again. */
import { byHandOf } from '../kinds/hand.js'
import { has } from '../kinds/traits.js'
import { feedersOf, lineWays } from '../scenario/routes.js'
import type { Scenario } from '../scenario/schema.js'
import { bufferTime, drainTime } from '../trade/buffer.js'
import type { LineHand, PieceHand } from './line.js'

/** What stands before a machine that stops. Times in s. */
export interface BufferHand {
  name: string
  /** Cases of the mean length that it holds. */
  places: number
  /** Of them those that are on it anyway, riding. */
  riding: number
  /** How long the free places last at what comes. */
  lasts: number
}

/** Accumulation ahead of one machine. */
export interface MachineBuffer {
  machine: string
  before: string[]
  places: number
  lasts: number
  /** Mean time of a stop of the machine, from stop to restart without waiting for busy people. */
  meanStop: number
  /** Until the cases of one mean stop are gone. */
  drain: number
}

/** What each accumulating conveyor and waiting room holds. */
export function buffersOf(scenario: Scenario, line: LineHand): BufferHand[] {
  return line.pieces.flatMap((piece) => {
    const keys = scenario.line[piece.name]!
    const buffer = byHandOf(keys).buffer(keys, { scenario, mix: piece.mix, flow: piece.flow })
    if (!buffer) return []
    const { places, riding } = buffer
    return [{ name: piece.name, places, riding, lasts: lastingOf(piece, places - riding) }]
  })
}

/** Places that are free in `names`, each known. */
export const freePlaces = (names: readonly string[], known: ReadonlyMap<string, BufferHand>): number =>
  names.reduce((free, name) => free + known.get(name)!.places - known.get(name)!.riding, 0)

/** How long free places last at what comes, s. */
const lastingOf = ({ flow }: PieceHand, free: number): number =>
  flow > 0 ? bufferTime(free, flow) : Infinity

/** What stands straight before each machine with stops of its own, back to the next piece that does not accumulate. */
export function machineBuffers(
  scenario: Scenario,
  line: LineHand,
  buffers: readonly BufferHand[],
): MachineBuffer[] {
  const ways = lineWays(scenario)
  const known = new Map(buffers.map((each) => [each.name, each]))
  return line.pieces.flatMap((piece) => {
    const stops = piece.stops.filter(({ perCase }) => perCase > 0)
    if (!has(piece, 'tapes') || stops.length === 0) return []
    const before: string[] = []
    const look = (name: string): void => {
      for (const feeder of feedersOf(ways, name))
        if (known.has(feeder) && !before.includes(feeder)) {
          before.push(feeder)
          if (has(scenario.line[feeder]!, 'conveys')) look(feeder)
        }
    }
    look(piece.name)
    const often = stops.reduce((total, { perCase }) => total + perCase, 0)
    const meanStop = stops.reduce((total, { perCase, time }) => total + perCase * time, 0) / often
    const places = freePlaces(before, known)
    return [
      {
        machine: piece.name,
        before,
        places,
        lasts: lastingOf(piece, places),
        meanStop,
        drain: drainTime(piece.flow * meanStop, piece.rate, piece.flow),
      },
    ]
  })
}
