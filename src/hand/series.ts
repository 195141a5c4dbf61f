/** A line as machines in series: each with its stops, and what room there is between them; or why it is none. */
import { ofPieces } from '../catalogue/of-equipment.js'
import { meanOf } from '../scenario/law.js'
import { arrivalWays, exitName, lineWays } from '../scenario/routes.js'
import type { Scenario } from '../scenario/schema.js'
import type { BufferHand } from './buffers.js'
import { waitForBusy } from './busy.js'
import type { LineHand, PieceHand } from './line.js'
import { type HandStop, rideOf } from './pace.js'
import { stopsPerShift } from './stop-counts.js'

/** A side way that takes more than this share of the cases makes a line more than a series. Project rule. */
const mostAside = 0.05

/** A kind of stop of a stage. */
export interface StageStop {
  piece: string
  /** As the result of a run names it, and in words. */
  key: HandStop
  words: string
  perCase: number
  /** Mean time from stop to restart, s, standard deviation over it, and the share of it until somebody is there. */
  mean: number
  cv: number
  untilThere: number
}

/** One piece of the series. All counts of cases are of those that arrive at the line. */
export interface Stage {
  name: string
  /** Cases a second while it runs. */
  rate: number
  stops: StageStop[]
  /** Cases that find room in it while it stands, beyond those that are in it anyway. */
  takesIn: number
  /** Cases more that it holds while what follows stands. */
  holds: number
  /** It is belts that hold a case or so more while they run up to the first one: nothing where they set the pace, or never catch up. */
  isRigid: boolean
  /** Cases more that it has to hand on, where it was held up, while what comes before stands. */
  handsOn: number
  /** Time of a case in it without waiting, s. */
  stay: number
  /** Time after which the next case may enter, s: 0 where there is room to wait. */
  clears: number
}

/** Pieces in the order in which cases pass them; or in words why the line is no series. */
export type Series = { stages: Stage[]; trouble: null } | { stages: null; trouble: string }

/** Reads a scenario as a series. */
export function seriesOf(scenario: Scenario, line: LineHand, buffers: readonly BufferHand[]): Series {
  const none = (trouble: string): Series => ({ stages: null, trouble })
  if (!(line.arriving > 0)) return none('nothing arrives')
  const firsts = new Set([...arrivalWays(scenario).values()].map((ways) => ways[0]!.target))
  if (firsts.size > 1) return none('sources come to more than one place')
  const kinds = new Set(line.sources.map(({ whenFull }) => whenFull))
  if (kinds.size > 1) return none('part of what finds no room waits, part does not')
  if (kinds.has('turn-away')) return none('cases that find no room are turned away')
  const names = namesFrom([...firsts][0]!, scenario)
  if (typeof names === 'string') return none(names)
  const pieces = new Map(line.pieces.map((piece) => [piece.name, piece]))
  const aside = line.pieces.find(
    ({ name, flow }) => !names.includes(name) && flow > mostAside * line.arriving,
  )
  if (aside) return none(`part of the cases goes by way of ${aside.name}`)
  const known = new Map(buffers.map((each) => [each.name, each]))
  const row = names.map((name) => pieces.get(name)!)
  return {
    stages: row.map((piece, index) => stageOf(scenario, line, piece, row[index - 1], known)),
    trouble: null,
  }
}

/** Along the first way of each piece to the exit; what an inspection rejects goes aside. */
function namesFrom(first: string, scenario: Scenario): string[] | string {
  const ways = lineWays(scenario)
  const names: string[] = []
  for (let name = first; name !== exitName; name = ways.get(name)![0]!.target) {
    if (scenario.line[name]!.type === 'divert') return `${name} sends cases more than one way`
    if (names.includes(name)) return `cases come to ${name} again`
    names.push(name)
  }
  return names
}

function stageOf(
  scenario: Scenario,
  line: LineHand,
  piece: PieceHand,
  before: PieceHand | undefined,
  known: ReadonlyMap<string, BufferHand>,
): Stage {
  /** Times that a case that arrives comes here. */
  const visits = piece.flow / line.arriving
  const room = roomOf(scenario, piece, before, known.get(piece.name))
  return {
    name: piece.name,
    rate: piece.rate / visits,
    takesIn: room.takesIn / visits,
    holds: room.holds / visits,
    handsOn: room.handsOn / visits,
    isRigid: isRigid(scenario.line[piece.name]!),
    clears: hasRoom(scenario.line[piece.name]!) ? 0 : visits / piece.rate,
    stay: visits * stayOf(scenario.line[piece.name]!),
    stops: stopsPerShift(scenario, line, piece)
      .filter(({ count, time }) => count > 0 && time > 0)
      .map(({ key, skill, count, time, work, spread }): StageStop => {
        const mean = time + (skill === null ? 0 : waitForBusy(scenario, line, skill, piece.name))
        return {
          piece: piece.name,
          key,
          words: ofPieces[key].words!,
          perCase: (count / piece.perShift) * visits,
          mean,
          cv: spread / mean,
          untilThere: skill === null ? 0 : 1 - work / mean,
        }
      }),
  }
}

const hasRoom = (keys: Scenario['line'][string]): boolean =>
  keys.type === 'station' && (keys['waiting-room'] === 'unlimited' || keys.servers + keys['waiting-room'] > 1)

const isRigid = (keys: Scenario['line'][string]): boolean =>
  keys.type === 'sealer' || (keys.type === 'conveyor' && keys.carries === 'belt')

/** Time of a case in a piece without waiting, s. */
export function stayOf(keys: Scenario['line'][string]): number {
  if (keys.type === 'conveyor') return rideOf(keys)
  if (keys.type === 'sealer') return meanOf(keys.flaps.time) + keys.bed / keys['belt-speed']
  return meanOf(keys.time)
}

/**
 * Room in a piece. Rigid belts hold no more while they stand, but they move until their first case is at the end: half a case on average.
 * Held up now and then they carry cases close together, and have those to hand on.
 */
function roomOf(
  scenario: Scenario,
  { name, rate, flow }: PieceHand,
  before: PieceHand | undefined,
  buffer: BufferHand | undefined,
): Pick<Stage, 'takesIn' | 'holds' | 'handsOn'> {
  const keys = scenario.line[name]!
  const free = (places: number, time: number) => Math.max(0, places - flow * time)
  if (keys.type === 'conveyor' && buffer) {
    const places = buffer.places - buffer.riding
    return { takesIn: 0, holds: places, handsOn: places }
  }
  if (keys.type === 'station')
    return {
      takesIn: (buffer?.places ?? 0) + free(keys.servers, meanOf(keys.time)),
      holds: 0,
      handsOn: buffer?.places ?? 0,
    }
  if (keys.type !== 'conveyor' && keys.type !== 'sealer') return { takesIn: 0, holds: 0, handsOn: 0 }
  const ride = keys.type === 'conveyor' ? rideOf(keys) : keys.bed / keys['belt-speed']
  const closer = Math.max(0, Math.min(before?.rate ?? Infinity, rate) - flow)
  const flapPlace = keys.type === 'sealer' ? free(1, meanOf(keys.flaps.time)) : 0
  return { takesIn: 0, holds: 0.5 + flapPlace, handsOn: closer * ride }
}
