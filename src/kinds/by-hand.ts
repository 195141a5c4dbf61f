/** What the hand calculation asks of every kind of equipment. Times in s, lengths in m, rates in cases/s. */
import type { CauseKey } from '../catalogue/causes.js'
import type { PieceKey } from '../catalogue/of-equipment.js'
import type { Call } from '../scenario/calls.js'
import type { Distribution } from '../scenario/law.js'
import type { Way } from '../scenario/routes.js'
import type { Scenario } from '../scenario/schema.js'
import type { Stop } from '../trade/stops.js'

/** Mean of `values` weighed by `shares`. */
export const weighed = (values: readonly number[], shares: readonly number[]): number =>
  values.reduce((sum, value, index) => sum + value * shares[index]!, 0)

/** A change from one kind of case to another, by their places in the scenario, and how many of it there are a case. */
export interface Change {
  from: number
  to: number
  perCase: number
}

/** What comes to a piece: shares of the kinds of cases, changes from one kind to another a case, and which; null where each case is drawn. */
export interface Coming {
  scenario: Scenario
  mix: readonly number[]
  changes: number
  following: readonly Change[] | null
}

/** What a case takes of a piece. */
export interface Cycle {
  /** Time a case takes, one close on the other. */
  cycle: number
  /** Of a sealer: mean headway and mean time in the flap place. */
  headway: number
  folding: number
  /** How the cycle comes about. */
  how: string
}

/** A kind of stop that hand knows, by the key of its count. */
export type HandStop = CauseKey | 'planned-stops' | 'planned-work'

/** A kind of stop as the keys of a piece describe it. */
export interface StopKind {
  /** As the result of a run names it. */
  key: HandStop
  /** Of a jam its kind, where it has a name. */
  jam?: string
  perCase: number
  /** Time of work on it. */
  work: Distribution
  /** What is added to that on average, and how that varies, s and s2. */
  added?: { mean: number; variance: number }
  /** The crew that it is left to; not given where whoever has the skill is called. */
  by?: string
  /** Time that passes beside work and walk. */
  more?: number
}

/** One kind of stop of a piece, with the walk of whoever is called first. */
export interface PieceStop extends Stop {
  key: HandStop
  jam?: string
  /** Who is called; null for a planned stop that waits for nobody. */
  skill: Call | null
  /** Part of `time` in which somebody works on it; the rest is walking. */
  work: number
  /** Standard deviation of `time`. */
  spread: number
}

/** A kind of stop with how many of it a shift has. */
export interface CountedStop extends Omit<PieceStop, 'perCase'> {
  count: number
}

/** Room in a piece beyond the cases that are in it anyway. */
export interface Room {
  /** Cases that find room in it while it stands. */
  takesIn: number
  /** Cases more that it holds while what follows stands. */
  holds: number
  /** Cases more that it has to hand on, where it was held up, while what comes before stands. */
  handsOn: number
  /** It is belts that hold a case or so more while they run up to the first one: nothing where they set the pace, or never catch up. */
  isRigid: boolean
  /** The next case may enter at any time, for it has room to wait. */
  hasRoom: boolean
}

/** What a piece does in a shift. */
export interface ShiftByHand {
  /** Cases. */
  perShift: number
  /** Share of `span` in which it works; shift and run-out. */
  working: number
  span: number
}

/** A figure that a run measures too: a measure of the piece, or the share of its state of working. */
export interface PieceFigure {
  key: PieceKey | 'working'
  value: number
  how: string
}

/** Where the cases of one kind go, and which share of them. */
export type Split = (kind: number) => [target: string, share: number][]

export interface ByHand<Keys> {
  /** The key that makes it as fast as it is, and what would make it faster, in words. */
  paceKey: string
  faster: string
  cycle(keys: Keys, coming: Coming): Cycle
  /** Its stops, breakdowns left out: those are alike for all kinds. */
  stops(keys: Keys, coming: Coming, cycle: Cycle): StopKind[]
  /** A kind of stop as a shift has it. */
  counted(keys: Keys, stop: PieceStop, shift: ShiftByHand & { scenario: Scenario }): CountedStop
  /** Time of a case in it without waiting. */
  stay(keys: Keys): number
  /** Places side by side in which a case stays; null where it is carried. */
  places(keys: Keys): number | null
  /** Cases of a mix that it holds where they wait, and of them those that are there anyway; null where none can wait. */
  buffer(
    keys: Keys,
    coming: Pick<Coming, 'scenario' | 'mix'> & { flow: number },
  ): { places: number; riding: number } | null
  /** Room in it, where `before` is the rate of what feeds it, and `buffer` what waits in it. */
  room(
    keys: Keys,
    given: { rate: number; flow: number; before: number; buffer: { places: number; riding: number } | null },
  ): Room
  /** Where its cases go; `unsealed` is the share that passed an empty roll, `capacity` weighs ways by what each can take. */
  split(
    keys: Keys,
    ways: readonly Way[],
    given: {
      scenario: Scenario
      unsealed: number
      capacity: (targets: readonly string[]) => number[]
    },
  ): Split
  /** Share of the cases that pass an empty roll, of those that it tapes. */
  unsealed(keys: Keys, scenario: Scenario): number
  /** Share of the unsealed cases that it does not find. */
  unseen(keys: Keys): number
  /** The figure that tells most of it. */
  figure(keys: Keys, piece: ShiftByHand & { name: string; cycle: number }): PieceFigure | null
}
