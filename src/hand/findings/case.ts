/** Findings on cases: what their board allows, and what it asks of the tape. */
import type { CaseKind } from '../../scenario/case-keys.js'
import { sizeEnds } from '../../scenario/outside.js'

import { adequateRow, allows, boardSource, type Certificate, limitsOf } from '../../trade/board.js'
import { fluteTable, tightSeamGap, unitedSize, type Wall, widestSeamGap } from '../../trade/case.js'
import { leastCoverage } from '../../trade/closure.js'
import { elongationUsed } from '../../trade/head.js'
import { postalWidth, widthGuidance, widthWeights } from '../../trade/tape-width.js'
import { threeInch, twoInch } from '../closing.js'
import type { Looked, Rule, Tell } from '../finding.js'
import { hasSealer } from '../pace.js'

/** Rounding of lengths that are meant to be alike, m. */
const hair = 1e-9
/** Share of the strength of a strip that its load may take, and of its elongation that the head may. Project rules. */
const mostOfStrength = 0.5
const mostOfElongation = 0.1

/** Number of fluted layers, as given or by the flute; null where neither is said. */
export function wallOf({ board, flute }: CaseKind): Wall | null {
  if (board?.wall !== undefined) return board.wall
  return flute === undefined ? null : fluteTable[flute].wall
}

/** What is known of the board of a case; null where the table of the carriers cannot be read with it. */
export function certificateOf(kind: CaseKind): Certificate | null {
  const wall = wallOf(kind)
  const { ect, burst } = kind.board ?? {}
  return wall === null || (ect === undefined && burst === undefined)
    ? null
    : { wall, ect, burst, flute: kind.flute }
}

export const boardFindings: Rule = ({ scenario, words }, tell) => {
  for (const [name, kind] of Object.entries(scenario.cases)) {
    const certificate = certificateOf(kind)
    if (wallOf(kind) === 'triple')
      tell.warning(
        'triple-wall',
        ['cases', name, 'board'],
        `The case \`${name}\` has triple-wall board. The standard practice for tape closures does not cover it.`,
        'ASTM D1974 leaves triple wall out',
        'use strapping or stitching, or prove the closure by a test',
      )
    if (certificate) tellLimits(name, kind, certificate, words, tell)
  }
}

/** What the table of the carriers allows a case of this board. */
function tellLimits(
  name: string,
  kind: CaseKind,
  certificate: Certificate,
  words: Looked['words'],
  tell: Tell,
): void {
  const limits = limitsOf(certificate)
  if (!limits) {
    tell.warning(
      'board-below-table',
      ['cases', name, 'board'],
      `The board of \`${name}\` is weaker than the weakest ${certificate.wall}-wall board in the table, so the table allows no weight.`,
      boardSource,
      'use stronger board, or give a higher value from its certificate',
    )
    return
  }
  // a case without a weight is held against its size alone
  const weight = kind.weight ?? 0
  const united = unitedSize(sizeEnds(kind).most)
  if (allows(limits, weight, united)) return
  const better = adequateRow(certificate.wall, weight, united, kind.flute)
  tell.warning(
    'over-board-limit',
    ['cases', name, kind.weight !== undefined && weight > limits.weight ? 'weight' : 'board'],
    `The case \`${name}\` ${kind.weight === undefined ? '' : `weighs ${words.mass(weight)} and `}measures ${words.length(united)} united; its board allows ${words.mass(limits.weight)} and ${words.length(limits.united)} (${limits.name}).`,
    boardSource,
    better ? `use board ${better.name}` : 'use a lighter or smaller case, or board with more walls',
  )
}

export const tapeForCaseFindings: Rule = (looked, tell) => {
  const { cases } = looked.scenario
  if (!hasSealer(looked.scenario)) return
  for (const [name, kind] of Object.entries(cases)) {
    tellWidth(looked, name, kind, tell)
    tellSurface(looked, name, kind, tell)
    tellPost(looked, name, kind, tell)
  }
}

/** Weight and stiff flaps against the width of the tape. */
function tellWidth({ scenario: { tape }, words }: Looked, name: string, kind: CaseKind, tell: Tell): void {
  // 72 mm is sold as 3 inch, 70 mm and more does its work
  if (tape.width >= threeInch - 0.002 - hair) return
  const { weight = 0 } = kind
  const isHeavy = weight > widthWeights.wideAbove
  if (weight > widthWeights.narrowUpTo)
    tell[isHeavy ? 'warning' : 'note'](
      'heavy-for-width',
      ['cases', name, 'weight'],
      `The case \`${name}\` weighs ${words.mass(weight)} and has tape of ${words.length(tape.width)}. No standard sets a width for a weight, but above ${words.mass(isHeavy ? widthWeights.wideAbove : widthWeights.narrowUpTo)} test the closure.`,
      'project rule, low confidence',
      (isHeavy ? widthGuidance.heavy : widthGuidance.middling).suggestion,
    )
  if (wallOf(kind) === 'double')
    tell.note(
      'double-wall-narrow',
      ['cases', name],
      `The case \`${name}\` has double-wall board. Its stiff flaps spring back, and the tape is only ${words.length(tape.width)} wide.`,
      widthGuidance.doubleWall.basis,
      widthGuidance.doubleWall.suggestion,
    )
}

/** What the tape holds on, and what pulls at it. */
function tellSurface(
  { words }: Looked,
  name: string,
  { recycled, overfill = 0 }: CaseKind,
  tell: Tell,
): void {
  if (recycled)
    tell.note(
      'recycled-board',
      ['cases', name, 'recycled'],
      `Tape holds less well on the recycled liners of \`${name}\`.`,
      widthGuidance.surface.basis,
      widthGuidance.surface.suggestion,
    )
  if (overfill > 0)
    tell[overfill > tightSeamGap ? 'warning' : 'note'](
      'overfilled',
      ['cases', name, 'overfill'],
      `The contents of \`${name}\` push its closed flaps up by ${words.length(overfill)}. This pulls on the tape as long as the case is closed.`,
      `${widthGuidance.overfill.basis}; above ${words.length(tightSeamGap)} a warning by project rule`,
      widthGuidance.overfill.suggestion,
    )
}

/** What the post asks for. */
function tellPost({ scenario: { tape }, words }: Looked, name: string, kind: CaseKind, tell: Tell): void {
  if (kind['ships-by'] !== 'post' || tape.width >= postalWidth - hair) return
  const isTwoInch = tape.width >= twoInch - hair
  tell[isTwoInch ? 'note' : 'warning'](
    'postal-width',
    ['tape', 'width'],
    `The case \`${name}\` goes by post, which requires tape of 2 in (${words.length(postalWidth)}); this tape is ${words.length(tape.width)}${isTwoInch ? ', sold as 2 in. Whether this satisfies the rule is not verified' : ''}.`,
    widthGuidance.post.source,
    isTwoInch ? 'ask the carrier' : widthGuidance.post.suggestion,
  )
}

export const tapeFindings: Rule = (looked, tell) => {
  tellTemperature(looked, tell)
  tellStretch(looked, tell)
  tellStrength(looked, tell)
}

function tellTemperature({ scenario: { tape, site }, words }: Looked, tell: Tell): void {
  const range = tape['applies-at']
  if (!site?.temperature || !range) return
  const [coldest, warmest] = site.temperature
  if (coldest < range[0] - hair || warmest > range[1] + hair)
    tell.warning(
      'tape-temperature',
      ['site', 'temperature'],
      `The temperature at the sealer is ${words.temperature(coldest)} to ${words.temperature(warmest)}, but the tape may be applied at ${words.temperature(range[0])} to ${words.temperature(range[1])}.`,
      'data sheet of the tape',
      'keep tape and cases within this range, or use another tape',
    )
}

function tellStretch({ scenario: { tape }, words }: Looked, tell: Tell): void {
  if (tape.elongation !== undefined && elongationUsed(tape.stretch, tape.elongation) > mostOfElongation)
    tell.warning(
      'tape-overstretched',
      ['tape', 'stretch'],
      `The head stretches the tape by ${words.share(tape.stretch)}, ${words.share(elongationUsed(tape.stretch, tape.elongation))} of its elongation at break of ${words.share(tape.elongation)}. Such tape peels off and breaks more often.`,
      'project rule: a tenth; elongation by ASTM D3759 or ISO 29864',
      'reduce the drag on the roll, or use a tape with more elongation',
    )
}

function tellStrength({ scenario: { tape, closure }, words }: Looked, tell: Tell): void {
  const load = closure?.load
  if (tape.tensile === undefined || !load || !('newtons' in load)) return
  const bears = tape.tensile * tape.width
  if (load.newtons > mostOfStrength * bears)
    tell[load.newtons > bears ? 'error' : 'warning'](
      'tape-tears',
      ['tape', 'tensile'],
      `A strip of ${words.length(tape.width)} breaks at ${words.force(bears)} (${words.strength(tape.tensile)}), and the load on the closure is ${words.force(load.newtons)}.`,
      load.newtons > bears
        ? 'breaking strength by ASTM D3759 or ISO 29864'
        : 'project rule: half of the breaking strength',
      'use wider or stronger tape, or a second strip',
      load.newtons / bears,
    )
}

export const seamFindings: Rule = ({ scenario, closure, words }, tell) => {
  const gap = scenario.closure?.['seam-gap']
  if (gap !== undefined && gap > tightSeamGap + hair)
    tell.warning(
      'wide-seam',
      ['closure', 'seam-gap'],
      `The gap between the closed flaps is ${words.length(gap)}, more than ${words.length(gap > widestSeamGap + hair ? widestSeamGap : tightSeamGap)}.`,
      gap > widestSeamGap + hair
        ? 'US Army FM 38-701: 1/4 in on slotted styles'
        : 'common practice, no source: 1/8 in where tape closes the seam',
      'correct the squareness and width setting, or ask for tighter box tolerances',
    )
  const row = closure?.rows.find(({ isChosen }) => isChosen)
  if (row && row.coverage !== null && row.coverage < leastCoverage - hair)
    tell.warning(
      'little-coverage',
      ['closure', 'centring-error'],
      `With a gap of ${words.length(gap!)} and ${words.length(scenario.closure!['centring-error']!)} off centre, only ${words.length(row.coverage)} of the ${words.length(row.width)} tape lies on one of the flaps.`,
      'project rule, low confidence: 15 mm',
      `use guides that centre the tape, or 3 inch tape`,
    )
}

/** Chosen closures that hold less than the one that is known to hold. */
export const weakerFindings: Rule = ({ scenario, closure, words }, tell) => {
  const reference = closure?.reference
  if (!reference) return
  // a reference that is silent on its seam counts as laid true, which would find every other one weaker
  const knowsSeam = reference['seam-gap'] !== undefined && reference['centring-error'] !== undefined
  for (const { case: name, isChosen, index } of closure.rows) {
    if (!isChosen || !index) continue
    const indices: [what: string, index: number][] = [
      ['hold of the legs', index.leg],
      ['hold against peeling', index.peel],
    ]
    if (knowsSeam && index.seam !== null) indices.push(['hold of the seam', index.seam])
    const [what, least] = indices.reduce((low, each) => (each[1] < low[1] ? each : low))
    if (least >= 1 - hair) continue
    tell.warning(
      'weaker-closure',
      ['cases', name],
      `The closure of \`${name}\` with tape of ${words.length(scenario.tape.width)} has ${least.toFixed(2)} times the ${what} of the reference. The reference therefore does not show that it holds.`,
      'index after S. Abbott, practical adhesion: a ratio, not a proof',
      'use wider tape, longer legs or a smaller load; and do a closure or distribution test (ASTM D4169, ISTA series)',
    )
  }
}
