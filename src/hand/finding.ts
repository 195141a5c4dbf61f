/** What a check finds: a closed set of codes, each finding with its place, the figures that led to it, its basis and the nearest mend. */

import { type Words, wordsFor } from '../catalogue/printed-units.js'
import { type Alike, pathInFile } from '../scenario/alike.js'
import type { Evidence } from '../scenario/known.js'
import type { GivenAt, Loaded } from '../scenario/load.js'
import type { ReadAs } from '../scenario/plain-words.js'
import type { Scenario } from '../scenario/schema.js'
import type { Path } from '../scenario/walk.js'
import type { ClosureComparison } from './closing.js'
import type { HandCalculation } from './hand.js'

/** `error`: the line cannot work so; `warning`: it will give trouble; `note`: to know. */
export type Severity = 'error' | 'warning' | 'note'
export const severities: readonly Severity[] = ['error', 'warning', 'note']

/** Every code, with what it is about. */
export const codes = {
  'target-above-arrivals': 'the target asks for more than arrives',
  'target-near-arrivals': 'the target is as high as the arrivals',
  'target-above-machine': 'the target is above the capacity of a piece',
  'target-above-stops': 'the target is above the capacity of a piece after its stops',
  'target-above-expected': 'the target is above the output by hand calculation',
  'target-near-expected': 'target and output are too close for a hand calculation',
  'little-to-spare': 'the bottleneck has little spare capacity',
  'queue-never-clears': 'an unlimited queue grows faster than it is emptied',
  'arrivals-held-up': 'more cases arrive than the line can take',
  'peak-above-machine': 'the busiest hour is above the capacity of a piece',
  'gap-at-infeed': 'cases arrive back to back and the change of speed does not separate them',
  'belts-slower-than-infeed': 'the belts of a sealer are slower than the conveyor before them',
  'gap-set-by-heads': 'the heads need more gap than minimum-gap',
  'belts-too-fast-to-help': 'faster belts bring little more',
  'legs-meet': 'the legs of opposite strips meet on the end of the case',
  'short-leg': 'legs are shorter than usual',
  'roll-does-not-fit': 'the roll is larger than the drum',
  'large-roll': 'the roll is larger than common drums',
  'over-board-limit': 'the case is heavier or larger than its board allows',
  'board-below-table': 'the board is weaker than the first row of the table',
  'triple-wall': 'tape closing practice does not cover triple wall',
  'rollers-too-far-apart': 'fewer than three rollers under the shortest case',
  'short-zone': 'zones have no margin over the longest case',
  'small-buffer': 'the buffer lasts for less than two mean stops',
  'crew-load': 'people have too much to do',
  'little-coverage': 'little tape on one flap',
  'wide-seam': 'the flaps leave a wide gap',
  'weaker-closure': 'a closure holds less than the reference',
  'tape-temperature': 'the site is too cold or too warm for the tape',
  'postal-width': 'the post requires 2 inch tape',
  'heavy-for-width': 'the case is heavy for the width of the tape',
  'double-wall-narrow': 'stiff flaps on narrow tape',
  'recycled-board': 'tape holds less on recycled fibre',
  overfilled: 'the contents push the flaps up',
  'tape-tears': 'the load is near the strength of the tape',
  'tape-overstretched': 'the head stretches the tape too much',
  'roll-start': 'all rolls start full and run out together',
  'unsealed-unseen': 'unsealed cases leave the line unseen',
  'hasty-clearing': 'the clearing time is too short for isolation',
  'break-unattended': 'machines run unattended in breaks',
  'no-breaks': 'a long shift without a break',
  interlock: 'conveyors must stop with the piece that they feed',
  'sensors-by-hand': 'hand calculation ignores stops by sensors',
  'speeds-by-hand': 'hand calculation uses the usual speed of a drive',
  'starts-by-hand': 'hand calculation ignores what starts cost',
  'stops-not-named': 'stops that the scenario does not name do not happen',
  'not-priced': 'a price is given, but no `money`',
  'price-dropped': 'a price is given, but not all values to count it',
  'none-counted': 'no event was counted, which does not mean never',
  'few-observations': 'a distribution is based on few observations',
  'longest-observed': 'observed values never exceed the longest seen',
  'read-as': 'values in plain words, and how they are read',
  'not-checked': 'not checked for lack of data',
} as const
export type FindingCode = keyof typeof codes

/** One finding. */
export interface CheckFinding {
  code: FindingCode
  severity: Severity
  /** Dotted path of the key. */
  path: string
  /** Where the key was given; null where its value is assumed. */
  place: GivenAt | null
  message: string
  /** Standard with its name, or how well the rule is known. */
  basis: string
  fix: string
  /** How many times what its bound allows was found, from 1; null where that is not counted. */
  over: number | null
  /** Others of which the same was found and is not told; absent where there are none. */
  others?: number
}

/** What a group of rules looks at. */
export interface Looked {
  scenario: Scenario
  hand: HandCalculation
  closure: ClosureComparison | null
  /** What values rest on, where that is said. */
  evidence: readonly Evidence[]
  /** Values that were written in other words than those of the format. */
  readAs: readonly ReadAs[]
  words: Words
}

/** What is asked for; without evidence nothing is told of what values rest on. */
export type Asked = Pick<Loaded, 'scenario' | 'placeOf'> & Partial<Pick<Loaded, 'evidence' | 'readAs'>>

/** By its severity: tells one finding. */
export type Tell = Record<
  Severity,
  (code: FindingCode, path: Path, message: string, basis: string, fix: string, over?: number | null) => void
>

/** A group of rules. */
export type Rule = (looked: Looked, tell: Tell) => void

/** Findings of all rules, the worst first, else in the order of the rules. */
export function findingsOf(
  rules: readonly Rule[],
  { scenario, placeOf, evidence = [], readAs = [] }: Asked,
  hand: HandCalculation,
  closure: ClosureComparison | null,
): CheckFinding[] {
  const findings: CheckFinding[] = []
  const of =
    (severity: Severity): Tell[Severity] =>
    (code, path, message, basis, fix, over = null) => {
      const place = path.length > 0 ? placeOf(path) : null
      findings.push({ code, severity, path: path.join('.'), place, message, basis, fix, over })
    }
  const tell: Tell = { error: of('error'), warning: of('warning'), note: of('note') }
  const looked = { scenario, hand, closure, evidence, readAs, words: wordsFor(scenario.display) }
  for (const rule of rules) rule(looked, tell)
  const ofKinds = fewOfKinds(findings)
  const told = scenario.alike ? onceForAll(ofKinds, scenario.alike) : ofKinds
  return severities.flatMap((severity) => told.filter((each) => each.severity === severity))
}

/** Cases of which the same is told; of more than twice as many the worst, and the others are counted. */
const mostOfKinds = 5

/** What stands behind the message of the first of `all` cases of which the same was found, where so many are `told`. */
export const othersText = (all: number, told: number): string =>
  ` The same applies to ${all - 1} other cases, of which ${told - 1} are listed.`

/** What is so of many cases is told of the worst of them. */
function fewOfKinds(findings: CheckFinding[]): CheckFinding[] {
  const byCode = new Map<FindingCode, CheckFinding[]>()
  for (const finding of findings)
    if (finding.path.startsWith('cases.'))
      (byCode.get(finding.code) ?? byCode.set(finding.code, []).get(finding.code)!).push(finding)
  const left = new Set<CheckFinding>()
  for (const all of byCode.values()) {
    if (all.length <= 2 * mostOfKinds) continue
    const worst = [...all].sort((a, b) => (b.over ?? 0) - (a.over ?? 0)).slice(0, mostOfKinds)
    for (const each of all) if (!worst.includes(each)) left.add(each)
    worst[0]!.others = all.length - worst.length
    worst[0]!.message += othersText(all.length, worst.length)
  }
  return left.size === 0 ? findings : findings.filter((each) => !left.has(each))
}

/** What is so of several pieces that stand side by side is told of the first of them, by the path in the file. */
function onceForAll(findings: readonly CheckFinding[], alike: Alike): CheckFinding[] {
  const groups = Object.values(alike.line)
  const told: CheckFinding[] = []
  for (const finding of findings) {
    const [room, name, ...rest] = finding.path.split('.')
    const group = groups.find(({ pieces }) => pieces.includes(name!))
    const path = pathInFile([room!, name!, ...rest], alike).join('.')
    const first = group && told.find((each) => each.code === finding.code && each.path === path)
    if (first) first.message += ` The same applies to \`${name}\`.`
    else told.push({ ...finding, path })
  }
  return told
}
