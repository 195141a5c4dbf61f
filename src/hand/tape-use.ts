/** Tape by hand: what each head and the line use in a shift and a month, what it weighs and what it costs. */

import { weighed } from '../kinds/by-hand.js'
import { headsOf } from '../kinds/sealer/heads.js'
import { changesPerShift, drawnOf, leftEarly, missedPerRoll, stripsPerRoll } from '../kinds/sealer/rolls.js'
import { has } from '../kinds/traits.js'
import type { Scenario } from '../scenario/schema.js'
import { massPerMetre } from '../trade/tape.js'
import type { LineHand, PieceHand } from './line.js'

/** One head, a shift. Lengths m off the roll. */
interface HeadUse {
  machine: string
  head: string
  /** Mean strip. */
  strip: number
  /** Strips that one roll gives. */
  perRoll: number
  /** Threading, stubs and broken strips included. */
  used: number
  lost: number
  rolls: number
  changes: number
}

/** All heads, a shift. */
export interface TapeUse {
  heads: HeadUse[]
  used: number
  /** kg, cores left out. */
  mass: number
  /** m a good case: on it, and lost. */
  perCase: number
  lostPerCase: number
  rolls: number
  changes: number
  /** m a month; null where the scenario does not say how many shifts a year has. */
  month: number | null
  /** Price of the tape for 1000 good cases; null where none is given. */
  costPerThousand: number | null
}

/** What the heads of all sealers use. */
export function tapeUse(scenario: Scenario, line: LineHand): TapeUse {
  const { tape, money } = scenario
  const heads = line.pieces.flatMap((piece) => headsUse(scenario, piece))
  const add = (of: (head: HeadUse) => number) => heads.reduce((total, head) => total + of(head), 0)
  const used = add((head) => head.used)
  const good = line.throughput * line.working
  const rolls = used / tape.roll
  return {
    heads,
    used,
    mass: used * massPerMetre(tape.width, tape.thickness),
    // every strip that was laid is on a case, good or not; strips of spoilt cases fall on the good ones here
    perCase: good > 0 ? add((head) => head.used - head.lost) / good : 0,
    lostPerCase: good > 0 ? add((head) => head.lost) / good : 0,
    rolls,
    changes: add((head) => head.changes),
    month: money?.shifts === undefined ? null : (used * money.shifts) / 12,
    costPerThousand: tape.price && good > 0 ? (rolls * tape.price.amount * 1000) / good : null,
  }
}

function headsUse(scenario: Scenario, piece: PieceHand): HeadUse[] {
  const keys = scenario.line[piece.name]!
  if (!has(keys, 'tapes')) return []
  const { tape } = scenario
  const drawn = drawnOf(scenario)
  const strip = weighed(drawn, piece.mix)
  const change = keys['roll-change']
  const early = leftEarly(scenario, keys, piece.perShift * strip)
  const perRoll = stripsPerRoll(scenario, drawn, piece.mix, early)
  const missed = missedPerRoll(change)
  // what passes an empty roll draws nothing
  const strips = piece.perShift * (perRoll / (perRoll + missed))
  const broken = strips * (keys['tape-breaks']?.chance ?? 0)
  const changes = changesPerShift(scenario, piece.perShift, perRoll + missed)
  const lost = changes * (tape.roll - perRoll * strip) + broken * strip
  return headsOf(keys).map(([head]) => {
    const used = strips * strip + lost
    return { machine: piece.name, head, strip, perRoll, used, lost, rolls: used / tape.roll, changes }
  })
}
