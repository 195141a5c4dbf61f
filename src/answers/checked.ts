/** Designs with what the check finds of them: what stands at the head of an answer. */

import { checkScenario } from '../hand/check.js'
import { type CheckFinding, codes } from '../hand/finding.js'
import type { HandCalculation } from '../hand/hand.js'
import { droppedOf } from '../scenario/dropped.js'
import type { Loaded } from '../scenario/load.js'
import type { Scenario } from '../scenario/schema.js'
import type { WarnedDesign } from './warning.js'

/** A design with what `check` finds of it; the name of the scenario itself is null. */
export interface CheckedDesign {
  name: string | null
  scenario: Scenario
  findings: readonly CheckFinding[]
  /** What the check has worked out by hand. */
  hand: HandCalculation
}

/** A design checked; `placeOf`: where its keys stand in the file, of one that is not given there as it is nowhere. */
export function checkedDesign(
  name: string | null,
  scenario: Scenario,
  placeOf: Loaded['placeOf'] = () => null,
): CheckedDesign {
  const { findings, hand } = checkScenario({ scenario, placeOf })
  return { name, scenario, findings, hand }
}

/** The scenario itself, and designs beside it. */
export const checkedDesigns = (
  { scenario, placeOf }: Pick<Loaded, 'scenario' | 'placeOf'>,
  designs: readonly { name: string; scenario: Scenario }[] = [],
): CheckedDesign[] => [
  checkedDesign(null, scenario, placeOf),
  ...designs.map((design) => checkedDesign(design.name, design.scenario)),
]

/** What speaks against a design. */
export const warnedDesign = ({ name, scenario, findings }: CheckedDesign): WarnedDesign => ({
  name,
  errors: findings
    .filter(({ severity }) => severity === 'error')
    .map((finding) => ({ ...finding, meaning: codes[finding.code] })),
  dropped: droppedOf(scenario),
})

/** A design that is not checked: what its cost leaves out. */
export const pricedDesign = ({ scenario }: { scenario: Scenario }): WarnedDesign => ({
  ...{ name: null, errors: [] },
  dropped: droppedOf(scenario),
})
