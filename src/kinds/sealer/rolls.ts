/** Rolls by hand: how many strips of a mix a roll gives, how often it is changed, and what it loses. */
import { lengthsOf } from '../../scenario/outside.js'
import type { Scenario } from '../../scenario/schema.js'
import { casesPerRoll, drawnLength, rollChanges } from '../../trade/tape.js'
import type { SealerKeys } from './keys.js'

type RollChange = SealerKeys['roll-change']

/** Tape that a strip on each kind draws off the roll, m. */
export const drawnOf = (scenario: Scenario): number[] =>
  lengthsOf(scenario).map((length) => drawnLength(length, scenario.tape.leg, scenario.tape.stretch))

/**
 * Strips that a roll gives: whole ones where all are alike, else on average, when half a mean strip is left over. `drawn` in m
 * by kind, `mix` their shares, `early` the tape left on a roll that is changed before its end. Derived; the half is exact
 * where strips are short beside the roll.
 */
export function stripsPerRoll(
  { tape }: Scenario,
  drawn: readonly number[],
  mix: readonly number[],
  early: number,
): number {
  const usable = tape.roll - tape['lost-per-roll'] - early
  const used = drawn.filter((_, kind) => mix[kind]! > 0)
  if (used.every((each) => each === used[0])) return Math.max(1, casesPerRoll(usable, used[0]!))
  const mean = drawn.reduce((sum, each, kind) => sum + each * mix[kind]!, 0)
  const squared = drawn.reduce((sum, each, kind) => sum + each * each * mix[kind]!, 0)
  // what is left is a part of the strip that no longer fits, and long strips are more often the ones that do not
  return Math.max(1, (usable - squared / (2 * mean)) / mean)
}

/**
 * Tape left on a roll that is changed before its end, m. `used` is what a head draws in a shift: at a break only rolls that are
 * low just then are changed early, and have half of that tape left on average.
 */
export function leftEarly({ shift, tape }: Scenario, change: RollChange, used: number): number {
  const warning = change['low-tape-warning']
  if (warning === 'none' || change.change === 'when-empty') return 0
  const most = Math.min(warning, (tape.roll - tape['lost-per-roll']) / 2)
  if (change.change === 'at-warning-when-idle') return most
  return used > 0 ? (Math.min(1, (shift.breaks.length * most) / used) * most) / 2 : 0
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
