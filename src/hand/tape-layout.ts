/** A tape layout by hand: width, price and mass, whether the roll fits, how the closure compares, and what `check` says against the design. */

import { headsOf } from '../kinds/sealer/heads.js'
import { has } from '../kinds/traits.js'
import type { Scenario } from '../scenario/schema.js'
import { arealMass, layersOf, massPerMetre, rollDiameter, rollMass } from '../trade/tape.js'
import type { TapeLayout } from '../trade/tape-layout.js'
import { checkScenario } from './check.js'

/** Rounding of a diameter, m. */
const hair = 1e-9

/** The layout of a scenario; null where nothing tapes. */
export function tapeLayout(scenario: Scenario): TapeLayout | null {
  const { tape } = scenario
  const heads = Object.values(scenario.line).flatMap((piece) =>
    has(piece, 'tapes') ? headsOf(piece).map(([, head]) => head) : [],
  )
  if (heads.length === 0) return null
  const { findings, closure } = checkScenario({ scenario, placeOf: () => null })
  const diameter = rollDiameter(tape.roll, tape.thickness)
  const { film, adhesive } = layersOf(tape.thickness)
  const indices = (closure?.rows ?? []).flatMap((row) => (row.isChosen && row.index ? [row.index] : []))
  const weakest = (values: readonly (number | null)[]) => {
    const known = values.filter((value) => value !== null)
    return known.length > 0 && known.length === values.length ? Math.min(...known) : null
  }
  const codes = (severity: string) => [
    ...new Set(findings.filter((each) => each.severity === severity).map(({ code }) => code)),
  ]
  return {
    width: tape.width,
    leg: tape.leg,
    pricePerMetre: tape.price ? tape.price.amount / tape.roll : null,
    massPerMetre: massPerMetre(tape.width, tape.thickness),
    rollMass: rollMass(tape.roll, tape.width, arealMass(film, adhesive)),
    rollDiameter: diameter,
    fits: heads.every(({ drum }) => drum !== undefined)
      ? heads.every(({ drum }) => diameter <= drum! + hair)
      : null,
    legIndex: weakest(indices.map(({ leg }) => leg)),
    seamIndex: weakest(indices.map(({ seam }) => seam)),
    errors: codes('error'),
    warnings: codes('warning'),
  }
}
