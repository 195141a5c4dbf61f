/** Findings on prices: those without money, and those that are given and cannot be used. */
import { droppedFix, droppedOf, droppedText } from '../../scenario/dropped.js'
import type { Rule } from '../finding.js'

export const priceFindings: Rule = ({ scenario }, tell) => {
  if (scenario.money) return
  const priced = [
    ...(scenario.tape.price ? ['the tape'] : []),
    ...Object.entries(scenario.cases).flatMap(([name, kind]) =>
      kind['contents-value'] ? [`the contents of \`${name}\``] : [],
    ),
  ]
  if (priced.length > 0)
    tell.note(
      'not-priced',
      scenario.tape.price ? ['tape', 'price'] : ['cases'],
      `A price is given for ${priced.join(', ')}, but no \`money\`: labour, downtime and capital are left out.`,
      'definition of the format',
      'add `money` with the values that you know',
    )
}

/** Each element of cost that is left out though a part of what it takes is given. */
export const droppedFindings: Rule = ({ scenario }, tell) => {
  for (const dropped of droppedOf(scenario))
    tell.warning(
      'price-dropped',
      dropped.given[0]!.split('.'),
      droppedText(dropped),
      'definition of the format',
      droppedFix(dropped),
    )
}
