/** Which inputs a sizing may draw: what is chosen is none. */
import type { Evidence } from '../../scenario/known.js'

/** What is not chosen, nor a part of it, nor holds it: that is no input. */
export const inputsBeside = (
  evidence: readonly Evidence[],
  choices: readonly { path: string }[],
): readonly Evidence[] =>
  evidence.filter(({ path }) =>
    choices.every(
      (each) => !`${each.path}.`.startsWith(`${path}.`) && !`${path}.`.startsWith(`${each.path}.`),
    ),
  )
