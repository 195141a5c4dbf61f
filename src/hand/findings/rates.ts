/** Findings on rates: target, arrivals and what each piece can do. */
import type { Words } from '../../catalogue/printed-units.js'
import { byHandOf } from '../../kinds/hand.js'
import { arrivalWays } from '../../scenario/routes.js'
import type { Path } from '../../scenario/walk.js'
import type { SourceDemand } from '../demand.js'
import type { Looked, Rule, Tell } from '../finding.js'
import { piecesAfter } from '../flow.js'
import { type PieceHand, toSpare } from '../line.js'

/** Rounding of rates that are meant to be alike. */
const hair = 1e-9
/** A target this close to what arrives is reached in about half of the shifts. Project rule. */
const nearArrivals = 0.98
/** Pieces beside the one that sets the rate are to be this much faster. From memory, low confidence: 10 to 20 %. */
const headroom = 1.1

/** The key that makes a piece as fast as it is. */
const paceKey = ({ type, name }: Pick<PieceHand, 'type' | 'name'>): Path => [
  'line',
  name,
  byHandOf({ type }).paceKey,
]

/** What would make a piece faster. */
const faster = (piece: PieceHand): string => byHandOf(piece).faster

/** Whether two rates are the same as they are printed. */
const isAsPrinted = (one: number, other: number, words: Words): boolean =>
  words.rate(one) === words.rate(other)

/** `6.67 cases/min of good cases arrive`; where that is printed as the target is, by how much it is less. */
const arrivesText = (target: number, good: number, { working }: { working: number }, words: Words): string =>
  isAsPrinted(target, good, words)
    ? `${words.count(good * working)} good cases arrive in a shift, and the target needs ${words.count(target * working)}`
    : `${words.rate(good)} of good cases arrive`

export const targetFindings: Rule = ({ scenario, hand: { line }, words }, tell) => {
  const { target } = scenario
  if (target === undefined) return
  const good = line.arriving * line.goodShare
  if (target > good * (1 + hair))
    tell.error(
      'target-above-arrivals',
      ['target'],
      `The target is ${words.rate(target)}, but only ${arrivesText(target, good, line, words)}. In ${words.time(line.working)} of working time ${words.count(line.perShift)} cases come${line.goodShare < 1 - hair ? `, of which ${words.share(1 - line.goodShare)} are lost` : ''}.`,
      'balance of cases',
      `lower the target to at most ${words.rate(isAsPrinted(target, good, words) ? good * nearArrivals : good)}, or have more arrivals`,
      target / good,
    )
  else if (target > good * nearArrivals)
    tell.warning(
      'target-near-arrivals',
      ['target'],
      `The target is ${words.rate(target)}, and only ${words.rate(good)} of good cases arrive on average. If arrivals vary, about half of the shifts cannot reach the target.`,
      'project rule: a target within 2 % of the arrivals',
      `lower the target to at most ${words.rate(good * nearArrivals)}, or have more arrivals`,
    )
  for (const piece of line.pieces) {
    if (!(piece.flow > 0)) continue
    const goodAt = (rate: number) => (good * rate) / piece.flow
    if (target > goodAt(piece.rate) * (1 + hair))
      tell.error(
        'target-above-machine',
        paceKey(piece),
        `\`${piece.name}\` passes ${words.rate(piece.rate)} at most (${piece.how}). That gives ${words.rate(goodAt(piece.rate))} of good cases, so the target of ${words.rate(target)} cannot be reached.`,
        'derived',
        faster(piece),
        target / goodAt(piece.rate),
      )
    else if (target > goodAt(piece.rateAfterStops) * (1 + hair))
      tell.warning(
        'target-above-stops',
        paceKey(piece),
        `\`${piece.name}\` passes ${words.rate(piece.rate)} while it runs. After its own stops ${words.rate(goodAt(piece.rateAfterStops))} of good cases are left, below the target of ${words.rate(target)}.`,
        'derived: time per case and its part of the stops',
        `${faster(piece)}; or have fewer or shorter stops`,
      )
  }
}

export const arrivalFindings: Rule = (looked, tell) => {
  const { hand, words } = looked
  const { bottleneck } = hand.line
  if (!bottleneck) return
  const spare = toSpare(bottleneck)
  if (spare < 1 - hair) {
    for (const source of hand.line.sources)
      if (feeds(looked, source, bottleneck)) tellHeldUp(looked, source, bottleneck, tell)
    return
  }
  if (spare < headroom)
    tell.note(
      'little-to-spare',
      paceKey(bottleneck),
      `\`${bottleneck.name}\` can do ${words.rate(bottleneck.rateAfterStops)} after its stops, only ${words.share(spare - 1)} more than its arrivals. After each stop it catches up slowly.`,
      'from memory, low confidence: 10 to 20 % to spare',
      faster(bottleneck),
    )
  tellPeak(looked, tell)
}

const feeds = ({ scenario }: Looked, source: SourceDemand, piece: PieceHand): boolean =>
  arrivalWays(scenario)
    .get(source.name)!
    .some(({ target }) => piecesAfter(scenario, target).has(piece.name))

/** More comes than the bottleneck takes: what that means for a source. */
function tellHeldUp(looked: Looked, source: SourceDemand, bottleneck: PieceHand, tell: Tell): void {
  const { hand, words } = looked
  const rates = `${words.rate(bottleneck.flow)} arrive at \`${bottleneck.name}\` on average, but it can do only ${words.rate(bottleneck.rateAfterStops)} after its stops`
  const path = ['arrivals', source.name, 'when-full']
  const over = 1 - toSpare(bottleneck)
  if (source.whenFull !== 'queue') {
    const isWaiting = source.whenFull === 'wait'
    const what = isWaiting
      ? `the packers of \`${source.name}\` wait for about ${words.share(over)} of their time`
      : `about ${words.share(over)} of the cases are turned away, from \`${source.name}\` or another source`
    const told = isWaiting ? tell.note : tell.warning
    told('arrivals-held-up', path, `${rates}: ${what}.`, 'derived', faster(bottleneck))
    return
  }
  const queued = hand.line.sources
    .filter((each) => each.whenFull === 'queue' && feeds(looked, each, bottleneck))
    .reduce((sum, each) => sum + each.perShift, 0)
  const isHopeless = (bottleneck.flow * queued) / hand.line.perShift > bottleneck.rateAfterStops * (1 + hair)
  const grows = (bottleneck.flow - bottleneck.rateAfterStops) * hand.line.working
  tell[isHopeless ? 'error' : 'warning'](
    'queue-never-clears',
    path,
    `${rates}: ${isHopeless ? `the queue of \`${source.name}\` never clears` : `the queue of \`${source.name}\` only clears if other sources wait`}; about ${words.count(grows)} cases are left over in a shift.`,
    'derived: a queue empties at the rate sealed minus the rate of arrivals',
    faster(bottleneck),
    1 / toSpare(bottleneck),
  )
}

/** The mean is within reach, the busiest hour is not: the tightest piece. */
function tellPeak({ hand: { line }, words }: Looked, tell: Tell): void {
  const tight = line.pieces.reduce<PieceHand | null>(
    (most, each) =>
      each.peakFlow / each.rateAfterStops > (most ? most.peakFlow / most.rateAfterStops : 1 + hair)
        ? each
        : most,
    null,
  )
  if (!tight) return
  const surplus = (tight.peakFlow - tight.rateAfterStops) * 3600
  tell.warning(
    'peak-above-machine',
    paceKey(tight),
    `The busiest hour (hour ${line.peak.hour + 1}) brings ${words.rate(tight.peakFlow)} to \`${tight.name}\`, which can do ${words.rate(tight.rateAfterStops)} after its stops. At the end of this hour about ${words.count(surplus)} cases wait, or their packers do.`,
    'derived',
    `${faster(tight)}; or spread the peak`,
  )
}
