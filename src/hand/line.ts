/** The line by hand: what comes to each piece, what each can do, and which of them sets the rate. */
import type { Scenario } from '../scenario/schema.js'
import { workingTime } from '../scenario/working-time.js'
import { busiestHour, demandOf, mixOf, type SourceDemand } from './demand.js'
import { type Flows, flowsOf, piecesAfter, unsealedShare, unseenShare } from './flow.js'
import { type PiecePace, paceOf } from './pace.js'

/** A piece with what comes to it. Rates in cases/s, while cases come. */
export interface PieceHand extends PiecePace {
  /** What comes: mean over the working time, and in the busiest hour. */
  flow: number
  peakFlow: number
  /** Cases of a shift, as far as the line lets them. */
  perShift: number
}

/** The whole line. Rates in cases/s over the working time; good cases. */
export interface LineHand {
  sources: SourceDemand[]
  /** Cases of a shift that come, where nothing holds them up. */
  perShift: number
  /** Mean over the working time, and the busiest hour with its number from 0. */
  arriving: number
  peak: { hour: number; rate: number }
  pieces: PieceHand[]
  /** Good cases of those that arrive, as a share. */
  goodShare: number
  /** Piece with least to spare; null where no piece needs time. */
  bottleneck: PieceHand | null
  /** What the bottleneck lets through in good cases, never stopping and with its stops; infinite without one. */
  limit: number
  limitAfterStops: number
  /** Good cases out: what arrives, or what the bottleneck leaves. */
  throughput: number
  /** Share of the arrivals that gets in: 1 where the line keeps up. */
  admitted: number
  working: number
  /** Shift and run-out, s. */
  span: number
}

/** Share of each kind in what arrives; of the mix where nothing does. */
export function arrivingShares(
  scenario: Scenario,
  { sources, perShift }: Pick<LineHand, 'sources' | 'perShift'>,
): number[] {
  if (perShift === 0) return mixOf(scenario)
  return Object.keys(scenario.cases).map(
    (_, kind) => sum(sources.map((source) => source.perShift * source.shares[kind]!)) / perShift,
  )
}

/** Sum of all. */
export const sum = (values: readonly number[]): number => values.reduce((total, each) => total + each, 0)

/** How little a piece has to spare: what it can do with its stops over what comes. */
export const toSpare = (piece: Pick<PieceHand, 'rateAfterStops' | 'flow'>): number =>
  piece.flow > 0 ? piece.rateAfterStops / piece.flow : Infinity

/** Works the line out by hand. */
export function lineByHand(scenario: Scenario): LineHand {
  const sources = demandOf(scenario)
  const working = workingTime(scenario.shift)
  const perShift = sum(sources.map((source) => source.perShift))
  const peak = busiestHour(sources)
  const capacity = laneCapacity(scenario)
  const follow = (of: (source: SourceDemand) => number): Flows =>
    flowsOf(
      scenario,
      sources.map((source) => source.shares.map((share) => share * of(source))),
      capacity,
    )
  const mean = follow((source) => source.perShift / working)
  const busiest = follow((source) => source.hourly[peak.hour] ?? 0)
  // where two sources merge, who comes next is chance, whatever each of them brings in order
  const changes = sources.length === 1 ? sources[0]!.changes : null
  const paces = Object.keys(scenario.line).map((name) => {
    const flow = mean.pieces.get(name)!
    return {
      ...paceOf(scenario, name, flow, changes),
      flow: sum(flow),
      peakFlow: sum(busiest.pieces.get(name)!),
    }
  })
  const arriving = perShift / working
  const goodShare = arriving > 0 ? goodOf(scenario, mean) / arriving : 0
  const tightest = paces.reduce<(typeof paces)[number] | null>(
    (least, each) => (toSpare(each) < (least ? toSpare(least) : Infinity) ? each : least),
    null,
  )
  const limitOf = (rate: 'rate' | 'rateAfterStops') =>
    arriving *
    goodShare *
    Math.min(...paces.map((each) => (each.flow > 0 ? each[rate] / each.flow : Infinity)))
  const limitAfterStops = limitOf('rateAfterStops')
  const admitted = tightest ? Math.min(1, toSpare(tightest)) : 1
  const pieces = paces.map((each) => ({ ...each, perShift: each.flow * working * admitted }))
  return {
    sources,
    perShift,
    arriving,
    peak,
    pieces,
    goodShare,
    bottleneck: pieces.find(({ name }) => name === tightest?.name) ?? null,
    limit: limitOf('rate'),
    limitAfterStops,
    throughput: arriving * goodShare * admitted,
    admitted,
    working,
    span: scenario.shift.length + scenario.shift['run-out'],
  }
}

/** Good cases out: less what an inspection sends out, and what leaves unsealed and unseen. */
function goodOf(scenario: Scenario, { out, rejected }: Flows): number {
  const unseen = unsealedShare(scenario) * unseenShare(scenario)
  return (sum(out) - sum(rejected)) * (1 - unseen)
}

/** What each way of a divert can take: the slowest piece that only that way leads to. */
function laneCapacity(scenario: Scenario): (targets: readonly string[]) => number[] {
  const mix = mixOf(scenario)
  return (targets) => {
    const reached = targets.map((target) => piecesAfter(scenario, target))
    const capacities = reached.map((own, index) => {
      const others = reached.filter((_, other) => other !== index && targets[other] !== targets[index])
      const alone = [...own].filter(
        (name) => !others.some((other) => other.has(name)) && name in scenario.line,
      )
      return Math.min(...alone.map((name) => paceOf(scenario, name, mix, null).rate))
    })
    const most = Math.max(...capacities.filter((each) => Number.isFinite(each)))
    return capacities.map((each) => (Number.isFinite(each) ? each : Number.isFinite(most) ? most : 1))
  }
}
