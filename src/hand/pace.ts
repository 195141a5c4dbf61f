/** The rate of each piece by hand: what it can do, what its stops leave, and what comes to it. */

import { type CauseKey, causes } from '../catalogue/causes.js'
import type { ConveyorKeys } from '../kinds/conveyor/keys.js'
import { cutsOf, headsOf } from '../kinds/sealer/heads.js'
import type { SealerKeys } from '../kinds/sealer/keys.js'
import type { Skill } from '../scenario/crew-keys.js'
import { type Distribution, meanOf, varianceOf } from '../scenario/law.js'
import { outsideSize } from '../scenario/outside.js'
import type { Scenario } from '../scenario/schema.js'
import { cycleTime, gapNeeded } from '../trade/headway.js'
import {
  availability,
  breakdownsPerCase,
  effectiveRate,
  rollChangesPerCase,
  type Stop,
} from '../trade/stops.js'
import { drawnLength } from '../trade/tape.js'
import { wholeZones, zonesFor } from '../trade/zones.js'
import { mixOf } from './demand.js'
import { leftEarly, missedPerRoll, stripsPerRoll } from './rolls.js'

/** A kind of stop that hand knows, by the key of its count. */
export type HandStop = CauseKey | 'planned-stops'

/** One kind of stop of a piece. */
export interface PieceStop extends Stop {
  /** As the result of a run names it. */
  key: HandStop
  /** Whose skill it needs; null for a planned stop that waits for nobody. */
  skill: Skill | null
  /** Part of `time` in which somebody works on it, s; the rest is walking. */
  work: number
  /** Standard deviation of `time`, s. */
  spread: number
}

/** What a piece can do with its mix of cases. Rates in cases/s. */
export interface PiecePace {
  name: string
  type: string
  /** Share of each kind of what comes to it. */
  mix: number[]
  /** Time a case takes, one close on the other, s. */
  cycle: number
  /** Of a sealer: mean headway and mean time in the flap place, s. */
  headway: number
  folding: number
  stops: PieceStop[]
  /** One over the cycle, never stopping. */
  rate: number
  /** The same with its own stops. */
  rateAfterStops: number
  /** How the cycle comes about. */
  how: string
}

/** Mean of `values` weighed by `shares`. */
export const weighed = (values: readonly number[], shares: readonly number[]): number =>
  values.reduce((sum, value, index) => sum + value * shares[index]!, 0)

/** Outside length along the travel of each kind, m. */
export const lengthsOf = ({ cases }: Scenario): number[] =>
  Object.values(cases).map((kind) => outsideSize(kind).length)

/** Tape that a strip on each kind draws off the roll, m. */
export const drawnOf = (scenario: Scenario): number[] =>
  lengthsOf(scenario).map((length) => drawnLength(length, scenario.tape.leg, scenario.tape.stretch))

/** Does anything on the line tape? */
export const hasSealer = ({ line }: Scenario): boolean =>
  Object.values(line).some(({ type }) => type === 'sealer')

/** Time that a case rides on a conveyor without waiting, s. */
export const rideOf = ({ length, zone, speed }: ConveyorKeys): number =>
  (zone === undefined ? length : wholeZones(length, zone) * zone) / speed

/** Chance that a case of each kind jams. */
export const jamChances = ({ cases }: Scenario, jams: NonNullable<SealerKeys['jams']>): number[] =>
  Object.values(cases).map((kind) => Math.min(1, jams.chance * jams['tape-factor'] * kind['jam-factor']))

/** Gap that the heads of a sealer keep, m. */
export const gapOf = (keys: SealerKeys): number =>
  gapNeeded(keys['minimum-gap'], cutsOf(keys), keys['belt-speed'])

/** The crew that is called first for a skill, and its mean walk, s; null where nobody has it. */
export function firstWith(
  scenario: Scenario,
  skill: Skill,
): { name: string; walk: number; walkVariance: number } | null {
  const found = Object.entries(scenario.crew).find(([, { does }]) => does.includes(skill))
  if (!found) return null
  const [name, { walk }] = found
  return { name, walk: meanOf(walk), walkVariance: varianceOf(walk) }
}

/** Pace of the piece `name`, to which kinds come as `flow` says; where nothing comes it is that of the whole mix. */
export function paceOf(
  scenario: Scenario,
  name: string,
  flow: readonly number[],
  changesPerCase: number | null,
): PiecePace {
  const total = flow.reduce((sum, each) => sum + each, 0)
  const mix = total > 0 ? flow.map((each) => each / total) : mixOf(scenario)
  const piece = scenario.line[name]!
  // where kinds are drawn: the chance that a case is of another kind than the one before
  const changes = changesPerCase ?? 1 - weighed(mix, mix)
  const base = cycleOf(scenario, piece, mix, changes)
  const stops = stopsOf(scenario, piece, mix, { ...base, changes })
  const byCalendar = calendarBreakdowns(scenario, piece)
  const upByCalendar = byCalendar ? availability(byCalendar.after, byCalendar.time) : 1
  return {
    name,
    type: piece.type,
    mix,
    ...base,
    stops,
    rate: 1 / base.cycle,
    rateAfterStops: effectiveRate(base.cycle, stops) * upByCalendar,
  }
}

type Base = Pick<PiecePace, 'cycle' | 'headway' | 'folding' | 'how'>

function cycleOf(
  scenario: Scenario,
  piece: Scenario['line'][string],
  mix: readonly number[],
  changes: number,
): Base {
  const lengths = lengthsOf(scenario)
  const plain = { headway: 0, folding: 0 }
  switch (piece.type) {
    case 'conveyor': {
      const pitch = lengths.map((length) =>
        piece.zone === undefined ? length + piece.spacing : zonesFor(length, piece.zone) * piece.zone,
      )
      const delay = piece.carries === 'belt' ? 0 : piece['start-delay']
      const cycle = weighed(pitch, mix) / piece.speed + delay
      return {
        ...plain,
        cycle,
        how: piece.zone === undefined ? 'length and spacing over speed' : 'zones over speed',
      }
    }
    case 'sealer': {
      const gap = gapOf(piece)
      const headways = lengths.map((length) => (length + gap) / piece['belt-speed'])
      const folding = meanOf(piece.flaps.time)
      const setting =
        piece['size-setting'].by === 'machine' ? changes * meanOf(piece['size-setting'].time) : 0
      const cycles = headways.map((headway) => cycleTime(headway, folding))
      return {
        headway: weighed(headways, mix),
        folding,
        cycle: weighed(cycles, mix) + setting,
        how: folding > weighed(headways, mix) ? 'folding the flaps' : 'length and gap over belt speed',
      }
    }
    case 'station':
      return { ...plain, cycle: meanOf(piece.time) / piece.servers, how: 'time a case over places' }
    default:
      return { ...plain, cycle: meanOf(piece.time), how: 'time a case' }
  }
}

/** Mean walk of whoever is called first for a skill, s. */
const walkFor = (scenario: Scenario, skill: Skill): number => firstWith(scenario, skill)?.walk ?? 0

/** Standard deviation of a stop with the walk to it, s. */
const spreadOf = (scenario: Scenario, skill: Skill, work: Distribution): number =>
  Math.sqrt(varianceOf(work) + (firstWith(scenario, skill)?.walkVariance ?? 0))

/** Breakdowns that the calendar counts: mean time to the next, of work on it, and with the walk, s; null where there are none. */
export function calendarBreakdowns(
  scenario: Scenario,
  { breakdowns }: Scenario['line'][string],
): (Pick<PieceStop, 'work' | 'time' | 'spread'> & { after: number }) | null {
  if (breakdowns?.['counted-in'] !== 'calendar-time') return null
  const work = meanOf(breakdowns.repair)
  return {
    after: meanOf(breakdowns.after),
    work,
    time: work + walkFor(scenario, 'breakdowns'),
    spread: spreadOf(scenario, 'breakdowns', breakdowns.repair),
  }
}

function stopsOf(
  scenario: Scenario,
  piece: Scenario['line'][string],
  mix: readonly number[],
  base: Base & { changes: number },
): PieceStop[] {
  const stops: PieceStop[] = []
  const add: Add = (key, perCase, work, more = 0) => {
    const { skill } = causes[key]
    const time = meanOf(work)
    stops.push({
      key,
      skill,
      perCase,
      work: time,
      time: time + walkFor(scenario, skill) + more,
      spread: spreadOf(scenario, skill, work),
    })
  }
  const { breakdowns } = piece
  if (piece.type === 'station' && piece.every) {
    const stop = meanOf(piece.every.stop)
    stops.push({
      key: 'planned-stops',
      skill: null,
      perCase: 1 / piece.every.cases,
      work: 0,
      time: stop,
      spread: Math.sqrt(varianceOf(piece.every.stop)),
    })
  }
  if (piece.type === 'sealer') addSealerStops(scenario, piece, mix, base, add)
  if (breakdowns?.['counted-in'] === 'running-time')
    add('breakdowns', breakdownsPerCase(base.cycle, meanOf(breakdowns.after)), breakdowns.repair)
  return stops
}

type Add = (key: CauseKey, perCase: number, work: Distribution, more?: number) => void

function addSealerStops(
  scenario: Scenario,
  piece: SealerKeys,
  mix: readonly number[],
  base: Base & { changes: number },
  add: Add,
): void {
  const heads = headsOf(piece).length
  const drawn = drawnOf(scenario)
  // how much of its tape a roll leaves at a break depends on the shift; that little is left out of the long run
  const early = leftEarly(scenario, piece['roll-change'], 0)
  const missed = missedPerRoll(piece['roll-change'])
  add(
    'roll-changes',
    rollChangesPerCase(heads, stripsPerRoll(scenario, drawn, mix, early) + missed),
    piece['roll-change'].time,
  )
  const { jams } = piece
  if (jams) add('jams', weighed(jamChances(scenario, jams), mix), jams.clear)
  const breaks = piece['tape-breaks']
  if (breaks) add('tape-breaks', heads * breaks.chance, breaks.fix)
  if (piece.blade) add('blade-services', heads / piece.blade['service-after'], piece.blade.time)
  if (piece['size-setting'].by === 'crew') {
    // the belts run empty first: what that takes beyond the headway that the case takes anyway
    const runsEmpty = Math.max(0, piece.bed / piece['belt-speed'] - base.headway)
    if (base.changes > 0) add('size-settings', base.changes, piece['size-setting'].time, runsEmpty)
  }
}
