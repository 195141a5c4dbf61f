/** Rolls by hand: how many strips of a mix a roll gives, how often it is changed, and what it loses. */
import { lengthsOf, lengthVariancesOf } from '../../scenario/outside.js'
import type { Scenario } from '../../scenario/schema.js'
import { casesPerRoll, drawnLength, rollChanges } from '../../trade/tape.js'
import { headsOf } from './heads.js'
import type { SealerKeys } from './keys.js'

type RollChange = SealerKeys['roll-change']
type RollKeys = Pick<SealerKeys, 'heads' | 'roll-change'>

/** Tape that a strip on each kind draws off the roll, m. */
export const drawnOf = (scenario: Scenario): number[] =>
  lengthsOf(scenario).map((length) => drawnLength(length, scenario.tape.leg, scenario.tape.stretch))

/**
 * Strips that a roll gives: whole ones where all are alike, else on average, when half a mean strip is left over. `drawn` in m
 * by kind, `mix` their shares, `early` the tape left on a roll that is changed before its end. Derived; the half is exact
 * where strips are short beside the roll.
 */
export function stripsPerRoll(
  scenario: Scenario,
  drawn: readonly number[],
  mix: readonly number[],
  early: number,
): number {
  const { tape } = scenario
  const usable = tape.roll - tape['lost-per-roll'] - early
  const variances = lengthVariancesOf(scenario).map((each) => each / (1 + tape.stretch) ** 2)
  const used = drawn.filter((_, kind) => mix[kind]! > 0)
  const isFixed = variances.every((variance, kind) => variance === 0 || mix[kind] === 0)
  if (isFixed && used.every((each) => each === used[0])) return Math.max(1, casesPerRoll(usable, used[0]!))
  const mean = drawn.reduce((sum, each, kind) => sum + each * mix[kind]!, 0)
  const squared = drawn.reduce((sum, each, kind) => sum + (each * each + variances[kind]!) * mix[kind]!, 0)
  // what is left is a part of the strip that no longer fits, and long strips are more often the ones that do not
  return Math.max(1, (usable - squared / (2 * mean)) / mean)
}

/**
 * Tape left on a roll that is changed before its end, m. `used` is what a head draws in a shift: at a break only rolls that are
 * low just then are changed early, and have half of that tape left on average.
 */
export function leftEarly(scenario: Scenario, keys: RollKeys, used: number): number {
  const { shift, tape } = scenario
  const change = keys['roll-change']
  const warning = change['low-tape-warning']
  if (warning === 'none' || change.change === 'when-empty')
    return startsFull(scenario) ? 0 : ((change['also-below'] ?? 0) / 2) * changedAlong(scenario, keys)
  const most = Math.min(warning, (tape.roll - tape['lost-per-roll']) / 2)
  if (change.change === 'at-warning-when-idle') return most
  return used > 0 ? (Math.min(1, (shift.breaks.length * most) / used) * most) / 2 : 0
}

/**
 * Share of the rolls that are changed in the visit for another of the same sealer. Rolls that start full end together, one
 * strip apart, and are seen to in one visit where idle ones are changed at the warning, or low ones along with the empty one.
 * Of rolls that are used up by random parts the others have so little left with the chance `also-below` over what a roll gives,
 * on either side. Derived; exact for two heads that meet for the first time, and once they have met they stay together.
 */
export function changedAlong(scenario: Scenario, keys: RollKeys): number {
  const { tape } = scenario
  const { change, 'also-below': below = 0 } = keys['roll-change']
  const others = (headsOf(keys).length - 1) / headsOf(keys).length
  const apart = 2 * Math.max(...drawnOf(scenario))
  if (startsFull(scenario)) return change === 'at-warning-when-idle' || below > apart ? others : 0
  return others * Math.min(1, (2 * below) / (tape.roll - tape['lost-per-roll']))
}

/** Cases that pass an empty roll until somebody notices: of heads without a warning. */
export const missedPerRoll = (change: RollChange): number =>
  change['low-tape-warning'] === 'none' ? change['noticed-after'] : 0

/** Rolls begin every shift full. */
export const startsFull = ({ shift }: Scenario): boolean =>
  shift['rolls-start'] === 'full' && shift.start === 'empty'

/**
 * Changes of one head in a shift of `cases`. Rolls that start full are changed when they are empty; used up by a random part, or
 * carried over from the shift before, they come round evenly.
 */
export const changesPerShift = (scenario: Scenario, cases: number, perRoll: number): number =>
  startsFull(scenario) ? rollChanges(cases, perRoll) : cases / perRoll
