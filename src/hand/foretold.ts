/** What the hand calculation foretells of a run, as result documents have it: the figures, and what the reasons for a difference need. */
import { currencyOf, unitName } from '../catalogue/unit-name.js'
import type { Scenario } from '../scenario/schema.js'
import type { HandCalculation } from './hand.js'
import { usualError } from './usual-error.js'

/** The rows of a hand calculation, each with the unit that results give to its measure. */
export const foretoldRows = (scenario: Scenario, { rows }: Pick<HandCalculation, 'rows'>) =>
  rows.map(({ measure, label, value, unit, how }) => ({
    measure,
    label,
    value: Number.isFinite(value) ? value : null,
    unit: unitName(unit, currencyOf(scenario)),
    how,
  }))

/** What is foretold of a run of `scenario`, worked out by hand. */
export function foretold(scenario: Scenario, hand: HandCalculation) {
  const { sources, perShift, bottleneck, admitted } = hand.line
  return {
    rows: foretoldRows(scenario, hand),
    shareOfArrivals: Object.fromEntries(
      sources.map((source) => [source.name, perShift > 0 ? source.perShift / perShift : 0]),
    ),
    bottleneck: bottleneck?.name ?? null,
    shareAdmitted: admitted,
    expected: hand.expected.output && {
      throughput: hand.expected.output.throughput,
      perShift: hand.expected.output.throughput * hand.line.working,
      within: usualError.within,
    },
  }
}
