/** A line as machines in series: each with its stops, and what room there is between them; or why it is none. */
import { ofPieces } from '../catalogue/of-equipment.js'
import type { HandStop, Room } from '../kinds/by-hand.js'
import { byHandOf } from '../kinds/hand.js'
import { partingOf } from '../kinds/traits.js'
import { arrivalWays, exitName, lineWays } from '../scenario/routes.js'
import type { Scenario } from '../scenario/schema.js'
import type { BufferHand } from './buffers.js'
import { waitForBusy } from './busy.js'
import type { LineHand, PieceHand } from './line.js'
import { handoverStop } from './planned.js'
import { stopsPerShift } from './stop-counts.js'

/** A side way that takes more than this share of the cases makes a line more than a series. Project rule. */
const mostAside = 0.05

/** A kind of stop of a stage. */
export interface StageStop {
  piece: string
  /** As the result of a run names it, and in words. */
  key: HandStop
  jam: string | null
  words: string
  perCase: number
  /** Mean time from stop to restart, s, standard deviation over it, and the share of it until somebody is there. */
  mean: number
  cv: number
  untilThere: number
}

/** One piece of the series. All counts of cases are of those that arrive at the line. */
export interface Stage extends Omit<Room, 'hasRoom'> {
  name: string
  /** Cases a second while it runs. */
  rate: number
  stops: StageStop[]
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
  if (firsts.size > 1) return none('sources feed more than one place')
  const kinds = new Set(line.sources.map(({ whenFull }) => whenFull))
  if (kinds.size > 1) return none('some of the cases without room wait, some do not')
  if (kinds.has('turn-away')) return none('cases that find no room are turned away')
  const names = namesFrom([...firsts][0]!, scenario)
  if (typeof names === 'string') return none(names)
  const pieces = new Map(line.pieces.map((piece) => [piece.name, piece]))
  const aside = line.pieces.find(
    ({ name, flow }) => !names.includes(name) && flow > mostAside * line.arriving,
  )
  if (aside) return none(`some of the cases go by way of ${aside.name}`)
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
    if (partingOf(scenario.line[name]!) === 'apart') return `${name} sends cases more than one way`
    if (names.includes(name)) return `cases come back to ${name}`
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
  const keys = scenario.line[piece.name]!
  const byHand = byHandOf(keys)
  const room = byHand.room(keys, {
    rate: piece.rate,
    flow: piece.flow,
    before: before?.rate ?? Infinity,
    buffer: known.get(piece.name) ?? null,
  })
  return {
    name: piece.name,
    rate: piece.rate / visits,
    takesIn: room.takesIn / visits,
    holds: room.holds / visits,
    handsOn: room.handsOn / visits,
    isRigid: room.isRigid,
    clears: room.hasRoom ? 0 : visits / piece.rate,
    stay: visits * byHand.stay(keys),
    stops: stopsOf(scenario, line, piece)
      .filter(({ count, time }) => count > 0 && time > 0)
      .map(({ key, jam, words, skill, count, time, work, spread }): StageStop => {
        const mean = time + (skill === null ? 0 : waitForBusy(scenario, line, skill, piece.name))
        return {
          piece: piece.name,
          key,
          jam: jam ?? null,
          words,
          perCase: (count / piece.perShift) * visits,
          mean,
          cv: spread / mean,
          untilThere: skill === null ? 0 : 1 - work / mean,
        }
      }),
  }
}

/** The stops of a piece in a shift in words, handovers included. */
function stopsOf(scenario: Scenario, line: LineHand, piece: PieceHand) {
  const stops = stopsPerShift(scenario, line, piece).map((stop) => ({
    ...stop,
    words: stop.jam === undefined ? ofPieces[stop.key].words! : `${ofPieces[stop.key].words!} (${stop.jam})`,
  }))
  const handover = handoverStop(scenario.line[piece.name]!)
  return handover === null ? stops : [...stops, { ...handover, words: 'handovers' }]
}
