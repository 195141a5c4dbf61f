/** What pencil and paper say against a design, and of designs that they all rule out which is nearest. */
import { firstError } from '../../hand/check.js'
import { codes } from '../../hand/finding.js'
import type { LineHand } from '../../hand/line.js'
import type { Scenario } from '../../scenario/schema.js'
import type { SizeAsked } from './asked.js'
import type { NearestDesign } from './document.js'

/** What rules a design out, in words, and how far it falls short of the promised rate. */
export interface Fault {
  reason: string
  byHand: NonNullable<NearestDesign['byHand']>
}

/** The first error of the check against the rate that is promised; null where there is none. */
export function faultOf(design: Scenario, asked: Pick<SizeAsked, 'needs'>): Fault | null {
  const scenario = atPromisedRate(design, asked)
  const { error: fault, hand } = firstError({ scenario, placeOf: () => null })
  if (!fault) return null
  const { code, path, message, fix } = fault
  const promised = scenario.target ?? null
  return { reason: codes[code], byHand: { atMost: atMost(hand.line), promised, path, message, fix } }
}

/** Good cases that a line can put out while it never stops, cases/s: what arrives, or what its slowest piece passes of that. */
const atMost = ({ arriving, goodShare, limit }: LineHand): number => Math.min(arriving * goodShare, limit)

/** Rates that are nearer than this are the same, cases/s. */
const hair = 1e-9

/** Of the designs that pencil and paper ruled out the one that falls least short of the promised rate, of equals the cheapest; null without one. */
export function leastShort(faults: ReadonlyMap<number, Fault>): number | null {
  let best: { design: number; short: number } | null = null
  for (const [design, { byHand }] of [...faults].sort(([one], [other]) => one - other)) {
    const short = Math.max(0, (byHand.promised ?? 0) - byHand.atMost)
    if (best === null || short < best.short - hair) best = { design, short }
  }
  return best?.design ?? null
}

/** The scenario with the promised rate as its target, if a rate is promised: what is promised is what a design is checked against. */
export function atPromisedRate(
  { target, ...others }: Scenario,
  { needs }: Pick<SizeAsked, 'needs'>,
): Scenario {
  const rate = Math.max(needs.rate ?? 0, needs.target ? (target ?? 0) : 0)
  return rate > 0 ? { ...others, target: rate } : others
}
