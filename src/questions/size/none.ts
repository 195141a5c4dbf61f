/** What a sizing says where no design holds: which came nearest, by how much it misses, what limits it, and what to do next. */

import { plain } from '../../answers/first-screen.js'
import { flowText } from '../../answers/flow.js'
import { counted, grouped, listed, rateText, sentences } from '../../report/format.js'
import { labelOf } from '../../scenario/labels.js'
import type { SizedDesign, SizeResult } from './document.js'
import { noneSure, noneSureAdvice, withBoth } from './drawn-words.js'
import { limiting } from './limiting.js'
import { amountIn, endDesign, freshMargins, observed, outputText, promisesText, setText } from './words.js'

/** The headline without a pick. */
export function withoutPick(result: SizeResult): string[] {
  const design = endDesign(result)
  return [
    noneSure(result) ?? whyNone(result),
    ...(design ? nearestLines(design, result) : []),
    adviceText(result).join(' '),
  ]
}

function whyNone(result: SizeResult): string {
  const { designs, all, made, nearest } = result
  const open = designs.filter(({ verdict }) => verdict === 'undecided')
  const promises = promisesText(result)
  if (open.length > 0)
    return `No design is chosen: ${counted(open.length, 'design')} could not be decided in ${observed(made.shifts, result)}${open.length < designs.length ? `, and the others do not hold ${promises}` : ''}.`
  return `None of the ${counted(all, 'design')} holds ${promises}${nearest?.byHand ? ': by hand calculation none can, and none was simulated' : ''}.`
}

/** The nearest design, by how much it misses, and what limits it. */
function nearestLines(design: SizedDesign, result: SizeResult): string[] {
  const { afresh, byHand } = result.nearest!
  const name = result.drawn ? 'With the inputs as given it' : `The nearest is ${setText(design.set)}`
  if (afresh) {
    const isOpen = design.verdict === 'undecided' ? ', which could not be decided' : ''
    return [
      `${name}${result.drawn ? ' holds' : isOpen}: ${freshMargins(afresh, result)}.`,
      `In these its output is ${outputText(afresh, result)}${withBoth(result)}. ${limiting(afresh)}`.trimEnd(),
    ]
  }
  if (!byHand) return [`${name}.`]
  const { atMost, promised, message } = byHand
  const short =
    promised !== null && promised > atMost
      ? `, ${amountIn(promised - atMost, 'cases/s', result, 2)} short of the ${rateText(promised)} promised`
      : ''
  return [`${name}: by hand calculation its output is ${rateText(atMost)} at most${short}.`, plain(message)]
}

/** What to do next where no design holds, in sentences. */
export function adviceText(result: SizeResult): string[] {
  const { nearest, designs, made } = result
  if (nearest === null) return ['Let the search try more choices, or promise less.']
  const { atEnds, byHand, afresh } = nearest
  if (result.drawn) return noneSureAdvice(result, atEnds.length > 0 ? beyond(atEnds) : '')
  if (designs[nearest.design]!.verdict === 'undecided')
    return sentences(
      `Allow more --shifts than ${grouped(made.shifts, 0)}, or a larger "within".`,
      atEnds.length > 0 && `Or let the search also try ${beyond(atEnds)}.`,
    )
  if (byHand) {
    const ends = atEnds.filter(({ path }) => path === byHand.path)
    return [
      `Fix by hand calculation: ${plain(byHand.fix)}.`,
      ends.length > 0
        ? `Let the search also try ${beyond(ends)}; or promise less.`
        : 'Add that to the choices of the search, or promise less.',
    ]
  }
  const limit = afresh?.bottleneck ? `, such as one that makes ${afresh.bottleneck} faster` : ''
  return [
    atEnds.length > 0
      ? `Let the search also try ${beyond(atEnds)}; or promise less.`
      : `All its values are inside their ranges, so wider ranges are not enough. Add another choice${limit}; or promise less.`,
  ]
}

/** Choices to be widened: upwards, and downwards only where none stands at its upper end, for more of most things costs and helps. */
function beyond(ends: NonNullable<SizeResult['nearest']>['atEnds']): string {
  const upwards = ends.filter(({ end }) => end === 'largest')
  return listed(
    (upwards.length > 0 ? upwards : ends).map(
      ({ path, value, end }) =>
        `${labelOf(path)} ${end === 'largest' ? 'above' : 'below'} ${flowText(value)} (${path})`,
    ),
  )
}
